import { describe, expect, it } from 'vitest'
import { assign } from '../../packages/domain/src/index.ts'

// Bottlenecks: computed by trying every pairing. Among the pairings with the least worst cost the sum is least.
describe('pairing', () => {
  it.each([
    // SciPy's documentation: sum optimum 5, which also has the least worst cost.
    { name: 'SciPy’s documented example', costs: [[4, 1, 3], [2, 0, 5], [3, 2, 2]], worst: 2, sum: 5 },
    // munkres documentation, from memory: sum optimum 12 in two ways.
    { name: 'the munkres example', costs: [[5, 9, 1], [10, 3, 2], [8, 7, 4]], worst: 5, sum: 12 },
    // Burkard, Dell'Amico, Martello: the bottleneck demonstration.
    { name: 'the bottleneck demonstration', costs: [[5, 2, 3, 4], [7, 8, 4, 5], [6, 3, 5, 6], [2, 2, 3, 5]], worst: 4, sum: 13 },
    { name: 'products of row and column', costs: [[1, 2, 3], [2, 4, 6], [3, 6, 9]], worst: 4, sum: 10 },
  ])('of $name: worst $worst, sum $sum, tolerance 0', ({ costs, worst, sum }) => {
    const found = assign(costs)
    expect({ worst: found.worst, sum: found.sum }).toEqual({ worst, sum })
    expect([...found.columns].sort()).toEqual(costs.map((_, index) => index))
  })
})
