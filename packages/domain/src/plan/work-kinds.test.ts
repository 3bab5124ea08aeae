import { describe, expect, it } from 'vitest'
import type { EngineSpecification } from '../engine/specification.ts'
import { flatFour, inches, metricParts, planInput, testPlans, v8, v8Parts } from '../testing/engines.ts'
import { changedOperations } from './changes.ts'
import { plan } from './plan.ts'
import type { Plan, PlanInput, WorkKind } from './plan-types.ts'
import { workKinds } from './plan-types.ts'

const v8Plan = (work: WorkKind, changes: Partial<PlanInput> = {}) =>
  plan(planInput(v8, v8Parts, { work, ...changes }))
const keys = ({ operations }: Plan) => operations.map(({ key }) => key)
const fitsOf = ({ requirements }: Plan) => [...new Set(requirements.map(({ fit }) => fit))]
const seenAt = ({ operations }: Plan, at: string) =>
  operations.find(({ key }) => key === at)?.observations.map(({ key }) => key)
const testedAt = ({ operations }: Plan) =>
  operations.find(({ key }) => key === 'crack-test')?.inspections?.map(({ key }) => key)
/** Whether the work ends in a turning short block. */
const isWhole = (work: WorkKind) => work === 'short-block' || work === 'full-rebuild'

describe('every kind of work', () => {
  it.each(workKinds)('%s is received, inspected, approved, washed, sealed and handed over, in that order', (work) => {
    for (const input of testPlans) {
      const route = keys(plan({ ...input, work }))
      const always = [
        'receive', 'strip-wash', 'crack-test', 'approve-plan', 'final-wash',
        isWhole(work) ? 'final-inspection' : 'parts-inspection', 'hand-over',
      ]
      expect(route.filter((key) => always.includes(key))).toEqual(always)
      expect(route.at(-1)).toBe('hand-over')
    }
  })

  it.each(workKinds)('%s asks for a sheet only of a fit that it could judge', (work) => {
    const made = plan(planInput(flatFour, metricParts, { work }))
    const asked = made.findings.filter(({ key }) => key.startsWith('sheet-needed/'))
    const springs = 'Intake spring installed height; exhaust spring installed height; intake spring load; exhaust spring load: '
      + 'makers’ sheets needed'
    const balance = 'Residual unbalance of the crankshaft: maker’s sheet needed'
    const pistons = 'Piston in bore: maker’s sheet needed'
    const expected: Record<WorkKind, readonly string[]> = {
      'short-block': [pistons, balance, 'Rod bolts; main cap bolts: makers’ sheets needed'],
      'full-rebuild': [
        pistons, balance, 'Rod bolts; main cap bolts; head bolts: makers’ sheets needed', springs,
        'Intake centreline; intake lash; exhaust lash: makers’ sheets needed',
      ],
      'head-service': [springs],
      'bore-and-hone': [pistons],
      'crank-regrind': [],
      balancing: [balance],
    }
    expect(asked.map(({ title }) => title)).toEqual(expected[work])
  })
})

describe('a full rebuild', () => {
  const made = v8Plan('full-rebuild')
  const short = v8Plan('short-block')

  it('is the short block, whose definitions it leaves alone, with heads and valve train', () => {
    const { added, removed, changed } = changedOperations(short, made)
    expect(added).toEqual([
      'strip-heads', 'measure-heads', 'check-decks', 'fit-guides', 'cut-seats', 'surface-heads', 'valve-room',
      'cam-bearings', 'assemble-heads', 'install-heads',
    ])
    expect(removed).toEqual([])
    // Heads are looked at for cracks too, and the turning torque is taken before they go on.
    expect(changed).toEqual(['crack-test', 'final-inspection'])
  })

  it('judges all fits of a short block and those of heads and valve train', () => {
    const own = fitsOf(made).filter((fit) => !fitsOf(short).includes(fit))
    expect(own).toHaveLength(21)
    expect(fitsOf(made)).toEqual([...fitsOf(short), ...own])
  })

  it('puts heads on what is finished, and nothing is sealed before', () => {
    const after = (key: string) => made.operations.find((each) => each.key === key)?.after
    expect(after('install-heads')).toEqual(['camshaft', 'oil-pump', 'assemble-heads'])
    expect(after('final-inspection')).toEqual(['install-heads'])
    expect(after('take-apart')).toEqual(['valve-room'])
  })

  it('measures neither cam bearings nor lifters in the block of an overhead camshaft', () => {
    const engine: EngineSpecification = {
      ...v8, valveTrain: { camshaft: 'overhead', intakeValves: 2, exhaustValves: 2 },
    }
    const overhead = plan(planInput(engine, v8Parts, { work: 'full-rebuild' }))
    expect(keys(overhead)).not.toContain('cam-bearings')
    expect(fitsOf(overhead)).not.toContain('lifter-in-bore')
    expect(seenAt(overhead, 'assemble-heads')).toContain('camshaft')
    expect(overhead.requirements.filter(({ fit }) => fit === 'intake-stem-in-guide')).toHaveLength(16)
  })
})

describe('a part of the work', () => {
  it('head service needs no block: only heads are seen, measured and judged', () => {
    const made = v8Plan('head-service')
    expect(keys(made)).toEqual([
      'receive', 'strip-heads', 'strip-wash', 'crack-test', 'measure-heads', 'approve-plan', 'fit-guides',
      'cut-seats', 'surface-heads', 'final-wash', 'assemble-heads', 'parts-inspection', 'hand-over',
    ])
    expect(testedAt(made)).toEqual(['head-1', 'head-1-jacket', 'head-2', 'head-2-jacket'])
    expect(fitsOf(made)).toEqual([
      'intake-stem-in-guide', 'exhaust-stem-in-guide', 'intake-seat-run-out', 'exhaust-seat-run-out',
      'head-flatness', 'intake-seat-width', 'exhaust-seat-width', 'intake-valve-margin', 'exhaust-valve-margin',
      'intake-coil-bind', 'exhaust-coil-bind', 'intake-retainer-to-seal',
      'exhaust-retainer-to-seal',
    ])
    expect(made.findings).toHaveLength(1)
  })

  it('bore and hone judges pistons, bores and housings, and leaves boring out where nothing is oversize', () => {
    const made = v8Plan('bore-and-hone')
    expect(fitsOf(made)).toEqual([
      'piston-in-bore', 'bore-out-of-round', 'bore-taper', 'bore-crosshatch', 'bore-roughness', 'main-housing-size', 'main-housing-out-of-round',
    ])
    expect(testedAt(made)).toEqual(['block-webs', 'block-bores', 'block-deck', 'block-jacket'])
    expect(testedAt(v8Plan('bore-and-hone', { duty: 'sustained' }))).toContain('block-caps')
    const { options } = planInput(v8, v8Parts)
    expect(keys(v8Plan('bore-and-hone', { options: { ...options, oversize: false } }))).not.toContain('bore')
  })

  it('crank regrind grinds unless only polishing was ordered, and judges the ground crank', () => {
    const { options } = planInput(v8, v8Parts)
    const of = (crank: 'none' | 'polish') => v8Plan('crank-regrind', { options: { ...options, crank } })
    expect(keys(of('none'))).toContain('grind-crank')
    expect(keys(of('polish'))).toContain('polish-crank')
    const high = (made: Plan) => made.requirements.find(({ key }) => key === 'main-journal-taper/1')?.limits.high
    expect([high(of('none')), high(of('polish'))]).toEqual([inches(0.0003), inches(0.0005)])
    expect(fitsOf(of('none'))).toHaveLength(5)
  })

  it('balancing balances whatever else was ordered, and grinds nothing', () => {
    const { options } = planInput(v8, v8Parts)
    const made = v8Plan('balancing', { options: { ...options, balance: false, stroked: true } })
    expect(keys(made)).toEqual([
      'receive', 'strip-wash', 'crack-test', 'measure-crank', 'approve-plan', 'balance', 'final-wash',
      'parts-inspection', 'hand-over',
    ])
    expect(seenAt(made, 'hand-over')).toEqual(['record', 'terms'])
  })
})
