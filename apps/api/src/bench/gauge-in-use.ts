import { nanometresOf, type FeatureDefinition, type GaugeResolution, type GaugeSense } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'

/** What a reading takes over from its gauge. */
export interface GaugeInUse {
  readonly id: string
  readonly mark: string
  readonly kind: string
  readonly quantity: string
  readonly resolution: number
  readonly analogue: boolean
  readonly clockwiseIsSmaller: boolean
  readonly standardUncertainty: number
  readonly calibratedUntil: string
  readonly retired: boolean
  /** The day it was calibrated until is over, in the shop's time zone. */
  readonly outOfDate: boolean
}

/** The gauge of that id. @throws ServiceError `gauge-unfit` when the shop has none such */
export async function usedGauge(
  client: PoolClient, gaugeId: string, now: Date, field = 'pass.gaugeId',
): Promise<GaugeInUse> {
  const { rows: [gauge] } = await client.query<GaugeInUse>(
    `SELECT gauge.id, gauge.mark, gauge.kind, gauge.quantity, gauge.clockwise_is_smaller AS "clockwiseIsSmaller", gauge.resolution, gauge.analogue, gauge.retired,
            gauge.standard_uncertainty AS "standardUncertainty", gauge.calibrated_until AS "calibratedUntil",
            gauge.calibrated_until < ($2::timestamptz AT TIME ZONE shop.time_zone)::date AS "outOfDate"
       FROM gauge CROSS JOIN shop
      WHERE gauge.id = $1`,
    [gaugeId, now],
  )
  if (gauge === undefined) {
    throw new ServiceError(
      'gauge-unfit', 'The shop has no such gauge.', field,
    )
  }
  return gauge
}

/**
 * @throws ServiceError `gauge-unfit` for a retired gauge, or one that measures something else than the
 * feature asks for
 */
export function requireFit(gauge: GaugeInUse, definition: FeatureDefinition): void {
  if (gauge.retired) throw new ServiceError('gauge-unfit', `Gauge ${gauge.mark} is retired.`, 'pass.gaugeId')
  if (gauge.quantity !== definition.quantity) {
    throw new ServiceError(
      'gauge-unfit', `Gauge ${gauge.mark} measures ${gauge.quantity}, and ${definition.title} is a ${definition.quantity}.`,
      'pass.gaugeId',
    )
  }
}

/** @throws ServiceError `gauge-out-of-date` */
export function requireInDate(gauge: GaugeInUse): void {
  if (!gauge.outOfDate) return
  throw new ServiceError(
    'gauge-out-of-date', `Gauge ${gauge.mark} is past its calibration day: take another, or have it calibrated.`,
    'pass.gaugeId',
  )
}

/** Which way a gauge counts. */
export function senseOf({ clockwiseIsSmaller }: Pick<GaugeInUse, 'clockwiseIsSmaller'>): GaugeSense {
  return clockwiseIsSmaller ? 'plus-is-smaller' : 'plus-is-larger'
}

/** What the gauge can show of a length. */
export function resolutionOf({ analogue, resolution }: Pick<GaugeInUse, 'analogue' | 'resolution'>): GaugeResolution {
  return { display: analogue ? 'analogue' : 'digital', division: nanometresOf(resolution) }
}
