import { DomainError } from '../errors.ts'
import { inRange, positive } from '../in-range.ts'

/**
 * Newtons on a square millimetre in one pound-force on a square inch, exact by definition of both pounds
 * and inches.
 */
const MEGAPASCALS_PER_PSI = (0.453_592_37 * 9.806_65) / 645.16

/** Strengths in newtons on a square millimetre. */
export interface BoltStrength {
  readonly proof: number
  readonly yield: number
  readonly tensile: number
}

/** One row of a standard: the strengths to a greatest diameter in nanometres. */
interface Row {
  readonly grade: string
  readonly to: number
  readonly strength: BoltStrength
}

const MILLIMETRE = 1_000_000
const INCH = 25_400_000
const psi = (proof: number, yieldStrength: number, tensile: number): BoltStrength => ({
  proof: proof * MEGAPASCALS_PER_PSI,
  yield: yieldStrength * MEGAPASCALS_PER_PSI,
  tensile: tensile * MEGAPASCALS_PER_PSI,
})

/**
 * ISO 898-1 and SAE J429, read in secondary tables; 4.6, 4.8, 5.8, 9.8, SAE 2 over 0.75 in, SAE 4, 5.2, 7 and 8.2 are
 * from memory, as textbooks print them.
 */
const rows: readonly Row[] = [
  { grade: '4.6', to: 39 * MILLIMETRE, strength: { proof: 225, yield: 240, tensile: 400 } },
  { grade: '4.8', to: 39 * MILLIMETRE, strength: { proof: 310, yield: 340, tensile: 420 } },
  { grade: '5.8', to: 39 * MILLIMETRE, strength: { proof: 380, yield: 420, tensile: 520 } },
  { grade: '8.8', to: 16 * MILLIMETRE, strength: { proof: 580, yield: 640, tensile: 800 } },
  { grade: '8.8', to: 39 * MILLIMETRE, strength: { proof: 600, yield: 660, tensile: 830 } },
  { grade: '9.8', to: 16 * MILLIMETRE, strength: { proof: 650, yield: 720, tensile: 900 } },
  { grade: '10.9', to: 39 * MILLIMETRE, strength: { proof: 830, yield: 940, tensile: 1_040 } },
  { grade: '12.9', to: 39 * MILLIMETRE, strength: { proof: 970, yield: 1_100, tensile: 1_220 } },
  { grade: 'SAE 1', to: 1.5 * INCH, strength: psi(33_000, 36_000, 60_000) },
  { grade: 'SAE 2', to: 0.75 * INCH, strength: psi(55_000, 57_000, 74_000) },
  { grade: 'SAE 2', to: 1.5 * INCH, strength: psi(33_000, 36_000, 60_000) },
  { grade: 'SAE 4', to: 1.5 * INCH, strength: psi(65_000, 100_000, 115_000) },
  { grade: 'SAE 5', to: INCH, strength: psi(85_000, 92_000, 120_000) },
  { grade: 'SAE 5', to: 1.5 * INCH, strength: psi(74_000, 81_000, 105_000) },
  { grade: 'SAE 5.2', to: INCH, strength: psi(85_000, 92_000, 120_000) },
  { grade: 'SAE 7', to: 1.5 * INCH, strength: psi(105_000, 115_000, 133_000) },
  { grade: 'SAE 8', to: 1.5 * INCH, strength: psi(120_000, 130_000, 150_000) },
  { grade: 'SAE 8.2', to: INCH, strength: psi(120_000, 130_000, 150_000) },
]

/** Grades that the tables hold. */
export const boltGrades: readonly string[] = [...new Set(rows.map(({ grade }) => grade))]

/**
 * Strengths of a bolt by grade and nominal diameter in nanometres.
 * @throws DomainError `value-out-of-range` for a grade or diameter that the tables do not hold
 * @formula bolt-strength
 */
export function boltStrength(grade: string, diameter: number): BoltStrength {
  positive(diameter, 'diameter')
  const row = rows.find((each) => each.grade === grade && diameter <= each.to)
  if (row === undefined) {
    throw new DomainError(
      'value-out-of-range',
      `No strength is listed for ${grade} of this diameter.`,
      'grade',
    )
  }
  return row.strength
}

/**
 * Load that a bolt bears without setting, in newtons: stress area (mm²) × proof strength (N/mm²).
 * @formula proof-load
 */
export function proofLoad(area: number, strength: BoltStrength): number {
  return positive(area, 'area') * positive(strength.proof, 'proof')
}

/**
 * Preload at a share of proof, in newtons: 0.75 is usual where a bolt is used again (secondary source).
 * @formula preload-share
 */
export function preloadAtShare(area: number, strength: BoltStrength, share: number): number {
  return proofLoad(area, strength) * inRange(share, 0, 1, 'share')
}
