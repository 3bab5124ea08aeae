import type { takeReadings as takeReadingsRoute } from '@tenths/contract'
import {
  besideNow, checkMagnitude, featureKey, materialOf, measurementsOf, numbersWith, placeTitle, type FeatureDefinition,
  type Operation, type Plan,
} from '@tenths/domain'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { featuresAt } from '../judging/features-of.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPasses } from '../judging/load-passes.ts'
import { loadPlaced } from '../judging/load-placed.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { allBefore } from '../judging/route-order.ts'
import { numbersInForce } from '../plausibility/numbers-in-force.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { relyingOnFeature, relyingOnReadings, type FeatureMeasuredAgain } from '../re-opening/relying.ts'
import { checkFresh } from './check-fresh.ts'
import { requireFit, requireInDate, usedGauge } from './gauge-in-use.ts'
import { passInUse, type NamedPass, type PassInUse } from './pass-in-use.ts'
import { operationOf, requireReachable } from './reach.ts'
import { ownLinks, type NewReading } from './reading-chain.ts'
import { insertPass, insertReadings, withoutKnown } from './readings-table.ts'
import { requireSamePerson } from './same-person.ts'
import { loadSurroundings } from './surroundings.ts'
import { beginWork, earliest } from './work-time.ts'

type Route = typeof takeReadingsRoute

/**
 * Takes readings of one pass: the first of a new pass, more of the latest one, or corrections in it. Whatever
 * was signed and relied on what they change re-opens in the same transaction.
 */
export async function takeReadings(
  { client, person, deviceId, now, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'take-readings', jobId, operationKey: body.operationKey })
  requireSamePerson(person.id, body.takenBy, 'takenBy')
  await lockJob(client, jobId)
  const { plan, settings } = await loadPlan(client, jobId)
  const operation = operationOf(plan, body.operationKey)
  const placed = await loadPlaced(client, jobId)
  const definition = measuredHere(plan, operation, placed, body.pass)
  requireMate(plan, placed, definition, body.pass.setOn)

  const fresh = await withoutKnown(client, body.pass.id, body.readings)
  const reopened: Answer<Route>['reopened'] = []
  if (fresh.length > 0) {
    const gauge = await usedGauge(client, body.pass.gaugeId, now)
    const pass: NamedPass = { ...body.pass, setting: body.pass.setting ?? null, temperatures: body.pass.temperatures ?? null }
    const inUse = await passInUse(client, jobId, pass)
    requireFit(gauge, definition)
    const isCorrecting = fresh.every(({ supersedes }) => supersedes !== null)
    // What was written down wrongly may always be put right; anything newly measured needs its turn and a
    // gauge in date.
    if (!isCorrecting) {
      await requireReachable(client, { jobId, plan, operation, behind: body.behind })
      requireInDate(gauge)
    }
    requireSetting(pass, definition)
    const material = isCorrectable(pass, definition) ? materialOf(definition, plan.input) : null
    const { revision: numbersRevision, own } = await numbersInForce(client)
    const checked = checkFresh(
      ownLinks(fresh, inUse.chainEnds, definition),
      {
        definition, pass, opensPass: inUse.isNew, operationKey: operation.key, gauge, material, unit: settings.unit, by: person.name,
        numbers: numbersWith(own),
      },
      await loadSurroundings(client, jobId, { plan, operation, placed, definition }),
    )
    if (inUse.isNew) {
      await insertPass(client, {
        ...pass, jobId, operationKey: operation.key, standardUncertainty: gauge.standardUncertainty, material,
        personId: person.id, deviceId,
        beside: besideNow(definition, measurementsOf(placed, await loadPasses(client, jobId))),
      })
    }
    await insertReadings(client, { passId: body.pass.id, personId: person.id, deviceId, readings: checked, numbersRevision })
    if (!isCorrecting) {
      await beginWork(client, { jobId, operationKey: operation.key, personId: person.id }, {
        deviceAt: earliest(fresh), deviceOffset: body.deviceOffset,
      })
    }
    const earlierSteps = allBefore(plan.operations).get(operation.key) ?? new Set<string>()
    reopened.push(...await reOpenRelying(
      { client, jobId, personId: person.id }, inUse, fresh, { ...body.pass, earlierSteps }, definition,
    ))
  }
  const { standings } = await projectOperations(client, jobId)
  const standing = standings.find((one) => one.operation.key === operation.key)
  return { verdicts: structuredClone(standing?.verdicts ?? []) as Answer<Route>['verdicts'], reopened }
}

/**
 * The feature as this operation or one of its requirements knows it, in the place where the part sits now.
 */
function measuredHere(
  plan: Plan, operation: Operation, placed: readonly { place: string; partId: string }[],
  { partId, feature }: { partId: string; feature: string },
): FeatureDefinition {
  const place = placed.find((one) => one.partId === partId)?.place
  if (place === undefined) {
    throw new ServiceError(
      'part-unknown', 'This part is in no place of this job: place it before you measure it.', 'pass.partId',
    )
  }
  const definition = featuresAt(plan, operation).find((one) => one.place === place && one.feature === feature)
  if (definition === undefined) {
    throw new ServiceError(
      'feature-unknown', `“${operation.title}” measures no such feature of ${placeTitle(place)}.`,
      'pass.feature',
    )
  }
  return definition
}

/** A gauge can be set only on the very part that this feature is to fit, where it sits now. */
function requireMate(
  plan: Plan, placed: readonly { place: string; partId: string }[], definition: FeatureDefinition,
  setOn: { partId: string; feature: string } | null,
): void {
  if (setOn === null) return
  const own = featureKey(definition)
  const isMate = plan.requirements.some(({ measurand }) => {
    if (measurand.kind !== 'clearance') return false
    const [hole, shaft] = [featureKey(measurand.hole), featureKey(measurand.shaft)]
    const mate = hole === own ? measurand.shaft : measurand.hole
    return (hole === own || shaft === own) && mate.feature === setOn.feature
      && placed.some(({ place, partId }) => place === mate.place && partId === setOn.partId)
  })
  if (!isMate) {
    throw new ServiceError(
      'part-unknown', `${definition.title} is not fitted to the part that the gauge was set on.`,
      'pass.setOn',
    )
  }
}

/** A comparator is set on something of the size that it measures, and not on the mating part as well. */
function requireSetting({ setting, setOn }: NamedPass, definition: FeatureDefinition): void {
  if (setting === null) return
  if (setOn !== null || definition.quantity !== 'length') {
    throw new ServiceError(
      'gauge-unfit', 'A gauge is set to zero on a size or on the mating part, not on both.', 'pass.setting',
    )
  }
  const doubt = checkMagnitude(setting.size, definition.nominal)
  if (doubt !== null || setting.size <= 0) {
    throw new ServiceError(
      'value-implausible', doubt?.sentence ?? 'A gauge is set on a size that is more than nothing.', 'pass.setting.size',
    )
  }
}

/** Temperatures are told, and they are told of a size. */
function isCorrectable({ temperatures, setOn }: NamedPass, { quantity }: FeatureDefinition): boolean {
  return temperatures !== null && setOn === null && quantity === 'length'
}

async function reOpenRelying(
  { client, jobId, personId }: Pick<CommandContext, 'client'> & { jobId: string; personId: string },
  inUse: PassInUse, fresh: readonly NewReading[], measured: FeatureMeasuredAgain & { number: number },
  definition: FeatureDefinition,
): Promise<{ key: string; title: string }[]> {
  const superseded = fresh.flatMap(({ supersedes }) => supersedes ?? [])
  if (superseded.length > 0) {
    const reason = `${definition.title}: ${fresh.find(({ reason: said }) => said !== null)?.reason ?? 'corrected'}`
    return reOpen(
      client, await relyingOnReadings(client, jobId, superseded),
      { jobId, personId, cause: 'correction', reason },
    )
  }
  // Nobody can have relied on a feature before it was measured for the first time.
  if (!inUse.isNew || measured.number === 1) return []
  const relying = await relyingOnFeature(client, jobId, measured)
  return reOpen(client, relying, {
    jobId, personId, cause: 'new-pass',
    reason: `${definition.title} was measured again (pass ${measured.number}).`,
  })
}
