import { featureKey, type FeatureDefinition, type FeatureReference } from '@tenths/domain'
import { familyOf, making, type Family } from './families.ts'
import { gauges, type DemoGauge } from './gauges.ts'
import { sizeOf } from './usual-sizes.ts'
import type { Measured, PlanAnswer, Situation } from './situation.ts'
import { readingStep } from './typing.ts'

/** What a machinist works toward at one station of a feature, and what the fit leaves on each side. */
export interface Window {
  readonly low: number
  readonly high: number
  readonly aim: number
}

/** How a feature will be measured, and what the measuring should show when the work is done well. */
export interface Aim {
  readonly gauge: DemoGauge
  /** The mating feature that the gauge is set on: then the values are clearances. */
  readonly setOn: FeatureReference | null
  readonly windowAt: (station: string) => Window
  /** Greatest difference that the form of the feature leaves between its points. */
  readonly spread: number
}

type Requirement = PlanAnswer['requirements'][number]
type Clearance = Requirement & { readonly measurand: Extract<Requirement['measurand'], { kind: 'clearance' }> }

/**
 * Aims at the target of every requirement that is judged in this step, and of every size, wherever it is judged. The
 * gauge is the first one that leaves room for work between the guard bands; where two independent gauges leave none, one
 * is set on the mating part and reads the clearance itself, as a machinist would.
 */
export function aimAt(definition: FeatureDefinition, situation: Situation): Aim {
  const usable = gauges.filter((gauge) => gauge.unit === situation.unit
    && gauge.measures.includes(familyOf(definition)) && gauge.calibratedFor > 0 && reaches(gauge, sizeOf(definition, situation)))
  const fit = fitJudgedHere(definition, situation)
  const aims = [
    ...usable.filter(({ onlyOnMate }) => !onlyOnMate).map((gauge) => aimAtSize(gauge, definition, situation, fit)),
    ...(fit === null ? [] : usable.map((gauge) => aimAtClearance(gauge, definition, fit))),
  ].filter((aim) => aim !== null)
  const best = aims.find((aim) => definition.points.every(({ station }) => leavesRoom(aim, station))) ?? aims.at(-1)
  if (best === undefined) throw new Error(`The demo shop has no gauge for ${featureKey(definition)}.`)
  return best
}

function reaches({ reach: [least, greatest] }: DemoGauge, size: number | null): boolean {
  return size === null || (size >= least && size <= greatest)
}

function leavesRoom({ gauge, windowAt }: Aim, station: string): boolean {
  const { low, high } = windowAt(station)
  return high - low >= 4 * readingStep(gauge, high - low)
}

/** Guard band that a requirement keeps from its limits when the compared value has this uncertainty. */
function guardBand({ guard }: Requirement, standardUncertainty: number): number {
  return guard.kind === 'none' ? 0 : guard.coverageFactor * standardUncertainty
}

function limitsInside(requirement: Requirement, standardUncertainty: number): Window {
  const { low, high, target, adviceHigh } = requirement.limits
  const band = guardBand(requirement, standardUncertainty)
  const [least, greatest] = [(low ?? -Infinity) + band, (high ?? Infinity) - band]
  // Where the less the better, all good work stays well under what is advised.
  if (low === null && high !== null) return { low: least, high: greatest, aim: (adviceHigh ?? high) * 0.6 }
  // Without a target a machinist aims at the middle; well inside where there is only one limit.
  const middle = low !== null && high !== null ? (low + high) / 2 : (low ?? 0) * 1.1
  return { low: least, high: greatest, aim: target ?? middle }
}

const isAbout = (feature: FeatureReference, other: FeatureReference): boolean => featureKey(feature) === featureKey(other)

/** The fit of a pair that is judged in this step and that this feature is one half of. */
function fitJudgedHere(definition: FeatureDefinition, { plan, step }: Situation): Clearance | null {
  return plan.requirements.find((requirement): requirement is Clearance =>
    step.operation.requirements.includes(requirement.key) && requirement.measurand.kind === 'clearance'
    && (isAbout(requirement.measurand.hole, definition) || isAbout(requirement.measurand.shaft, definition))) ?? null
}

function aimAtClearance(gauge: DemoGauge, definition: FeatureDefinition, fit: Clearance): Aim {
  const { hole, shaft } = fit.measurand
  return {
    gauge,
    setOn: isAbout(hole, definition) ? shaft : hole,
    windowAt: () => limitsInside(fit, gauge.standardUncertainty),
    spread: Infinity,
  }
}

/** Measured as a size: null where the fit hangs on a mate whose size nobody has measured. */
function aimAtSize(
  gauge: DemoGauge, definition: FeatureDefinition, situation: Situation, fit: Clearance | null,
): Aim | null {
  const before = situation.latest(definition)
  if (before !== null && isNeverCut(definition)) return aimAsBefore(gauge, before)
  if (isAsFound(definition, situation)) return aimAsFound(gauge, definition, situation)
  const sizes = sizeRequirements(definition, situation)
  const own = sizes.map((requirement) => limitsInside(requirement, gauge.standardUncertainty))
  const spread = formRoom(definition, situation, gauge)
  if (fit === null) {
    const whole = joined(own, sizeOf(definition, situation), definition)
    return { gauge, setOn: null, windowAt: () => whole, spread }
  }
  const isHole = isAbout(fit.measurand.hole, definition)
  const mate = situation.latest(isHole ? fit.measurand.shaft : fit.measurand.hole)
  const isFirstOfPair = mate === null && measuresBoth(situation.step.operation, fit)
  if (isFirstOfPair) {
    const whole = joined(own, sizeOf(definition, situation), definition)
    return { gauge, setOn: null, windowAt: () => whole, spread }
  }
  if (mate === null || mate.isOnMate || mate.values.length === 0) return null
  const room = limitsInside(fit, Math.hypot(gauge.standardUncertainty, mate.standardUncertainty))
  const windowAt = (station: string): Window => {
    const here = mate.values.filter((value) => value.station === station)
    const values = (fit.measurand.pairing === 'by-station' && here.length > 0 ? here : mate.values).map(({ value }) => value)
    const [least, greatest] = [Math.min(...values), Math.max(...values)]
    const middle = (least + greatest) / 2
    const pair: Window = isHole
      ? { low: greatest + room.low, high: least + room.high, aim: middle + room.aim }
      : { low: greatest - room.high, high: least - room.low, aim: middle - room.aim }
    return joined([pair, ...own], null, definition)
  }
  return { gauge, setOn: null, windowAt, spread }
}

/** Whether a step measures hole and shaft of a pair, one after the other. */
function measuresBoth({ features }: Situation['step']['operation'], { measurand: { hole, shaft } }: Clearance): boolean {
  return [hole, shaft].every((half) => features.some((feature) => isAbout(feature, half)))
}

/** Whether some step measures both halves of a pair, so that the second is aimed at what the first turned out to be. */
export function measuresPairs({ plan, step }: Situation): boolean {
  return plan.requirements.some((requirement) => requirement.measurand.kind === 'clearance'
    && step.operation.requirements.includes(requirement.key) && measuresBoth(step.operation, requirement as Clearance))
}

/** A stem, for one: it is measured again, but nobody takes metal off it. */
function isNeverCut(definition: FeatureDefinition): boolean {
  return familyOf(definition) === 'stem'
}

function aimAsBefore(gauge: DemoGauge, { values }: Measured): Aim {
  const aim = values.reduce((sum, { value }) => sum + value, 0) / values.length
  return { gauge, setOn: null, windowAt: () => ({ low: -Infinity, high: Infinity, aim }), spread: Infinity }
}

function sizeRequirements(definition: FeatureDefinition, { plan }: Situation): Requirement[] {
  return plan.requirements.filter(({ measurand }) => measurand.kind === 'feature' && isAbout(measurand.feature, definition)
    && ['each', 'least', 'greatest', 'mean'].includes(measurand.reducer))
}

/** The difference of two readings carries √2 of the uncertainty of one. */
function formRoom(definition: FeatureDefinition, { plan }: Situation, gauge: DemoGauge): number {
  return Math.min(...plan.requirements
    .filter(({ measurand }) => measurand.kind === 'feature' && isAbout(measurand.feature, definition)
      && ['out-of-round', 'taper', 'range'].includes(measurand.reducer))
    .map((requirement) => limitsInside(requirement, Math.SQRT2 * gauge.standardUncertainty).high), Infinity)
}

/** What all windows have in common; the first one's aim counts, else the nominal. */
function joined(windows: readonly Window[], nominal: number | null, definition: FeatureDefinition): Window {
  const aim = windows[0]?.aim ?? nominal
  if (aim === null) throw new Error(`Nothing says what ${featureKey(definition)} should be.`)
  return { low: Math.max(-Infinity, ...windows.map(({ low }) => low)), high: Math.min(Infinity, ...windows.map(({ high }) => high)), aim }
}

/** Measured before it is machined: nothing is judged here, and a later step measures it again. */
function isAsFound(definition: FeatureDefinition, { plan, step }: Situation): boolean {
  const judgedHere = plan.requirements.some(({ key, measurand }) => step.operation.requirements.includes(key)
    && (measurand.kind === 'feature' ? isAbout(measurand.feature, definition)
      : measurand.kind === 'clearance' && (isAbout(measurand.hole, definition) || isAbout(measurand.shaft, definition))))
  const later = plan.operations.slice(plan.operations.findIndex(({ key }) => key === step.operation.key) + 1)
  return !judgedHere && later.some(({ features }) => features.some((feature) => isAbout(feature, definition)))
}

/** As found: the finished size with the metal still on, from the mate's nominal where a hole will be made to its mate. */
function aimAsFound(gauge: DemoGauge, definition: FeatureDefinition, situation: Situation): Aim {
  const { plan } = situation
  const fit = plan.requirements.find((requirement): requirement is Clearance =>
    requirement.measurand.kind === 'clearance' && isAbout(requirement.measurand.hole, definition))
  const shaft = fit && plan.features.find((feature) => isAbout(feature, fit.measurand.shaft))
  const mate = shaft && sizeOf(shaft, situation)
  const sizes = sizeRequirements(definition, situation).map((requirement) => limitsInside(requirement, 0))
  const finished = fit && mate ? mate + limitsInside(fit, 0).aim : joined(sizes, sizeOf(definition, situation), definition).aim
  const stock = stockOf(familyOf(definition), plan.options)
  const aim = finished + (definition.shape === 'hole' ? -stock : stock)
  return { gauge, setOn: null, windowAt: () => ({ low: -Infinity, high: Infinity, aim }), spread: Infinity }
}

/** What comes off on the way to the next oversize of a bore, 0.030 in, or undersize of a crank, 0.010 in. */
const OVERSIZE_STOCK = 762_000
const UNDERSIZE_STOCK = 254_000

function stockOf(family: Family, { oversize, crank }: PlanAnswer['options']): number {
  if (family === 'bore' && oversize) return OVERSIZE_STOCK
  if ((family === 'main-journal' || family === 'rod-journal') && crank === 'grind') return UNDERSIZE_STOCK
  return making[family].asFound.stock
}
