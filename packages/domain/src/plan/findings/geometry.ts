import type { EngineSpecification, PartsSpecification } from '../../engine/specification.ts'
import { say, THOUSANDTH } from '../../fits/building-blocks.ts'
import { deckClearance } from '../../geometry/deck-stack.ts'
import { pinEndPlay } from '../../geometry/retainers.ts'
import type { PlanFinding } from '../plan-types.ts'

/** Deck clearance beyond which the figures are looked at once more. From memory. */
const DECK_PLAUSIBLE = { low: -30 * THOUSANDTH, high: 60 * THOUSANDTH }

/** Rod length over stroke, in thousandths, beyond which the figures are looked at once more. From memory. */
const ROD_RATIO_PLAUSIBLE = { low: 1_350, high: 2_200 }

/** What does not add up, or hardly, in the nominal figures. */
export function geometryFindings(
  engine: EngineSpecification,
  parts: PartsSpecification,
): readonly PlanFinding[] {
  return [...deckFindings(engine, parts), ...rodRatioFindings(engine, parts), ...retainerFindings(parts)]
}

function deckFindings(engine: EngineSpecification, parts: PartsSpecification): readonly PlanFinding[] {
  const stack = deckClearance(engine, parts.rod.length, parts.piston.compressionHeight)
  if (stack >= DECK_PLAUSIBLE.low && stack <= DECK_PLAUSIBLE.high) return []
  const where = stack < 0 ? `${say(-stack)} above the deck` : `${say(stack)} below the deck`
  return [
    {
      key: 'deck-stack',
      severity: 'look',
      title: 'Deck stack is unusual',
      sentence: `At top centre the piston stands ${where}.`,
      worked: [
        `${say(engine.deckHeight)} − (half of ${say(engine.stroke)} + ${say(parts.rod.length)} + ` +
          `${say(parts.piston.compressionHeight)}) = ${say(stack)}`,
      ],
      remedy: 'Check deck height, stroke, rod length and compression height against the parts in hand.',
    },
  ]
}

function rodRatioFindings(engine: EngineSpecification, parts: PartsSpecification): readonly PlanFinding[] {
  const scaled = parts.rod.length * 1_000
  const { low, high } = ROD_RATIO_PLAUSIBLE
  if (scaled >= low * engine.stroke && scaled <= high * engine.stroke) return []
  return [
    {
      key: 'rod-ratio',
      severity: 'look',
      title: 'Rod length is unusual for the stroke',
      sentence: 'Rod length over stroke usually lies between 1.35 and 2.2 (from memory).',
      worked: [`${say(parts.rod.length)} rod, ${say(engine.stroke)} stroke`],
      remedy: 'Check rod length, centre to centre, and stroke.',
    },
  ]
}

function retainerFindings({ pin, retainers }: PartsSpecification): readonly PlanFinding[] {
  if (pin.fit !== 'floating' || retainers?.outerFlanks === undefined) return []
  const { outerFlanks, perSide, thickness } = retainers
  const play = pinEndPlay({
    outerFlanks,
    ringsPerSide: perSide,
    ringThickness: thickness,
    pinLength: pin.length,
  })
  if (play >= 0 && play <= 5 * THOUSANDTH) return []
  return [
    {
      key: 'retainers',
      severity: 'stops',
      title: 'Pin and retainers do not go together',
      sentence:
        play < 0
          ? `Pin and rings are ${say(-play)} longer than the room between the grooves.`
          : `The pin would have ${say(play)} end play and hammer a ring out.`,
      worked: [
        `${say(outerFlanks)} − ${2 * perSide} × ${say(thickness)} − ${say(pin.length)} = ${say(play)}`,
      ],
      remedy: play < 0 ? 'Thinner rings or a shorter pin.' : 'Thicker rings or a longer pin.',
    },
  ]
}
