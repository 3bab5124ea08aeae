import { DomainError } from '../errors.ts'
import { leastSumAssignment } from './least-sum.ts'
import { perfectMatching } from './matching.ts'

/** Engines have at most this many cylinders. */
const LARGEST = 16

/** Which column each row takes, the worst of its costs and their sum. */
export interface Assignment {
  readonly columns: readonly number[]
  readonly worst: number
  readonly sum: number
}

/**
 * The pairing whose worst cost is least, among those whose sum of costs is least, and among those that which
 * leaves the most rows with the column of their own number; exact. The worst is found by halving over the costs themselves with a matching each time; then pairs that are worse are
 * forbidden and the sum is brought down by the Hungarian method. Costs are whole numbers, so that sums are
 * exact.
 * @throws DomainError `value-out-of-range` for a matrix that is empty, not square, larger than 16, or not
 *   of whole numbers from 0 to 10¹²
 * @formula selective-assembly
 */
export function assign(costs: readonly (readonly number[])[]): Assignment {
  requireCosts(costs)
  const worst = leastWorst(costs)
  // All rows off their own number weigh less than one unit of cost, so that they only decide between equal sums.
  const unit = costs.length + 1
  // Dearer than any sum of allowed pairs, so that no optimum uses it while a matching without it exists.
  const forbidden = (worst * unit + 1) * costs.length + 1
  const columns = leastSumAssignment(costs.map((row, own) =>
    row.map((cost, column) => (cost > worst ? forbidden : cost * unit + (column === own ? 0 : 1)))))
  const paid = columns.map((column, row) => costs[row]?.[column] ?? 0)
  return { columns, worst, sum: paid.reduce((sum, cost) => sum + cost, 0) }
}

function leastWorst(costs: readonly (readonly number[])[]): number {
  const levels = [...new Set(costs.flat())].sort((one, other) => one - other)
  let [below, enough] = [-1, levels.length - 1]
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2)
    if (perfectMatching(allowedUpTo(costs, levels[middle] ?? 0)) === null) below = middle
    else enough = middle
  }
  return levels[enough] ?? 0
}

function allowedUpTo(costs: readonly (readonly number[])[], level: number): readonly number[] {
  return costs.map((row) =>
    row.reduce((bits, cost, column) => (cost <= level ? bits | (1 << column) : bits), 0),
  )
}

function requireCosts(costs: readonly (readonly number[])[]): void {
  const size = costs.length
  const square = size > 0 && size <= LARGEST && costs.every((row) => row.length === size)
  const whole = costs.every((row) =>
    row.every((cost) => Number.isSafeInteger(cost) && cost >= 0 && cost <= 1e12),
  )
  if (!square || !whole) {
    throw new DomainError(
      'value-out-of-range',
      'Pairing needs as many parts on both sides, 16 at most.',
      'costs',
    )
  }
}
