import { pairByClearance, shortenJobShop, type JobShop } from '../src/index.ts'
import type { Figure } from './figure.ts'
import { generator, medianMilliseconds } from './timing.ts'

/** Benchmark instances ft06 (Fisher and Thompson 1963) and la05 (Lawrence 1984), as the public JSPLIB collection keeps them. */
const instances = [
  { name: 'ft06', machines: 6, optimum: 55, rows: [
    '2 1 0 3 1 6 3 7 5 3 4 6', '1 8 2 5 4 10 5 10 0 10 3 4', '2 5 3 4 5 8 0 9 1 1 4 7', '1 5 0 5 2 5 3 3 4 8 5 9',
    '2 9 1 3 4 5 5 4 0 3 3 1', '1 3 3 3 5 9 0 10 4 4 2 1',
  ] },
  { name: 'la05', machines: 5, optimum: 593, rows: [
    '1 72 0 87 4 95 2 66 3 60', '4 5 3 35 0 48 2 39 1 54', '1 46 3 20 2 21 0 97 4 55', '0 59 3 19 4 46 1 34 2 37',
    '4 23 2 73 3 25 1 24 0 28', '3 28 0 45 4 5 1 78 2 83', '0 53 3 71 1 37 4 29 2 12', '4 12 2 87 3 33 1 55 0 38',
    '2 49 3 83 1 40 0 48 4 7', '2 65 3 17 0 90 4 27 1 23',
  ] },
]

function shopFrom(machines: number, rows: readonly string[]): JobShop {
  const jobs = rows.map((row) => {
    const numbers = row.split(' ').map(Number)
    return numbers.flatMap((machine, at) => (at % 2 === 0 ? [{ machine, duration: numbers[at + 1] ?? 0 }] : []))
  })
  return { machines, jobs }
}

/** Sixteen pistons to sixteen bores, a new set each time, and the two job shops with their proven optima. */
export function exactFigures(): Figure[] {
  const random = generator(16)
  const sizes = (from: number) => Array.from({ length: 16 }, () => from + Math.floor(random() * 21) * 1_270)
  const pairing = medianMilliseconds(101, 200, () => pairByClearance(sizes(102_362_000), sizes(102_260_400), 101_600))
  return [
    {
      figure: 'match 16 pistons to 16 bores', value: pairing, unit: 'ms', limit: { kind: 'at most', value: 1 }, comparedWith: null,
    },
    ...instances.map(({ name, machines, optimum, rows }): Figure => {
      const shop = shopFrom(machines, rows)
      let makespan = 0
      const time = medianMilliseconds(3, 0, () => {
        makespan = shortenJobShop(shop, 20_000, generator(20_261)).makespan
      })
      return {
        figure: `makespan of ${name}`, value: makespan, unit: 'time units', limit: { kind: 'exactly', value: optimum },
        comparedWith: `proven optimum ${optimum}; found in ${time.toPrecision(3)} ms`,
      }
    }),
  ]
}
