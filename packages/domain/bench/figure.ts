import { availableParallelism, cpus, loadavg } from 'node:os'

/** One line of the benchmark: what was measured, what is asked of it, and on what machine. */
export interface Figure {
  readonly figure: string
  readonly value: number
  readonly unit: string
  /** What is asked: at most, at least or exactly; null where the figure only informs. */
  readonly limit: { readonly kind: 'at most' | 'at least' | 'exactly'; readonly value: number } | null
  readonly comparedWith: string | null
}

/** Medians are taken while others may use the machine: its load stands in every line. */
const machine = `${cpus()[0]?.model.trim() ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.versions.node}`

/** Whether a figure meets what is asked of it. */
export function isMet({ value, limit }: Figure): boolean {
  switch (limit?.kind) {
    case undefined: return true
    case 'at most': return value <= limit.value
    case 'at least': return value >= limit.value
    case 'exactly': return value === limit.value
  }
}

/** Prints a figure as one JSON line, three significant figures where it is a time or a ratio. */
export function print(figure: Figure): void {
  const { limit } = figure
  console.log(JSON.stringify({
    figure: figure.figure,
    value: Number.isInteger(figure.value) ? figure.value : Number(figure.value.toPrecision(3)),
    unit: figure.unit,
    limit: limit === null ? null : `${limit.kind} ${limit.value}`,
    met: isMet(figure),
    machine: `${machine}, load ${(loadavg()[0] ?? 0).toFixed(1)}, shared`,
    comparedWith: figure.comparedWith,
  }))
}
