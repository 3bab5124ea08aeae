/**
 * A perfect matching of rows to columns that uses only allowed pairs, or null: augmenting paths over bit
 * sets.
 * @param allowed for each row the columns it may take, one bit each; at most 16
 */
export function perfectMatching(allowed: readonly number[]): readonly number[] | null {
  const rowOfColumn = new Int8Array(allowed.length).fill(-1)
  for (let row = 0; row < allowed.length; row += 1) {
    if (!augment(row, allowed, rowOfColumn, { columns: 0 })) return null
  }
  const columns = new Array<number>(allowed.length)
  rowOfColumn.forEach((row, column) => { columns[row] = column })
  return columns
}

function augment(
  row: number, allowed: readonly number[], rowOfColumn: Int8Array, visited: { columns: number },
): boolean {
  for (let column = 0; column < allowed.length; column += 1) {
    const bit = 1 << column
    if (((allowed[row] ?? 0) & bit) === 0 || (visited.columns & bit) !== 0) continue
    visited.columns |= bit
    const holder = rowOfColumn[column] ?? -1
    if (holder < 0 || augment(holder, allowed, rowOfColumn, visited)) {
      rowOfColumn[column] = row
      return true
    }
  }
  return false
}
