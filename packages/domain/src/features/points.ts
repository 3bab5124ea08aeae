import type { Point } from './feature.ts'

/** One point, keyed by where it is along and around the feature. */
export function point(station: string, axis: string): Point {
  return { key: `${station}/${axis}`, station, axis }
}

/** All stations on one axis, then back on the next: the way a hand moves a gauge without turning it twice. */
export function toAndFro(stations: readonly string[], axes: readonly string[]): readonly Point[] {
  return axes.flatMap((axis, index) => {
    const along = index % 2 === 0 ? stations : stations.toReversed()
    return along.map((station) => point(station, axis))
  })
}
