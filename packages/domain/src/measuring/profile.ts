import type { FormFigure, FormReading } from './form.ts'

/**
 * Barrel of a bore or journal: how far a depth between exceeds the larger of the two ends, the most on any one axis; 0
 * when none does; null when no axis was read at both ends and between. Base unit, on diameter. Common practice, no source.
 * A part that opens toward one end only is tapered, not barrelled.
 * @param stations all depths in order along the part
 * @formula barrel
 */
export function barrel(readings: readonly FormReading[], stations: readonly string[]): FormFigure | null {
  return worstBetween(readings, stations, (ends, between) => Math.max(...between) - Math.max(...ends))
}

/**
 * Bell mouth: how far the smaller of the two ends exceeds a depth between, the most on any one axis; on a journal,
 * a waist. 0 when it does not; null as for barrel. Base unit, on diameter. Common practice, no source.
 * @param stations all depths in order along the part
 * @formula bell
 */
export function bell(readings: readonly FormReading[], stations: readonly string[]): FormFigure | null {
  return worstBetween(readings, stations, (ends, between) => Math.min(...ends) - Math.min(...between))
}

function worstBetween(
  readings: readonly FormReading[],
  stations: readonly string[],
  excess: (ends: readonly [number, number], between: readonly number[]) => number,
): FormFigure | null {
  const [first, last] = [stations[0], stations.at(-1)]
  let worst: FormFigure | null = null
  for (const axis of new Set(readings.map((reading) => reading.axis))) {
    const onAxis = new Map(readings.filter((reading) => reading.axis === axis).map(({ station, value }) => [station, value]))
    const [top, bottom] = [onAxis.get(first ?? ''), onAxis.get(last ?? '')]
    const between = stations.slice(1, -1).flatMap((station) => onAxis.get(station) ?? [])
    if (top === undefined || bottom === undefined || between.length === 0) continue
    const value = Math.max(0, excess([top, bottom], between))
    if (worst === null || value > worst.value) worst = { value, at: axis }
  }
  return worst
}
