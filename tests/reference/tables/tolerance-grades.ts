import type { CheckTable } from './check-table.ts'

/** One cell: a size at the upper end of its step in mm, a grade, the tolerance in microns. */
export interface Tolerance {
  readonly size: number
  readonly grade: number
  readonly tolerance: number
}

const rows: readonly (readonly [size: number, ...tolerances: number[]])[] = [
  [3, 0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600, 1000, 1400],
  [6, 1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750, 1200, 1800],
  [10, 1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900, 1500, 2200],
  [18, 1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100, 1800, 2700],
  [30, 1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300, 2100, 3300],
  [50, 1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600, 2500, 3900],
  [80, 2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900, 3000, 4600],
  [120, 2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200, 3500, 5400],
  [180, 3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300],
  [250, 4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150, 1850, 2900, 4600, 7200],
]

/** ISO 286-1, IT1 to IT18, over 0 to 250 mm: the whole table. */
export const toleranceGrades: CheckTable<Tolerance> = {
  title: 'ISO 286-1 standard tolerances',
  source: 'a public repository that carries the table (Ralul/TI-84, ISO-286.py); IT6 to IT9 alike in a second. '
    + 'IT9 at 3 to 6 mm is misprinted there as 20; the second has 30',
  label: 'read', tolerance: 0, reason: 'tenths of a micron are whole nanometres',
  values: rows.flatMap(([size, ...tolerances]) => tolerances.map((tolerance, index) => ({ size, grade: index + 1, tolerance }))),
}
