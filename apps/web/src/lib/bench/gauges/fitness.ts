import type { FeatureDefinition, GaugeResolution, GaugeSense } from '@tenths/domain'
import { nanometresOf } from '@tenths/domain'
import { sayDay } from '../../days.ts'
import type { Gauge } from '../sheet/operation-sheet.ts'

/** Why a gauge may not be used for a feature today; null when it may. */
export function whyNot(gauge: Gauge, feature: Pick<FeatureDefinition, 'quantity'>, today: string): string | null {
  if (gauge.retired) return `${gauge.mark} is retired.`
  if (gauge.calibratedUntil < today) return `${gauge.mark} was calibrated until ${sayDay(gauge.calibratedUntil)}: take another gauge.`
  if (gauge.quantity !== feature.quantity) return `${gauge.mark} measures ${gauge.quantity}, not ${feature.quantity}.`
  return null
}

/** What the gauge can show, for the check that a value is not finer than that; null for anything but a length. */
export function resolutionOf(gauge: Gauge): GaugeResolution | null {
  if (gauge.quantity !== 'length') return null
  return { display: gauge.analogue ? 'analogue' : 'digital', division: nanometresOf(gauge.resolution) }
}

/** Which way the gauge counts. */
export function senseOf({ clockwiseIsSmaller }: Gauge): GaugeSense {
  return clockwiseIsSmaller ? 'plus-is-smaller' : 'plus-is-larger'
}
