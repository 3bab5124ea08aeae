import { rodBoltSetFit } from './bolt-set.ts'
import { boltFits } from './bolts.ts'
import { boreFinishes } from './bore-finish.ts'
import { boreForms } from './bore-form.ts'
import { camAndPump } from './cam-and-pump.ts'
import { crankUnbalanceFit } from './crank-unbalance.ts'
import { crankEndPlays } from './crank-end-play.ts'
import { deckClearanceFit } from './deck-clearance.ts'
import type { FitDefinition } from './fit-definition.ts'
import { crankRunOut, flatnessAndRunOut } from './flatness-and-run-out.ts'
import { housingFits } from './housing.ts'
import { journalForms } from './journal-form.ts'
import { leakDownFit } from './leak-down.ts'
import { mainBearingClearance } from './main-bearing.ts'
import { matchedWeights } from './matched-weights.ts'
import { pinEndPlayFit } from './pin-end-play.ts'
import { pinInPiston } from './pin-in-piston.ts'
import { pinInRod } from './pin-in-rod.ts'
import { pistonInBore } from './piston-in-bore.ts'
import { pistonToValve } from './piston-to-valve.ts'
import { pressedInHead } from './pressed-in-head.ts'
import { pressedPin } from './pressed-pin.ts'
import { railEndGap } from './rail-end-gap.ts'
import { ringBackClearances } from './ring-back-clearance.ts'
import { ringEndGap } from './ring-end-gap.ts'
import { oilRingSideClearance, ringSideClearances } from './ring-side-clearance.ts'
import { rodBearingClearance } from './rod-bearing.ts'
import { rodSideClearance } from './rod-side-clearance.ts'
import { runningClearances } from './running-clearance.ts'
import { seatsAndMargins } from './seat-and-margin.ts'
import { springLoads } from './spring-load.ts'
import { springRooms } from './spring-room.ts'
import { assembledTurningTorqueFit, crankTurningTorqueFit } from './turning-torque.ts'
import { valveTrainSheets } from './valve-train-sheets.ts'

/** Every fit of an engine, in the order of the fit sheet: the short block first, then heads and valve train. A new fit is one file and one line here. */
export const fits: readonly FitDefinition[] = [
  pistonInBore,
  ...boreForms,
  ...boreFinishes,
  pinInRod,
  pressedPin,
  pinInPiston,
  pinEndPlayFit,
  ringEndGap('top-ring', 'Top ring'),
  ringEndGap('second-ring', 'Second ring'),
  railEndGap,
  ...ringSideClearances,
  oilRingSideClearance,
  ...ringBackClearances,
  ...housingFits,
  ...journalForms,
  crankRunOut,
  mainBearingClearance,
  rodBearingClearance,
  rodSideClearance,
  ...crankEndPlays,
  deckClearanceFit,
  ...matchedWeights,
  crankUnbalanceFit,
  ...boltFits,
  rodBoltSetFit,
  ...camAndPump,
  crankTurningTorqueFit,
  assembledTurningTorqueFit,
  ...runningClearances,
  ...flatnessAndRunOut,
  ...pressedInHead,
  ...seatsAndMargins,
  ...springRooms,
  ...pistonToValve,
  ...valveTrainSheets,
  ...springLoads,
  leakDownFit,
]
