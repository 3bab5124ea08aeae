import type { FeatureDefinition, MeasuringState, Quantity } from '@tenths/domain'
import { featureKey } from '@tenths/domain'
import type { Cell } from './cells.ts'
import { cellsInHandOrder } from './cells.ts'
import { sharedTitle } from '../words/shared-title.ts'

/** Columns of one axis: its stations in the order of the first axis, so that depth reads the same in all. */
export interface AxisColumns {
  readonly axis: string
  readonly stations: readonly string[]
}

/** Features that share their points, one row each: cylinder × axis × depth. */
export interface ReadingTable {
  readonly key: string
  readonly title: string
  readonly quantity: Quantity
  readonly state: readonly MeasuringState[]
  readonly columns: readonly AxisColumns[]
  readonly rows: readonly { readonly feature: FeatureDefinition; readonly cells: readonly Cell[] }[]
}

/** Features gathered into tables, in the order of the first of each; rows keep the order a hand moves. */
export function readingTables(features: readonly FeatureDefinition[]): readonly ReadingTable[] {
  const groups = new Map<string, FeatureDefinition[]>()
  for (const feature of features) {
    const layout = layoutOf(feature)
    groups.set(layout, [...(groups.get(layout) ?? []), feature])
  }
  return [...groups.values()].map(tableOf).map((table, _, tables) =>
    tables.some((other) => other !== table && other.title === table.title) ? { ...table, title: `${table.title} ${numbersIn(table)}` } : table)
}

/** Rods of one bank are measured at other points than those of the other: their tables are told apart by which they hold. */
function numbersIn({ rows }: ReadingTable): string {
  return rows.flatMap(({ feature }) => /\d+/.exec(feature.title) ?? []).join(', ')
}

function layoutOf({ quantity, shape, state, points, feature }: FeatureDefinition): string {
  // Bores and housings with like points are still two tables: what is measured has another name.
  const name = feature.replace(/-?(\d+|viewer-left|viewer-right)$/, '')
  return [name, quantity, shape, state.join('+'), ...points.map(({ key }) => key)].join('|')
}

function tableOf(features: FeatureDefinition[]): ReadingTable {
  const [first] = features as [FeatureDefinition, ...FeatureDefinition[]]
  const columns = axisColumns(first)
  return {
    key: featureKey(first),
    title: sharedTitle(features.map(({ title }) => title)),
    quantity: first.quantity,
    state: first.state,
    columns,
    rows: features.map((feature) => {
      const cells = new Map(cellsInHandOrder([feature]).map((cell) => [`${cell.point.station}|${cell.point.axis}`, cell]))
      const inColumns = columns.flatMap(({ axis, stations }) =>
        stations.flatMap((station) => cells.get(`${station}|${axis}`) ?? []))
      return { feature, cells: inColumns }
    }),
  }
}

function axisColumns({ points }: FeatureDefinition): readonly AxisColumns[] {
  const depths = [...new Set(points.map(({ station }) => station))]
  return [...new Set(points.map(({ axis }) => axis))].map((axis) => ({
    axis,
    stations: depths.filter((depth) => points.some((point) => point.axis === axis && point.station === depth)),
  }))
}
