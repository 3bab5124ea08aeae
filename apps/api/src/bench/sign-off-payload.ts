import { JUDGE_VERSION, type Limits, type Verdict } from '@tenths/domain'
import type { Evidence } from '../judging/evidence.ts'
import type { Standing } from '../judging/standing.ts'
import { sealedInspections, type SealedInspection } from '../inspections/sealed-inspections.ts'
import type { SealedLot } from '../lots/load-lots.ts'
import type { SealedPhotograph } from '../photographs/load-photographs.ts'
import type { SealedReading } from './relied-readings.ts'
import type { SealedZeros } from './sealed-zeros.ts'

/** A signer's name is part of the seal; customers are never named in one. */
export interface Signer {
  readonly id: string
  readonly name: string
}

/** What a signature says that was given on a device without a network and confirmed with PINs later. */
export interface WithoutNetwork {
  /** By the device's own clock. */
  readonly signedAt: string
  readonly confirmed: readonly { readonly person: string; readonly at: string }[]
}

/** What a signature stands for, as it is sealed and never judged again. */
export interface SignOffPayload {
  readonly signOff: string
  readonly operation: { readonly key: string; readonly title: string }
  readonly definitionHash: string
  readonly planRevision: number
  readonly judgeVersion: number
  readonly requirements: readonly (Pick<Verdict, 'kind' | 'least' | 'greatest' | 'uncertainty' | 'guardBand' | 'readings'> & {
    readonly key: string
    readonly title: string
    readonly limits: Limits
    /** Finding whose concession covers it. */
    readonly concession: string | null
  })[]
  readonly readings: readonly SealedReading[]
  /** Left out where no gauge was set on a size. */
  readonly zeros?: SealedZeros
  readonly observations: readonly {
    readonly id: string; readonly item: string; readonly title: string; readonly outcome: string; readonly note: string
    readonly person: string; readonly since?: string
  }[]
  readonly concessions: readonly {
    readonly finding: string; readonly requirement: string; readonly low: number; readonly high: number
    readonly reason: string; readonly by: string
  }[]
  /** Results of the tests that count; left out where the step has none. */
  readonly inspections?: readonly SealedInspection[]
  readonly lots?: readonly SealedLot[]
  readonly photographs?: readonly SealedPhotograph[]
  readonly signers: readonly Signer[]
  /** Only of a signature that waited to be confirmed. */
  readonly withoutNetwork?: WithoutNetwork
}

/** Puts together what a sign-off seals. */
export function signOffPayload(
  { id, hash, evidence, standing, readings, zeros, signers, withoutNetwork, ...records }: {
    id: string; hash: string; evidence: Evidence; standing: Standing
    readings: readonly SealedReading[]; zeros: SealedZeros; signers: readonly Signer[]
    withoutNetwork: WithoutNetwork | null
    lots: readonly SealedLot[]; photographs: readonly SealedPhotograph[]
  },
): SignOffPayload {
  const { operation, verdicts, conceded } = standing
  const requirements = new Map(
    evidence.plan.requirements.map((requirement) => [requirement.key, requirement]),
  )
  return {
    signOff: id,
    operation: { key: operation.key, title: operation.title },
    definitionHash: hash,
    planRevision: evidence.planRevision,
    judgeVersion: JUDGE_VERSION,
    requirements: verdicts.flatMap(({
      requirement: key, kind, least, greatest, uncertainty, guardBand, readings: ids,
    }) => {
      const requirement = requirements.get(key)
      return requirement === undefined ? [] : [{
        key, title: requirement.title, limits: requirement.limits, kind, least, greatest, uncertainty,
        guardBand,
        readings: ids, concession: conceded.get(key)?.findingId ?? null,
      }]
    }),
    readings,
    ...((zeros.checked.length > 0 || zeros.unchecked.length > 0) && { zeros }),
    observations: operation.observations.flatMap(({ key, title }) => {
      const tick = evidence.observations.find(
        ({ operationKey, item }) => operationKey === operation.key && item === key,
      )
      return tick === undefined
        ? []
        : [{
            id: tick.id, item: key, title, outcome: tick.outcome, note: tick.note, person: tick.personId,
            ...(tick.since === null ? {} : { since: tick.since.toISOString() }),
          }]
    }),
    concessions: [...conceded.values()].map(({ findingId, requirement, low, high, reason, by }) => ({
      finding: findingId, requirement, low, high, reason, by,
    })),
    ...present('inspections', sealedInspections(operation, evidence)),
    ...present('lots', records.lots),
    ...present('photographs', records.photographs),
    signers,
    ...(withoutNetwork && { withoutNetwork }),
  }
}

/** A list under its name, or nothing: a step without such records is sealed without mentioning them. */
function present<Name extends string, Entry>(name: Name, entries: readonly Entry[]): { [N in Name]?: readonly Entry[] } {
  return (entries.length === 0 ? {} : { [name]: entries }) as { [N in Name]?: readonly Entry[] }
}
