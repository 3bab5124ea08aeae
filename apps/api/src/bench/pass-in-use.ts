import { hasDrifted, type MeasuringState, type ZeroCheck } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'

/** A pass as the bench names it. */
export interface NamedPass {
  readonly id: string
  readonly partId: string
  readonly feature: string
  readonly number: number
  readonly gaugeId: string
  readonly state: readonly MeasuringState[]
  readonly setOn: { readonly partId: string; readonly feature: string } | null
  readonly setting: { readonly size: number; readonly temperature: number | null } | null
  readonly temperatures: { readonly part: number; readonly room: number } | null
}

/**
 * The pass that readings go to: a new one, or the latest of its feature with the end of each point's chain.
 */
export interface PassInUse {
  readonly isNew: boolean
  /** Id of the reading that counts, by point. */
  readonly chainEnds: ReadonlyMap<string, string>
}

interface KnownPass {
  readonly id: string
  readonly jobId: string
  readonly partId: string
  readonly feature: string
  readonly number: number
  readonly gaugeId: string
  readonly state: MeasuringState[]
  readonly setOnPartId: string | null
  readonly setOnFeature: string | null
  readonly settingSize: number | null
  readonly zeroChecks: ZeroCheck[]
}

/**
 * Finds where readings of a pass go. Only the latest pass of a feature takes any; a new one is the next in
 * number.
 * @throws ServiceError `pass-not-latest`; `gauge-unfit` when a pass that began with one gauge is to go on
 *   with another
 */
export async function passInUse(client: PoolClient, jobId: string, named: NamedPass): Promise<PassInUse> {
  const { rows } = await client.query<KnownPass>(
    `SELECT id, job_id AS "jobId", part_id AS "partId", feature, number, gauge_id AS "gaugeId", state,
            set_on_part_id AS "setOnPartId", set_on_feature AS "setOnFeature", setting_size AS "settingSize",
            coalesce((SELECT json_agg(json_build_object('deviation', deviation, 'allowed', allowed))
                        FROM zero_check_pass JOIN zero_check ON zero_check.id = zero_check_pass.zero_check_id
                       WHERE zero_check_pass.pass_id = pass.id), '[]') AS "zeroChecks"
       FROM pass
      WHERE id = $1 OR (part_id = $2 AND feature = $3)
      ORDER BY number DESC`,
    [named.id, named.partId, named.feature],
  )
  const known = rows.find(({ id }) => id === named.id)
  const latest = rows.find(({ partId, feature }) => partId === named.partId && feature === named.feature)
  if (known === undefined) {
    const next = (latest?.number ?? 0) + 1
    if (named.number !== next) {
      throw new ServiceError(
        'pass-not-latest', `The next measuring of this feature is pass ${next}: look at it again.`,
        'pass.number',
      )
    }
    return { isNew: true, chainEnds: new Map() }
  }
  if (known !== latest || known.jobId !== jobId || known.number !== named.number) {
    throw new ServiceError(
      'pass-not-latest', 'This feature was measured again since: only its latest pass takes readings.',
      'pass.id',
    )
  }
  if (known.zeroChecks.some(hasDrifted)) {
    throw new ServiceError(
      'pass-not-latest', `Pass ${known.number} is void, because its gauge had drifted: measure again.`, 'pass.id',
    )
  }
  requireSameContext(known, named)
  return { isNew: false, chainEnds: await chainEnds(client, named.id) }
}

/**
 * One pass is one measuring: with one gauge on one setting, in one state. Temperatures are those that it began with.
 */
function requireSameContext(known: KnownPass, named: NamedPass): void {
  const isSameMate = known.setOnPartId === (named.setOn?.partId ?? null)
    && known.setOnFeature === (named.setOn?.feature ?? null)
  const isSameState = [...known.state].sort().join() === [...named.state].sort().join()
  const isSameSetting = known.settingSize === (named.setting?.size ?? null)
  if (known.gaugeId === named.gaugeId && isSameMate && isSameState && isSameSetting) return
  throw new ServiceError(
    'gauge-unfit', `Pass ${known.number} began with another gauge or setting, or in another state: go on with those, or measure again.`,
    'pass.gaugeId',
  )
}

async function chainEnds(client: PoolClient, passId: string): Promise<Map<string, string>> {
  const { rows } = await client.query<{ id: string; point: string }>(
    `SELECT id, point FROM reading
      WHERE pass_id = $1
        AND NOT EXISTS (SELECT FROM reading AS correction
                         WHERE correction.supersedes = reading.id
                           AND correction.pass_id = reading.pass_id AND correction.point = reading.point)`,
    [passId],
  )
  return new Map(rows.map(({ id, point }) => [point, id]))
}
