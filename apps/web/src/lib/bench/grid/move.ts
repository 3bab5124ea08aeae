export type Direction = 'up' | 'down' | 'left' | 'right'

/** Keys of cells as they are drawn, row by row; null where a row has no cell in a column. */
export type DrawnCells = readonly (readonly (string | null)[])[]

/** The cell next to one as they are drawn, holes stepped over; null at the edge, so that the focus stays. */
export function cellBeside(drawn: DrawnCells, from: string, direction: Direction): string | null {
  const row = drawn.findIndex((cells) => cells.includes(from))
  const column = drawn[row]?.indexOf(from) ?? -1
  const across = direction === 'left' || direction === 'right'
  const line = across ? drawn[row] ?? [] : drawn.map((cells) => cells[column] ?? null)
  const at = across ? column : row
  const ahead = direction === 'right' || direction === 'down' ? line.slice(at + 1) : line.slice(0, at).toReversed()
  return ahead.find((key) => key !== null) ?? null
}
