import { nanometresOf, type Asked, type Operation, type Plan, type Requirement } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import type { Evidence } from './evidence.ts'
import { obstaclesOf } from './obstacles.ts'
import { standingsOf, type Standing } from './standing.ts'

const bore = { place: 'block', feature: 'bore-1' }
const requirement: Requirement = {
  key: 'bore-size/1', fit: 'bore-size', title: 'Bore 1', position: 1, quantity: 'length',
  measurand: { kind: 'feature', feature: bore, reducer: 'each' },
  limits: { low: 1_000, high: 2_000, target: null, adviceLow: null, adviceHigh: null },
  guard: { kind: 'none' }, critical: false, remedy: { low: null, high: null },
  why: {
    rule: 'bore-size', revision: 0, level: 'starter', formula: '', worked: [],
    source: 'invented for this test',
  },
}

function operation(key: string, after: readonly string[], change: Partial<Operation> = {}): Operation {
  return {
    key, title: key, stage: 'machining', bench: 'hone', minutes: 10, after, features: [], requirements: [],
    observations: [], cautions: [], signatures: 1, ...change,
  }
}

const plan = {
  features: [{
    ...bore, title: 'Bore 1', shape: 'hole', quantity: 'length', nominal: nanometresOf(1_500), state: [],
    points: ['top', 'middle', 'bottom'].map((station) => ({ key: station, station, axis: 'thrust' })),
  }],
  requirements: [requirement],
  operations: [
    operation('wash', [], { observations: [{ key: 'clean', title: 'Clean cloth' }] }),
    operation('hone', ['wash'], { features: [bore], requirements: [requirement.key] }),
    operation('assemble', ['hone']),
  ],
} as unknown as Plan

const nothing: Evidence = {
  jobId: 'job', planRevision: 1, plan, settings: { coverageFactor: 2, unit: 'millimetre' },
  placed: [{ place: 'block', partId: 'block', lot: '' }], passes: [], observations: [], inspections: [], concessions: [], signOffs: [],
  openFindings: [], worked: [],
}

const signed = (operationKey: string, live = true) => ({
  id: operationKey, operationKey, definitionHash: 'h', live,
})

function passOf(number: number, values: Record<string, number>): Evidence['passes'][number] {
  return {
    id: `pass-${number}`, operationKey: 'hone', partId: 'block', feature: 'bore-1', number,
    standardUncertainty: 1,
    state: [], setOn: null,
    readings: Object.entries(values).map(([point, value]) => ({ id: `${number}-${point}`, point, value })),
  }
}

function standing(key: string, evidence: Partial<Evidence>): Standing {
  return standingsOf({ ...nothing, ...evidence }).find(({ operation: { key: one } }) => one === key)!
}

const titleOf = () => 'Bore 1'
const obstacles = (key: string, evidence: Partial<Evidence>) => obstaclesOf(standing(key, evidence), titleOf)

describe('where an operation stands', () => {
  it('waits while any earlier step is open, however far back', () => {
    expect(standing('wash', {}).state).toBe('ready')
    expect(standing('hone', {}).state).toBe('waiting')
    const reopened = standing('assemble', { signOffs: [signed('wash', false), signed('hone')] })
    expect(reopened.state).toBe('waiting')
    expect(reopened.waitsFor.map(({ key }) => key)).toEqual(['wash'])
    expect(standing('wash', { signOffs: [signed('wash', false)] }).state).toBe('re-opened')
  })

  it('is not ready to sign until the pass is full', () => {
    const signOffs = [signed('wash')]
    expect(obstacles('hone', { signOffs, passes: [passOf(1, { top: 1_500, middle: 1_500 })] }))
      .toEqual(['not fully measured: Bore 1'])
    expect(
      obstacles('hone', { signOffs, passes: [passOf(1, { top: 1_500, middle: 1_500, bottom: 1_500 })] }),
    ).toEqual([])
  })

  it('is not ready to sign on what an earlier step measured', () => {
    const asReceived = { ...passOf(1, { top: 1_500, middle: 1_500, bottom: 1_500 }), operationKey: 'wash' }
    expect(obstacles('hone', { passes: [asReceived] })).toEqual(['not fully measured: Bore 1'])
    expect(standing('hone', { passes: [asReceived] }).verdicts.map(({ kind }) => kind)).toEqual(['within'])
  })

  it('is not ready to sign while something is to be seen, or seen not to be so', () => {
    expect(obstacles('wash', {})).toEqual(['not ticked as seen: Clean cloth'])
    const tick = (outcome: 'seen' | 'not-seen' | 'not-applicable') =>
      [{ id: '1', operationKey: 'wash', item: 'clean', outcome, note: '', since: null, personId: 'p' }]
    expect(obstacles('wash', { observations: tick('not-seen') })).toEqual(['not ticked as seen: Clean cloth'])
    expect(obstacles('wash', { observations: tick('seen') })).toEqual([])
    expect(obstacles('wash', { observations: tick('not-applicable') })).toEqual([])
  })

  it('is not ready to sign on a tick without the words or the time that it asks for', () => {
    const asking = (asks: Asked) => ({
      ...plan,
      operations: [operation('wash', [], { observations: [{ key: 'clean', title: 'Clean cloth', asks }] })],
    }) as unknown as Plan
    const tick = (note: string, since: Date | null) =>
      [{ id: '1', operationKey: 'wash', item: 'clean', outcome: 'seen' as const, note, since, personId: 'p' }]
    const words = asking({ kind: 'words', label: 'Which' })
    expect(obstacles('wash', { plan: words, observations: tick('', null) })).toEqual(['not ticked as seen: Clean cloth'])
    expect(obstacles('wash', { plan: words, observations: tick('Plate 4', null) })).toEqual([])
    const since = asking({ kind: 'since', minutes: 30 })
    expect(obstacles('wash', { plan: since, observations: tick('long', null) })).toEqual(['not ticked as seen: Clean cloth'])
    expect(obstacles('wash', { plan: since, observations: tick('', new Date(0)) })).toEqual([])
  })

  it('is not ready to sign while an area is untested, shows something, or was tested on another part', () => {
    const tested = {
      ...plan,
      operations: [operation('wash', [], {
        observations: [], inspections: [{ key: 'webs', title: 'Main webs', place: 'block', methods: ['dye-penetrant'] }],
      })],
    } as unknown as Plan
    const result = (change: Partial<Evidence['inspections'][number]>): Partial<Evidence> => ({
      plan: tested,
      inspections: [{
        id: 'i', operationKey: 'wash', item: 'webs', partId: 'block', method: 'dye-penetrant', pressure: null,
        result: 'no-indication', note: '', inspectorId: 'p', personId: 'p', conceded: false, ...change,
      }],
    })
    expect(obstacles('wash', { plan: tested })).toEqual(['not tested: Main webs'])
    expect(obstacles('wash', result({}))).toEqual([])
    expect(obstacles('wash', result({ partId: 'another block' }))).toEqual(['not tested: Main webs'])
    expect(obstacles('wash', result({ result: 'indication' }))).toEqual(['not sound: Main webs'])
    expect(obstacles('wash', result({ result: 'indication', conceded: true }))).toEqual([])
  })

  it('lets a part that moves take the result of its test along', () => {
    const areas = [1, 2].map((number) => (
      { key: `rod-${number}`, title: `Rod ${number}`, place: `rod/${number}`, methods: ['dye-penetrant' as const] }))
    const tested = { ...plan, operations: [operation('wash', [], { observations: [], inspections: areas })] } as unknown as Plan
    const result = (item: string, partId: string): Evidence['inspections'][number] => ({
      id: item, operationKey: 'wash', item, partId, method: 'dye-penetrant', pressure: null, result: 'no-indication',
      note: '', inspectorId: 'p', personId: 'p', conceded: false,
    })
    const inspections = [result('rod-1', 'A'), result('rod-2', 'B')]
    const placed = (first: string, second: string) =>
      [{ place: 'rod/1', partId: first, lot: '' }, { place: 'rod/2', partId: second, lot: '' }]
    expect(obstacles('wash', { plan: tested, inspections, placed: placed('B', 'A') })).toEqual([])
    expect(obstacles('wash', { plan: tested, inspections, placed: placed('C', 'A') })).toEqual(['not tested: Rod 1'])
  })

  it('is not ready to sign while a part that goes in has no lot', () => {
    const assembling = { ...plan, operations: [operation('wash', [], { observations: [], lots: ['block'] })] } as unknown as Plan
    expect(obstacles('wash', { plan: assembling })).toEqual(['without lot or serial: block'])
    expect(obstacles('wash', { plan: assembling, placed: [{ place: 'block', partId: 'block', lot: 'L-1' }] })).toEqual([])
  })

  it('lets an outside be signed only while a concession covers what was measured', () => {
    const passes = [passOf(1, { top: 1_500, middle: 1_500, bottom: 2_100 })]
    const concession = {
      findingId: 'f', requirement: requirement.key, low: 1_500, high: 2_100, reason: '', by: 'Owner',
    }
    expect(obstacles('hone', { passes })).toEqual(['outside: Bore 1'])
    expect(obstacles('hone', { passes, concessions: [concession] })).toEqual([])
    expect(
      obstacles('hone', { passes, concessions: [{ ...concession, high: 2_099 }] }),
    ).toEqual(['outside: Bore 1'])
    const remeasured = [passOf(2, { top: 1_500 })]
    expect(obstacles('hone', { passes: remeasured, concessions: [concession] })).toEqual(
      ['not fully measured: Bore 1'],
    )
  })

  it('is stopped by an open finding on it, and from planning on by one of the whole job', () => {
    const on = (operationKey: string | null, stops = true) => ({
      openFindings: [{ operationKey, title: 'Crack', stops }],
    })
    const passes = [passOf(1, { top: 1_500, middle: 1_500, bottom: 1_500 })]
    expect(obstacles('hone', { passes, ...on('hone') })).toEqual(['waiting for the owner: Crack'])
    expect(obstacles('hone', { passes, ...on(null) })).toEqual(['waiting for the owner: Crack'])
    expect(obstacles('hone', { passes, ...on('hone', false) })).toEqual([])
    expect(obstacles('hone', { passes, ...on('wash') })).toEqual([])
  })
})
