import { isHot } from '../engine/duty.ts'
import type { ValveKind } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import { seatWidth, valveMargin } from '../features/top-end/references.ts'
import {
  between, FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, THOUSANDTH,
} from './building-blocks.ts'
import type { FitContext, FitDefinition, FitParameter, ParameterReader } from './fit-definition.ts'

/** Starter figures in thousandths: an exhaust valve gives its heat to the seat, and a thin rim burns. */
const widths: Record<ValveKind, readonly [low: number, high: number]> = { intake: [40, 80], exhaust: [60, 100] }
const margins: Record<ValveKind, number> = { intake: 30, exhaust: 45 }

/** A hot exhaust valve asks for a wider seat and a thicker rim; an intake valve is cooled by what it lets in. */
function hotParameter(kind: ValveKind): readonly FitParameter[] {
  return kind === 'intake'
    ? []
    : [parameter('hot', 'Added when boosted, with nitrous or sustained', 'length', 10 * THOUSANDTH, FROM_MEMORY)]
}

function addedFor(kind: ValveKind, { duty }: FitContext, read: ParameterReader): number {
  return kind === 'exhaust' && isHot(duty) ? read('hot') : 0
}

const heat = (added: number) => (added === 0 ? [] : [`of it for heat ${say(added)}`])

function seatWidthFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} seat width`
  const [starterLow, starterHigh] = widths[kind]
  return {
    key: `${kind}-seat-width`,
    title,
    critical: false,
    judgedAt: ['cut-seats'],
    parameters: [
      parameter('low', 'Narrowest', 'length', starterLow * THOUSANDTH, FROM_MEMORY),
      parameter('high', 'Widest', 'length', starterHigh * THOUSANDTH, FROM_MEMORY),
      ...hotParameter(kind),
      guardParameter('accepted'),
    ],
    lines(context, read) {
      const added = addedFor(kind, context, read)
      const [low, high] = [read('low') + added, read('high') + added]
      return valvesOf(context.engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title} ${valve.number}`,
        quantity: 'length',
        measurand: reading(seatWidth(valve), 'each'),
        rule: {
          kind: 'computed',
          limits: between(low, high),
          formula: 'the seat’s width, between the limits for this duty',
          worked: [`Low ${say(low)}, high ${say(high)}`, ...heat(added)],
        },
        remedy: {
          low: remedy('investigate', null, 'Cut the seat at its own angle until it is wide enough, and look that the valve does not sink.'),
          high: remedy('investigate', null, 'Narrow it with the cutters above and below, in the middle of the valve’s face.'),
        },
      }))
    },
  }
}

function marginFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} valve margin`
  return {
    key: `${kind}-valve-margin`,
    title,
    critical: false,
    judgedAt: ['cut-seats'],
    parameters: [
      parameter('low', 'Least', 'length', margins[kind] * THOUSANDTH, FROM_MEMORY),
      ...hotParameter(kind),
      guardParameter('accepted'),
    ],
    lines(context, read) {
      const added = addedFor(kind, context, read)
      const low = read('low') + added
      return valvesOf(context.engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title} ${valve.number}`,
        quantity: 'length',
        measurand: reading(valveMargin(valve), 'each'),
        rule: {
          kind: 'computed',
          limits: limitsOf({ low }),
          formula: 'the rim left above the face, at least the limit for this duty',
          worked: [`Least: ${say(low)}`, ...heat(added)],
        },
        remedy: { low: remedy('replace', null, 'A thin rim burns: fit a new valve.'), high: null },
      }))
    },
  }
}

/** Where valve and head meet: the seat's width and the rim that is left of the valve. */
export const seatsAndMargins: readonly FitDefinition[] = [...valveKinds.map(seatWidthFit), ...valveKinds.map(marginFit)]
