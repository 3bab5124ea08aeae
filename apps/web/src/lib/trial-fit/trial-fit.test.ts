import { describe, expect, it } from 'vitest'
import { pinInRod, tenth } from '../bench/testing/samples.ts'
import { answerWords } from './answer-words.ts'
import { fitWords, gainsOf } from './gain-words.ts'
import { forecastWords, groupsOf } from './group-lines.ts'
import type { TrialLine } from './trial-fit-page.ts'

const counts = { conflict: 0, 'not-proven': 0, 'to-be-cut': 0, 'not-measured': 0, fits: 0 }

describe('the answer to “will it go together?”', () => {
  it('is yes only when every fit is measured and fits', () => {
    expect(answerWords({ ...counts, fits: 12 })).toEqual({ kind: 'good', sentence: 'Yes: all 12 fits are measured and go together.', more: [] })
  })

  it('names the gravest thing first and keeps the rest beside it', () => {
    expect(answerWords({ conflict: 2, 'not-proven': 1, 'to-be-cut': 3, 'not-measured': 40, fits: 1 })).toEqual({
      kind: 'bad', sentence: 'Not yet: 2 conflicts.',
      more: ['1 is not proven.', '40 not measured.', '3 still to be machined.', '1 fits as measured.'],
    })
    expect(answerWords({ ...counts, conflict: 1 }).sentence).toBe('Not yet: 1 conflict.')
    expect(answerWords({ ...counts, 'not-measured': 7, fits: 5 }).sentence).toBe('Unknown: 7 not measured.')
    expect(answerWords({ ...counts, 'to-be-cut': 8, fits: 5 })).toMatchObject({ kind: 'look', sentence: 'Not yet: 8 still to be machined.' })
  })
})

const verdict = {
  requirement: pinInRod.key, kind: 'within', least: 7 * tenth, greatest: 7 * tenth, uncertainty: 0, guardBand: 0, probability: 1, side: null,
  missing: [], readings: [], remedy: null, advice: null,
} as const
const line = (fit: string, standing: TrialLine['standing'], kind: TrialLine['verdict']['kind'] = 'within', title = fit) => ({
  requirement: { ...pinInRod, fit, title, key: `${fit}/${kind}` }, standing, basis: 'nominal', assumed: [], cutAt: null, judgedAt: null,
  verdict: { ...verdict, kind },
}) as unknown as TrialLine

describe('the lines', () => {
  it('come by fit, named by what their titles share, in the order in which they came, and only those that stand so', () => {
    const lines = [
      line('pin-in-rod', 'fits', 'within', 'Pin in rod 1'), line('crank-end-play-final', 'fits', 'within', 'Crank end play, final'),
      line('pin-in-rod', 'fits', 'within', 'Pin in rod 2'), line('pin-in-rod', 'conflict'),
    ]
    expect(groupsOf(lines, 'fits').map(({ title, lines: ofFit }) => [title, ofFit.length])).toEqual([['Pin in rod', 2], ['Crank end play, final', 1]])
  })

  it('say how the forecasts come out', () => {
    const forecasts = [line('a', 'not-measured'), line('a', 'not-measured', 'not-measured'), line('a', 'not-measured', 'outside')]
    expect(forecastWords(forecasts)).toBe('1 would fit, 1 would not, 1 cannot be forecast')
  })
})

describe('a suggestion', () => {
  it('says what is gained, and a margin beyond its limit as such', () => {
    const gains = gainsOf({
      before: { outside: 2, leastMargin: -3 * tenth, worstDistance: 8 * tenth, sumOfDistances: 16 * tenth },
      after: { outside: 0, leastMargin: 4 * tenth, worstDistance: tenth, sumOfDistances: 2 * tenth },
    }, 'inch')
    expect(gains.slice(0, 2)).toEqual([
      { title: 'Outside their limits', before: '2', after: '0' },
      { title: 'Least room to a limit', before: '0.0003 in beyond', after: '0.0004 in' },
    ])
    expect(fitWords({ least: 4 * tenth, greatest: 5 * tenth }, 'inch')).toBe('0.0004 in to 0.0005 in')
  })
})
