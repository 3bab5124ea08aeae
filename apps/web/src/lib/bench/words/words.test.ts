import { describe, expect, it } from 'vitest'
import { pinInRod, tenth } from '../testing/samples.ts'
import { figureOf, readingFigure, unitSymbol } from './figures.ts'
import { pointTitle } from './point-words.ts'
import { limitsWords, probabilityWords } from './requirement-words.ts'

describe('words at the bench', () => {
  it('say limits in the reader’s unit, with one limit as “at least” or “at most”', () => {
    expect(limitsWords(pinInRod, 'inch')).toBe('0.0006 in to 0.0010 in, target 0.0007 in')
    const low = { ...pinInRod, limits: { ...pinInRod.limits, high: null, target: null } }
    expect(limitsWords(low, 'inch')).toBe('0.0006 in at least')
  })

  it('show a figure without its unit where the heading names it', () => {
    expect(figureOf(4 * tenth, 'length', 'inch')).toBe('0.0004')
    expect(unitSymbol('length', 'inch')).toBe('in')
    expect(unitSymbol('torque', 'millimetre')).toBe('N·m')
    expect(unitSymbol('angle', 'inch')).toBe('°')
  })

  it('show feelers by their two blades', () => {
    expect(readingFigure({ value: 180 * tenth, blades: { stops: 190 * tenth } }, 'length', 'inch')).toBe('0.0180/0.0190')
    expect(readingFigure({ value: 150 * tenth, blades: { stops: null } }, 'length', 'inch')).toBe('0.0150/')
    expect(readingFigure({ value: 4 * tenth }, 'length', 'inch')).toBe('0.0004')
  })

  it('never round a probability up to certainty', () => {
    expect(probabilityWords(0.99995)).toBe('more than 99.9 %')
    expect(probabilityWords(0.00001)).toBe('less than 0.1 %')
    expect(probabilityWords(0.954)).toBe('95 %')
    expect(probabilityWords(1)).toBe('100.0 %')
  })

  it('name a point as a person would', () => {
    expect(pointTitle({ station: 'rear-inner', axis: '60-left' })).toBe('rear inner, 60° left')
  })
})
