import type { ShaftLetter } from '../../../packages/domain/src/index.ts'
import type { CheckTable } from './check-table.ts'

/** Upper deviation (f, g, h) or lower one (p, s) of a shaft, in microns, at the upper end of a size step in mm. */
export interface Deviation {
  readonly letter: ShaftLetter
  readonly end: 'lower' | 'upper'
  readonly size: number
  readonly deviation: number
}

const sizes = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250]

function along(letter: ShaftLetter, end: Deviation['end'], deviations: readonly number[]): Deviation[] {
  return deviations.map((deviation, index) => ({ letter, end, size: sizes[index] ?? Number.NaN, deviation }))
}

const exact = { tolerance: 0, reason: 'microns are whole nanometres' } as const

/** ISO 286-1 fundamental deviations that an engine's fits use most. */
export const shaftDeviations: CheckTable<Deviation> = {
  title: 'ISO 286-1 fundamental deviations of shafts', ...exact, label: 'read',
  source: 'a public repository that carries the table (Ralul/TI-84, ISO-286.py); 6 to 50 mm alike in Aeronautical '
    + 'Engineer’s Data Book, table 12.6',
  values: [
    ...along('f', 'upper', [-6, -10, -13, -16, -20, -25, -30, -36, -43, -50]),
    ...along('g', 'upper', [-2, -4, -5, -6, -7, -9, -10, -12, -14, -15]),
    ...along('h', 'upper', [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
    ...along('p', 'lower', [6, 12, 15, 18, 22, 26, 32, 37, 43, 50]),
    ...along('s', 'lower', [14, 19, 23, 28, 35, 43]),
    { letter: 's', end: 'lower', size: 65, deviation: 53 }, { letter: 's', end: 'lower', size: 100, deviation: 71 },
    { letter: 's', end: 'lower', size: 140, deviation: 92 }, { letter: 's', end: 'lower', size: 200, deviation: 122 },
  ],
}
