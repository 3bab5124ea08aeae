import { cylinderPositions } from '../layout/banks.ts'
import type { EngineSpecification, ValveTrain } from './specification.ts'

export const valveKinds = ['intake', 'exhaust'] as const
export type ValveKind = (typeof valveKinds)[number]

export const valveKindTitles: Record<ValveKind, string> = { intake: 'Intake', exhaust: 'Exhaust' }

/** One valve: numbered within its kind, cylinder by cylinder; heads count from the one over cylinder 1. */
export interface Valve {
  readonly kind: ValveKind
  readonly number: number
  readonly cylinder: number
  readonly head: number
}

/** Pushrods and two valves a cylinder, unless the engine says otherwise. Common practice, no source. */
const usual: ValveTrain = { camshaft: 'in-block', intakeValves: 1, exhaustValves: 1 }

export function valveTrainOf({ valveTrain }: Pick<EngineSpecification, 'valveTrain'>): ValveTrain {
  return valveTrain ?? usual
}

/** A head for each bank, from the one over cylinder 1. */
export function headsOf(engine: EngineSpecification): readonly number[] {
  return banksOf(engine).map((_, index) => index + 1)
}

/** Cylinders under one head. */
export function cylindersUnder(engine: EngineSpecification, head: number): number {
  const bank = banksOf(engine)[head - 1]
  return cylinderPositions(engine).filter((position) => position.bank === bank).length
}

/** Bolts of one head: as the engine says, else four around each cylinder with two shared between neighbours. Common practice, no source. */
export function headBoltCount(engine: EngineSpecification, head: number): number {
  return engine.head?.bolts ?? 2 * (cylindersUnder(engine, head) + 1)
}

/** Every valve of a kind, cylinder by cylinder. */
export function valvesOf(engine: EngineSpecification, kind: ValveKind): readonly Valve[] {
  const banks = banksOf(engine)
  const train = valveTrainOf(engine)
  const each = kind === 'intake' ? train.intakeValves : train.exhaustValves
  return cylinderPositions(engine).flatMap(({ cylinder, bank }) =>
    Array.from({ length: each }, (_, index) => ({
      kind, number: (cylinder - 1) * each + index + 1, cylinder, head: banks.indexOf(bank) + 1,
    })),
  )
}

/** A camshaft in the block has a bearing beside each main. Common practice, no source; none overhead. */
export function camBearingsOf(engine: EngineSpecification): readonly number[] {
  return isInBlock(engine) ? Array.from({ length: engine.mains.count }, (_, index) => index + 1) : []
}

/** One lifter a valve under pushrods, numbered intake valves first; none in the block of an overhead camshaft. */
export function liftersOf(engine: EngineSpecification): readonly number[] {
  const valves = valveKinds.flatMap((kind) => valvesOf(engine, kind))
  return isInBlock(engine) ? valves.map((_, index) => index + 1) : []
}

/** Whether the camshaft runs in the block and works the valves by lifters and pushrods. */
export function isInBlock(engine: EngineSpecification): boolean {
  return valveTrainOf(engine).camshaft === 'in-block'
}

function banksOf(engine: EngineSpecification) {
  return [...new Set(cylinderPositions(engine).map(({ bank }) => bank))]
}
