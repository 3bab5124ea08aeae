import type { ReadingTable } from './tables.ts'

export type Direction = 'up' | 'down' | 'left' | 'right' | 'row-start' | 'row-end'

/** The cell next to one in a table as it is drawn; null at the edge, so that the focus stays where it is. */
export function cellBeside(table: ReadingTable, from: string, direction: Direction): string | null {
  const row = table.rows.findIndex(({ cells }) => cells.some(({ key }) => key === from))
  const cells = table.rows[row]?.cells ?? []
  const column = cells.findIndex(({ key }) => key === from)
  switch (direction) {
    case 'left': return cells[column - 1]?.key ?? null
    case 'right': return cells[column + 1]?.key ?? null
    case 'row-start': return cells[0]?.key ?? null
    case 'row-end': return cells.at(-1)?.key ?? null
    case 'up': return table.rows[row - 1]?.cells[column]?.key ?? null
    case 'down': return table.rows[row + 1]?.cells[column]?.key ?? null
  }
}
