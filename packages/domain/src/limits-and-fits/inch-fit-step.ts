/**
 * Upper deviation of the hole, then lower and upper of the shaft, in hundred-thousandths of an inch; the hole
 * begins at the nominal size.
 */
type InchFitRow = readonly [hole: number, shaftLower: number, shaftUpper: number]

/** One size step of a table: over … to … inches, in hundredths of an inch, and its classes. */
export interface InchFitStep {
  readonly over: number
  readonly to: number
  readonly classes: Readonly<Record<string, InchFitRow>>
}
