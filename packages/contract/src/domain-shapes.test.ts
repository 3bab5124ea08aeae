import type * as domain from '@tenths/domain'
import { describe, expect, expectTypeOf, it } from 'vitest'
import type { z } from 'zod'
import * as contract from './index.ts'

type DeepReadonly<T> = T extends (infer E)[] ? readonly DeepReadonly<E>[] : T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T
type Wire<T extends z.ZodType> = DeepReadonly<z.infer<T>>

describe('what travels', () => {
  it('has the very shape that the domain judges and plans with', () => {
    expectTypeOf<domain.Requirement>().toExtend<Wire<typeof contract.Requirement>>()
    expectTypeOf<Wire<typeof contract.Requirement>>().toExtend<domain.Requirement>()
    expectTypeOf<domain.FeatureDefinition>().toExtend<Wire<typeof contract.FeatureDefinition>>()
    expectTypeOf<domain.Operation>().toExtend<Wire<typeof contract.Operation>>()
    expectTypeOf<Wire<typeof contract.Operation>>().toExtend<domain.Operation>()
    expectTypeOf<domain.BobweightFigure>().toExtend<Wire<typeof contract.BobweightFigure>>()
    expectTypeOf<Wire<typeof contract.BobweightFigure>>().toExtend<domain.BobweightFigure>()
    expectTypeOf<domain.Verdict>().toExtend<Wire<typeof contract.Verdict>>()
    expectTypeOf<domain.PlanFinding>().toExtend<Wire<typeof contract.PlanFinding>>()
    expectTypeOf<domain.CylinderOrientation>().toExtend<Wire<typeof contract.CylinderOrientation>>()
    expectTypeOf<domain.RingClock>().toExtend<Wire<typeof contract.RingClock>>()
    expectTypeOf<Wire<typeof contract.RingClock>>().toExtend<domain.RingClock>()
    expect(contract.Requirement.shape.key).toBeDefined()
  })

  it('names each route once', () => {
    const addresses = Object.values(contract.routes).map((route) => `${route.method} ${route.path}`)
    expect(addresses.length).toBeGreaterThan(30)
    expect(new Set(addresses).size).toBe(addresses.length)
  })
})
