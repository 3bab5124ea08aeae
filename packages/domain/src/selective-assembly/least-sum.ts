/**
 * Columns by row with the least sum of costs: shortest augmenting paths with potentials (the Hungarian
 * method in its O(n³) form). Costs are finite and the matrix is square.
 */
export function leastSumAssignment(costs: readonly (readonly number[])[]): readonly number[] {
  const size = costs.length
  // Column 0 and row 0 stand for "nothing yet": everything else is counted from 1.
  const rowPotential = new Float64Array(size + 1)
  const columnPotential = new Float64Array(size + 1)
  const rowOfColumn = new Int32Array(size + 1)
  for (let row = 1; row <= size; row += 1) {
    rowOfColumn[0] = row
    const comesFrom = shortestPath(costs, rowOfColumn, rowPotential, columnPotential)
    shiftAlong(comesFrom, rowOfColumn)
  }
  const columns = new Array<number>(size)
  for (let column = 1; column <= size; column += 1) columns[at(rowOfColumn, column) - 1] = column - 1
  return columns
}

interface FoundPath {
  readonly end: number
  readonly previous: Int32Array
}

/** Grows a tree of tight pairs from the new row until it meets a free column, moving the potentials along. */
function shortestPath(
  costs: readonly (readonly number[])[], rowOfColumn: Int32Array, rowPotential: Float64Array,
  columnPotential: Float64Array,
): FoundPath {
  const size = costs.length
  const slack = new Float64Array(size + 1).fill(Infinity)
  const previous = new Int32Array(size + 1)
  const visited = new Uint8Array(size + 1)
  let column = 0
  while (at(rowOfColumn, column) !== 0) {
    visited[column] = 1
    const row = at(rowOfColumn, column)
    let [step, nearest] = [Infinity, 0]
    for (let other = 1; other <= size; other += 1) {
      if (visited[other] === 1) continue
      const reduced = (costs[row - 1]?.[other - 1] ?? 0) - at(rowPotential, row) - at(columnPotential, other)
      if (reduced < at(slack, other)) {
        slack[other] = reduced
        previous[other] = column
      }
      if (at(slack, other) < step) [step, nearest] = [at(slack, other), other]
    }
    for (let other = 0; other <= size; other += 1) {
      if (visited[other] === 1) {
        const tied = at(rowOfColumn, other)
        rowPotential[tied] = at(rowPotential, tied) + step
        columnPotential[other] = at(columnPotential, other) - step
      } else slack[other] = at(slack, other) - step
    }
    column = nearest
  }
  return { end: column, previous }
}

/** Passes each row on the path to the next column, so that the new row has one too. */
function shiftAlong({ end, previous }: FoundPath, rowOfColumn: Int32Array): void {
  let column = end
  while (column !== 0) {
    const before = at(previous, column)
    rowOfColumn[column] = at(rowOfColumn, before)
    column = before
  }
}

function at(list: Int32Array | Float64Array, index: number): number {
  return list[index] ?? 0
}
