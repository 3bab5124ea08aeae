import { describe, expect, it } from 'vitest'
import { bore } from '../features/references.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'
import { plan } from './plan.ts'
import type { BenchKind, Stage, WorkKind } from './plan-types.ts'

type Row = readonly [key: string, stage: Stage, bench: BenchKind, minutes: number, signatures?: 2]

// A V8 with everything ordered; common practice, no source.
const shortBlock: readonly Row[] = [
  ['receive', 'intake', 'counter', 45],
  ['tear-down', 'intake', 'teardown', 120],
  ['strip-wash', 'intake', 'wash', 60],
  ['crack-test', 'inspection', 'inspection', 90],
  ['measure-block', 'inspection', 'inspection', 100],
  ['measure-crank', 'inspection', 'inspection', 60],
  ['measure-rods', 'inspection', 'rod-bench', 60],
  ['receive-parts', 'planning', 'inspection', 75],
  ['approve-plan', 'planning', 'office', 30],
  ['deburr', 'machining', 'hand-work', 60],
  ['align-hone', 'machining', 'align-hone', 90],
  ['deck', 'machining', 'mill', 90],
  ['bore', 'machining', 'boring-bar', 120, 2],
  ['hone-bores', 'machining', 'hone', 180],
  ['bore-finish', 'machining', 'hone', 20],
  ['grind-crank', 'machining', 'crank-grinder', 240],
  ['resize-rods', 'machining', 'rod-hone', 120],
  ['hone-small-ends', 'machining', 'pin-hone', 100],
  ['fit-pins', 'machining', 'pin-hone', 60],
  ['balance', 'machining', 'balancer', 180],
  ['wash-for-measuring', 'machining', 'wash', 75],
  ['ring-gaps', 'fitting', 'clean-bench', 120],
  ['main-bearings', 'fitting', 'assembly', 60],
  ['rod-bearings', 'fitting', 'assembly', 75],
  ['trial-assembly', 'fitting', 'assembly', 120],
  ['take-apart', 'fitting', 'office', 30],
  ['final-wash', 'assembly', 'wash', 75],
  ['plugs', 'assembly', 'assembly', 50, 2],
  ['install-crank', 'assembly', 'assembly', 75, 2],
  ['pistons-on-rods', 'assembly', 'assembly', 60, 2],
  ['install-pistons', 'assembly', 'assembly', 90],
  ['final-rod-bolts', 'assembly', 'assembly', 60, 2],
  ['camshaft', 'assembly', 'assembly', 60, 2],
  ['oil-pump', 'assembly', 'assembly', 40],
  ['final-inspection', 'assembly', 'inspection', 30, 2],
  ['hand-over', 'handover', 'counter', 25],
]

/** What a full rebuild has besides, each before the step named. */
const headsBefore: readonly (readonly [before: string, row: Row])[] = [
  ['strip-wash', ['strip-heads', 'intake', 'head-bench', 60]],
  ['receive-parts', ['measure-heads', 'inspection', 'head-bench', 90]],
  ['grind-crank', ['check-decks', 'machining', 'inspection', 20]],
  ['wash-for-measuring', ['fit-guides', 'machining', 'head-bench', 120]],
  ['wash-for-measuring', ['cut-seats', 'machining', 'head-bench', 180]],
  ['wash-for-measuring', ['surface-heads', 'machining', 'mill', 90]],
  ['take-apart', ['valve-room', 'fitting', 'assembly', 90]],
  ['install-crank', ['cam-bearings', 'assembly', 'assembly', 60]],
  ['install-crank', ['assemble-heads', 'assembly', 'head-bench', 90]],
  ['final-inspection', ['install-heads', 'assembly', 'assembly', 150, 2]],
]

const fullRebuild = headsBefore.reduce<readonly Row[]>((rows, [before, row]) => {
  const at = rows.findIndex(([key]) => key === before)
  return [...rows.slice(0, at), row, ...rows.slice(at)]
}, shortBlock)

const partsInspection: Row = ['parts-inspection', 'assembly', 'inspection', 20, 2]

const always = ['receive', 'strip-wash', 'crack-test', 'approve-plan', 'final-wash']

/** A part of the work: its steps out of a full rebuild, inspected as parts. */
const only = (...keys: readonly string[]): readonly Row[] => [
  ...fullRebuild.filter(([key]) => [...always, ...keys].includes(key)),
  partsInspection,
  ...fullRebuild.slice(-1),
]

const routes: Record<WorkKind, readonly Row[]> = {
  'short-block': shortBlock,
  'full-rebuild': fullRebuild,
  'head-service': only('strip-heads', 'measure-heads', 'fit-guides', 'cut-seats', 'surface-heads', 'assemble-heads'),
  'bore-and-hone': only('measure-block', 'receive-parts', 'deburr', 'align-hone', 'deck', 'bore', 'hone-bores', 'bore-finish'),
  'crank-regrind': only('measure-crank', 'grind-crank'),
  balancing: only('measure-crank', 'balance'),
}

describe('the route of a V8 with everything ordered', () => {
  it.each(Object.keys(routes) as WorkKind[])('has the steps, benches, minutes and signatures of its kind: %s', (work) => {
    const made = plan(planInput(v8, v8Parts, { work })).operations
    const rows = made.map(({ key, stage, bench, minutes, signatures }) => [key, stage, bench, minutes, ...(signatures === 2 ? [2] : [])])
    expect(rows).toEqual(routes[work])
  })

  it.each(['sleeved', 'plated'] as const)('sends %s bores out where plain ones are bored, measured out and back before the hone', (boreSurface) => {
    for (const work of ['short-block', 'full-rebuild', 'bore-and-hone'] as const) {
      const made = plan(planInput({ ...v8, boreSurface }, v8Parts, { work })).operations
      const rows = made.map(({ key, stage, bench, minutes, signatures }) => [key, stage, bench, minutes, ...(signatures === 2 ? [2] : [])])
      expect(rows).toEqual(routes[work].map((row) => (row[0] === 'bore' ? ['bores-sent-out', 'machining', 'inspection', 40] : row)))
      const sent = made.find(({ key }) => key === 'bores-sent-out')
      expect(sent?.features).toEqual(Array.from({ length: 8 }, (_, index) => bore(index + 1)))
      expect(sent?.observations.map(({ title }) => title)).toEqual(
        expect.arrayContaining(['Every bore measured before it went out', 'Every bore measured again when it came back']),
      )
      expect(sent?.after).toEqual(['deck', 'receive-parts'])
      expect(made.find(({ key }) => key === 'hone-bores')?.after).toEqual(['bores-sent-out', 'receive-parts'])
    }
  })

  it('neither bores nor sends out where nothing is oversize, whatever the bores are', () => {
    const input = planInput({ ...v8, boreSurface: 'plated' }, v8Parts)
    const keys = plan({ ...input, options: { ...input.options, oversize: false } }).operations.map(({ key }) => key)
    expect(keys).not.toContain('bore')
    expect(keys).not.toContain('bores-sent-out')
    expect(keys).toContain('hone-bores')
  })

  it('bores plain bores here, told or not', () => {
    const told = plan(planInput({ ...v8, boreSurface: 'plain' }, v8Parts)).operations
    expect(told).toEqual(plan(planInput(v8, v8Parts)).operations)
  })

  it('warns wherever someone can be hurt', () => {
    const cautions = new Map(plan(planInput(v8, v8Parts, { work: 'full-rebuild' })).operations.map(({ key, cautions: said }) => [key, said.join(' ')]))
    const dangers: readonly (readonly [string, RegExp])[] = [
      ['receive', /hoist/], ['tear-down', /eye protection.*asbestos/], ['strip-heads', /eye protection.*sodium/], ['strip-wash', /caustic/],
      ['crack-test', /pressure/], ['deburr', /eye protection/], ['align-hone', /two people/], ['bore', /spindle/], ['hone-bores', /spindle.*mist/],
      ['grind-crank', /guards.*mist/i], ['resize-rods', /grabs/], ['balance', /clear/], ['wash-for-measuring', /compressed air/],
      ['cut-seats', /beryllium/], ['surface-heads', /magnesium/i], ['trial-assembly', /fingers/], ['assemble-heads', /energy/],
      ['install-crank', /two people/i], ['pistons-on-rods', /eye protection/], ['install-pistons', /fingers/],
      ['final-rod-bolts', /maker’s sheet/], ['install-heads', /two people/i], ['hand-over', /second person/],
    ]
    for (const [key, words] of dangers) expect(cautions.get(key), key).toMatch(words)
  })
})
