import type { FeatureDefinition, Point } from '@tenths/domain'

/** The orders in which people move a gauge over the points of one feature. */
export const handOrders = ['down-and-up', 'always-down', 'depth-by-depth'] as const
export type HandOrder = (typeof handOrders)[number]

export const handOrderTitles: Record<HandOrder, string> = {
  'down-and-up': 'Down one axis, up the other',
  'always-down': 'Each axis from the top',
  'depth-by-depth': 'Every axis at each depth',
}

/** A feature with its points in the order in which this person meets them; the plan's own order is down and up. */
export function inHandOrder(feature: FeatureDefinition, order: HandOrder): FeatureDefinition {
  if (order === 'down-and-up') return feature
  const stations = [...new Set(feature.points.map(({ station }) => station))]
  const axes = [...new Set(feature.points.map(({ axis }) => axis))]
  const place = ({ station, axis }: Point) => (order === 'always-down'
    ? axes.indexOf(axis) * stations.length + stations.indexOf(station)
    : stations.indexOf(station) * axes.length + axes.indexOf(axis))
  return { ...feature, points: feature.points.toSorted((one, other) => place(one) - place(other)) }
}
