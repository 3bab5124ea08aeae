import type { checkZero as checkZeroRoute } from '@tenths/contract'
import {
  allowedDrift, DomainError, hasDrifted, numbersWith, readerUnits, readZero, sayLength, type ReaderUnit,
} from '@tenths/domain'
import type { PoolClient } from 'pg'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { numbersInForce } from '../plausibility/numbers-in-force.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { relyingOnReadings } from '../re-opening/relying.ts'
import { requireSamePerson } from './same-person.ts'
import { resolutionOf, senseOf, usedGauge, type GaugeInUse } from './gauge-in-use.ts'
import {
  insertZeroCheck, loadZeroCheck, passesSinceGoodZero, readingsOf, readElsewhere, type NewZeroCheck,
} from './zero-checks-table.ts'

type Route = typeof checkZeroRoute

/**
 * Keeps what a gauge showed on its setting after it was read. A drifted zero voids what it read on this job since its
 * last good one there, and re-opens whatever was signed on that.
 */
export async function checkZero(
  { client, person, deviceId, now, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'check-zero', jobId })
  requireSamePerson(person.id, body.checkedBy, 'checkedBy')
  await lockJob(client, jobId)
  const { settings } = await loadPlan(client, jobId)
  const gauge = await usedGauge(client, body.gaugeId, now, 'gaugeId')
  const known = await loadZeroCheck(client, body.id)
  if (known !== null) {
    requireSame(known, { jobId, gaugeId: gauge.id, deviation: body.deviation })
    return answerTo(client, known, known.passes, [], jobId)
  }
  requireTyped(body, gauge, settings.unit)
  const { zeroDrift } = numbersWith((await numbersInForce(client)).own)
  const check: NewZeroCheck = {
    ...body, jobId, allowed: allowedDrift(resolutionOf(gauge), zeroDrift),
    personId: person.id, deviceId,
  }
  const passes = await passesSinceGoodZero(client, jobId, gauge.id)
  await insertZeroCheck(client, check, passes)
  const reopened = hasDrifted(check)
    ? await reOpen(client, await relyingOnReadings(client, jobId, await readingsOf(client, passes)), {
      jobId, personId: person.id, cause: 'zero-drift',
      reason: `Gauge ${gauge.mark} was ${sayLength(Math.abs(body.deviation), settings.unit)} off its zero when it was checked.`,
    })
    : []
  await projectOperations(client, jobId)
  return answerTo(client, check, passes.length, reopened, jobId)
}

async function answerTo(
  client: PoolClient, check: Pick<NewZeroCheck, 'deviation' | 'allowed' | 'gaugeId'>, passes: number,
  reopened: Answer<Route>['reopened'], jobId: string,
): Promise<Answer<Route>> {
  const drifted = hasDrifted(check)
  return {
    hasDrifted: drifted, allowed: check.allowed, passes, reopened,
    alsoRead: drifted ? await readElsewhere(client, jobId, check.gaugeId) : [],
  }
}

function requireSame(
  known: { jobId: string; gaugeId: string; deviation: number }, sent: { jobId: string; gaugeId: string; deviation: number },
): void {
  if (known.jobId === sent.jobId && known.gaugeId === sent.gaugeId && known.deviation === sent.deviation) return
  throw new ServiceError('already-exists', 'This zero was checked already, with another figure.', 'id')
}

/** The figure must be what was typed, by the gauge's own sign. */
function requireTyped(
  { typed, deviation }: { typed: string; deviation: number }, gauge: GaugeInUse, unit: ReaderUnit,
): void {
  const read = (as: ReaderUnit): number | null => {
    try {
      return readZero(typed, as, senseOf(gauge))
    } catch (error) {
      if (error instanceof DomainError) return null
      throw error
    }
  }
  if (readerUnits.some((as) => read(as) === deviation)) return
  try {
    readZero(typed, unit, senseOf(gauge))
  } catch (error) {
    if (error instanceof DomainError) throw new ServiceError(error.code, error.message, 'typed')
    throw error
  }
  throw new ServiceError('value-implausible', `“${typed}” is not the figure that came with it. Type it again.`, 'typed')
}
