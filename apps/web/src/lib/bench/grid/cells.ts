import type { FeatureDefinition, Point } from '@tenths/domain'
import { pointKey } from '@tenths/domain'
import { pointTitle } from '../words/point-words.ts'

/** One place where one value is typed. */
export interface Cell {
  /** `place#feature@point`: the text under which a verdict lists it as missing. */
  readonly key: string
  readonly feature: FeatureDefinition
  readonly point: Point
}

/** All cells in the order a hand moves: feature by feature, and in each as its points are listed. */
export function cellsInHandOrder(features: readonly FeatureDefinition[]): readonly Cell[] {
  return features.flatMap((feature) =>
    feature.points.map((point) => ({ key: pointKey(feature, point.key), feature, point })))
}

/** What a person calls the cell: “Bore 3, middle, thrust axis”. */
export function cellTitle({ feature, point }: Cell): string {
  return feature.points.length === 1 ? feature.title : `${feature.title}, ${pointTitle(point)}`
}

/**
 * Where the hand goes after a value: the next empty cell on its way, then any that was left out before; null when all
 * are filled.
 */
export function nextEmptyCell(cells: readonly Cell[], from: string, isFilled: (key: string) => boolean): Cell | null {
  const start = cells.findIndex(({ key }) => key === from)
  const onward = [...cells.slice(start + 1), ...cells.slice(0, start + 1)]
  return onward.find(({ key }) => !isFilled(key)) ?? null
}
