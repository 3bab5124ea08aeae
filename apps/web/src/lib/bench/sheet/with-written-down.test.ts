import { describe, expect, it } from 'vitest'
import { inTheWay } from '../signing/in-the-way.ts'
import { found, photographed, testResult, typedLot } from '../testing/written-down.ts'
import type { OperationSheet } from './operation-sheet.ts'
import { withWork } from './with-work.ts'

// Only what is looked at here.
const sheet = {
  job: { id: 'job-1', engineName: 'Engine' }, waitsFor: [], requirements: [], observations: [], concessions: [], passes: [], findings: [],
  operation: { key: 'crack-test', observations: [], inspections: [{ key: 'rod-1', title: 'Rod 1', place: 'rod/1', methods: ['magnetic-particle'] }] },
  inspections: [], lots: [{ place: 'piston/1', partId: 'piston-A', mark: 'P1', lot: '', history: [] }],
} as unknown as OperationSheet

const obstacles = (shown: OperationSheet) =>
  inTheWay(shown, { verdicts: [], unmeasured: [], waiting: 2, refused: 0, isAway: true })

describe('what was written down on this device and waits', () => {
  it('counts for a signature without a network like what has arrived', () => {
    expect(obstacles(sheet)).toEqual(['1 area is still to be tested.', '1 part has no lot or serial yet.'])
    expect(obstacles(withWork(sheet, [testResult('t'), typedLot('l')]))).toEqual([])
  })

  it('stops the step at an indication and at a finding that stops it, and not at one that does not', () => {
    const cracked = withWork(sheet, [testResult('t', { result: 'indication', note: '6 mm along the beam' }), typedLot('l')])
    expect(obstacles(cracked)).toEqual([
      'Rod 1 is not sound: only the owner can let it pass.', 'The owner has not decided yet: Rod 1: shows an indication.',
    ])
    const sound = [testResult('t'), typedLot('l')]
    expect(obstacles(withWork(sheet, [...sound, found('f')]))).toEqual(['The owner has not decided yet: Scored web.'])
    expect(obstacles(withWork(sheet, [...sound, found('f', { stops: false })]))).toEqual([])
  })

  it('shows the later result of an area, the earlier one beside it, and who says so', () => {
    const { inspections } = withWork(sheet, [testResult('t1', { result: 'indication', note: 'x' }), testResult('t2')])
    expect(inspections.map(({ id, counts, inspector, by, mark }) => [id, counts, inspector, by, mark]))
      .toEqual([['t1', false, 'B', 'A', 'R1'], ['t2', true, 'B', 'A', 'R1']])
  })

  it('shows another lot with the one before it, on every step that the part has', () => {
    const elsewhere = { ...sheet, operation: { ...sheet.operation, key: 'pistons-on-rods' } }
    const [place] = withWork(elsewhere, [typedLot('l1'), typedLot('l2', { lot: '4712', reason: 'The box said so' })]).lots
    expect(place).toMatchObject({ lot: '4712', history: [{ lot: '4711', reason: '' }, { lot: '4712', reason: 'The box said so' }] })
  })

  it('shows nothing twice that the service answers already, and nothing of another step', () => {
    const work = [testResult('t', { result: 'not-tested', note: 'sleeved' }), typedLot('l'), found('f')]
    const once = withWork(sheet, work)
    expect(withWork(once, work)).toBe(once)
    expect(withWork(sheet, [photographed('p', 'f'), testResult('t', { operationKey: 'wash' }), found('f', { operationKey: 'wash' })])).toBe(sheet)
  })
})
