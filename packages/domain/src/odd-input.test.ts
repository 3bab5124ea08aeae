import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from './errors.ts'
import * as domain from './index.ts'

/** Numbers that a slip, a broken gauge or a wrong unit hands over, beside ordinary ones. */
const odd = fc.oneof(
  fc.constantFrom(
    NaN, Infinity, -Infinity, 0, -0, -1, 1, 0.5, 5e-324, 1e-12, 1e12, 1e154, 1e200, Number.MAX_VALUE, -Number.MAX_VALUE,
    Number.MAX_SAFE_INTEGER, Number.MIN_SAFE_INTEGER, 720_000, 180_000, 90_000,
  ),
  fc.double(),
  fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }),
)
const numbers = fc.array(odd, { minLength: 9, maxLength: 9 })

type Numbers = readonly [number, number, number, number, number, number, number, number, number]
type Call = (given: Numbers) => unknown

const crank = (stroke: number, rod: number) => ({ stroke, rod })
const bolt = (length: number, area: number) => [{ length, area }]
const warm = (expansion: number, rise: number) => ({ expansion, rise })

/** Every public function that answers with figures worked out from figures. */
const calls: Readonly<Record<string, Call>> = {
  nanometresOf: ([a]) => domain.nanometresOf(a),
  round: ([a]) => domain.round(a, 'half-even'),
  roundToStep: ([a, b]) => domain.roundToStep(a, b, 'half-even'),
  formatLength: ([a]) => domain.formatLength(a, { unit: 'inch', step: 2_540 }, 'half-even'),
  sayLength: ([a]) => domain.sayLength(a, 'inch'),
  formatQuantity: ([a]) => domain.formatQuantity(a, 'poundForceFoot', 1, 'half-even'),
  sayValue: ([a]) => domain.sayValue(a, 'torque', 'inch'),
  rootSumSquare: ([a, b]) => domain.rootSumSquare(a, b),
  expandedUncertainty: ([a, b]) => domain.expandedUncertainty(a, b),
  standardNormal: ([a]) => domain.standardNormal(a),
  probabilityOfConformity: ([a, b, c, d]) =>
    domain.probabilityOfConformity(a, b, { low: 0, high: c, target: null, adviceLow: null, adviceHigh: null }, d),
  pistonDrop: ([a, b, c]) => domain.pistonDrop(crank(a, b), c),
  pistonSpeed: ([a, b, c]) => domain.pistonSpeed(crank(a, b), c),
  pistonAcceleration: ([a, b, c]) => domain.pistonAcceleration(crank(a, b), c),
  fastestAngle: ([a, b]) => domain.fastestAngle(crank(a, b)),
  meanPistonSpeed: ([a, b]) => domain.meanPistonSpeed(a, b),
  leastValveRoom: ([a, b, c, d, e, f]) => domain.leastValveRoom(crank(a, b), c, d, [{ angle: e, lift: f }]),
  discVolume: ([a, b]) => domain.discVolume(a, b),
  sweptVolume: ([a, b]) => domain.sweptVolume(a, b),
  displacement: ([bore, stroke, cylinders]) => domain.displacement({ bore, stroke, cylinders }),
  clearanceVolume: ([bore, chamber, diameter, thickness, deckClearance, dish, depth, landDiameter]) =>
    domain.clearanceVolume({
      bore, chamber, gasket: { diameter, thickness }, deckClearance, dish, crevice: { depth, landDiameter },
    }),
  compressionRatio: ([a, b]) => domain.compressionRatio(a, b),
  clearanceForRatio: ([a, b]) => domain.clearanceForRatio(a, b),
  strokeAfterClosing: ([a, b, c]) => domain.strokeAfterClosing(crank(a, b), c),
  effectiveRatio: ([a, b, c, d, e]) => domain.effectiveRatio(crank(a, b), c, d, e),
  gapGrowth: ([a]) => domain.gapGrowth(a),
  gapClosing: ([a, b, c, d, e, f]) => domain.gapClosing(a, b, warm(c, d), warm(e, f)),
  jointStress: ([interference, diameter, outer, inner, modulus, poisson]) =>
    domain.jointStress({ interference, diameter, outer, inner, hub: { modulus, poisson }, shaft: { modulus, poisson } }),
  holdingForce: ([a, b, c, d]) => domain.holdingForce(a, b, c, d),
  holdingTorque: ([a, b, c, d]) => domain.holdingTorque(a, b, c, d),
  heatingRise: ([a, b, c, d]) => domain.heatingRise(a, b, c, d),
  timeLeft: ([a, b, c, d]) => domain.timeLeft(a, b, c, d),
  stressArea: ([diameter, pitch]) => domain.stressArea({ family: 'unified', diameter, pitch }),
  boltStrength: ([a]) => domain.boltStrength('8.8', a),
  proofLoad: ([a, proof]) => domain.proofLoad(a, { proof, yield: proof, tensile: proof }),
  preloadAtShare: ([a, proof, share]) => domain.preloadAtShare(a, { proof, yield: proof, tensile: proof }, share),
  torqueForPreload: ([a, b, c]) => domain.torqueForPreload(a, b, c),
  preloadByTorque: ([a, b, c]) => domain.preloadByTorque(a, b, c),
  stretchForPreload: ([a, b, c, d]) => domain.stretchForPreload(a, bolt(b, c), d),
  preloadByStretch: ([a, b, c, d]) => domain.preloadByStretch(a, bolt(b, c), d),
  preloadByAngle: ([a, b, c, d, e, f]) => domain.preloadByAngle(a, b, bolt(c, d), e, f),
  boltSetVerdict: ([a, b]) => domain.boltSetVerdict(a, b),
  permissibleEccentricity: ([a, b]) => domain.permissibleEccentricity(a, b),
  permissibleUnbalance: ([a, b, c]) => domain.permissibleUnbalance(a, b, c),
  sizeAtReference: ([a, b, c]) => domain.sizeAtReference(a, b, c),
  sizeAtTemperature: ([a, b, c]) => domain.sizeAtTemperature(a, b, c),
  comparisonError: ([a, b, c, d, e]) =>
    domain.comparisonError(a, { temperature: b, expansion: c }, { temperature: d, expansion: e }),
  mean: ([a, b, c]) => domain.mean([a, b, c]),
  median: ([a, b, c]) => domain.median([a, b, c]),
  standardDeviation: ([a, b, c]) => domain.standardDeviation([a, b, c]),
  capability: ([a, b, c, d]) => domain.capability(a, b, c, d),
  radialRoundness: ([a, b, c, d, e, f]) => domain.radialRoundness([a, b, c, d, e, f]),
  oilGroove: ([upperFlank, width, compressionHeight, pinBore]) => domain.oilGroove({
    grooves: [{ ring: 'oil', upperFlank, width }], compressionHeight, pinBore, pinBoreMouth: pinBore,
  } as never),
  filletRoom: ([fillet, cheekInset, edgeBevel, travel]) =>
    domain.filletRoom(fillet as never, { width: 1, wall: 1, cheekInset, edgeBevel } as never, travel as never),
  rodChamferNeeded: ([a, b]) => domain.rodChamferNeeded(a as never, b as never),
  pinEndPlay: ([outerFlanks, ringsPerSide, ringThickness, pinLength]) =>
    domain.pinEndPlay({ outerFlanks, ringsPerSide, ringThickness, pinLength } as never),
  deckClearance: ([deckHeight, stroke, a, b]) => domain.deckClearance({ deckHeight, stroke } as never, a as never, b as never),
  isoFit: ([a]) => domain.isoFit(`${a} H7/p6`),
}

/** Every number in an answer, however deep. */
function numbersIn(answer: unknown): readonly number[] {
  if (typeof answer === 'number') return [answer]
  if (typeof answer === 'string') return /NaN|Infinity|undefined/.test(answer) ? [NaN] : []
  return answer === null || typeof answer !== 'object' ? [] : Object.values(answer).flatMap(numbersIn)
}

describe('odd input', () => {
  it.each(Object.entries(calls))('%s answers with finite figures, or refuses with a code and a sentence', (_, call) => {
    fc.assert(
      fc.property(numbers, (given) => {
        try {
          for (const figure of numbersIn(call(given as unknown as Numbers))) expect(figure).toSatisfy(Number.isFinite)
        } catch (error) {
          if (!(error instanceof DomainError)) throw error
          expect(error.message).toMatch(/\S+ .*[.?]$/s)
        }
      }),
      { numRuns: 400 },
    )
  })
})
