import { nanometresOf } from '../exact/length.ts'
import type { Nanometres } from '../exact/length.ts'

/** Figures of a pin between flat retaining rings. */
export interface RetainedPin {
  /** Between the *outer* flanks of the two grooves: ask which flanks were measured. */
  readonly outerFlanks: Nanometres
  readonly ringsPerSide: 1 | 2
  readonly ringThickness: Nanometres
  readonly pinLength: Nanometres
}

/**
 * Pin end play in nanometres between flat rings: outer flank to outer flank − 2·n·t − pin length. Two rings
 * a side are four thicknesses. Derived. Round wire wedges on the pin's bevel: its end play is measured
 * assembled, not computed.
 * @formula pin-end-play
 */
export function pinEndPlay(pin: RetainedPin): Nanometres {
  return nanometresOf(pin.outerFlanks - 2 * pin.ringsPerSide * pin.ringThickness - pin.pinLength)
}
