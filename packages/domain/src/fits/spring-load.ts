import type { ValveKind } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import { springLoad } from '../features/top-end/references.ts'
import { FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, sayBoth } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'
import { SPRINGS } from './valve-train-sheets.ts'

/** 10 lbf, in mN: springs of one set that differ by more are sorted or shimmed. */
const USUAL_SPREAD = 44_482

const sheetOf = (kind: ValveKind) => `${kind}-spring-load`

function loadFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} spring load`
  return {
    key: sheetOf(kind),
    title,
    quantity: 'force',
    critical: false,
    judgedAt: ['assemble-heads'],
    parameters: [guardParameter('accepted')],
    lines: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title} ${valve.number} at its installed height`,
        quantity: 'force',
        measurand: reading(springLoad(valve), 'each'),
        rule: { kind: 'sheet-needed', reason: SPRINGS },
        remedy: {
          low: remedy('shim', springLoad(valve), 'Shim it up only as far as coil bind leaves room; a tired spring is changed.'),
          high: remedy('investigate', springLoad(valve), 'Take a shim out, or look whether this is the spring that the camshaft asks for.'),
        },
      })),
  }
}

/** Springs of one kind pull alike: the weakest lets its valve float first. Only where they are measured, by their sheet. */
function matchFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} spring under the strongest`
  return {
    key: `${kind}-spring-match`,
    title,
    quantity: 'force',
    critical: false,
    judgedAt: ['assemble-heads'],
    parameters: [
      parameter('spread', 'Greatest difference within the set', 'force', USUAL_SPREAD, FROM_MEMORY),
      guardParameter('accepted'),
    ],
    lines({ engine, sheets }, read) {
      const valves = valvesOf(engine, kind)
      if (!sheets.has(sheetOf(kind)) || valves.length < 2) return []
      const high = read('spread')
      const set = valves.map(springLoad)
      return valves.map((valve) => ({
        position: valve.number,
        title: `${title}, valve ${valve.number}`,
        quantity: 'force',
        measurand: { kind: 'apart', feature: springLoad(valve), set, from: 'greatest' },
        rule: {
          kind: 'computed',
          limits: limitsOf({ high, target: 0 }),
          formula: 'strongest of the set − load, at most the spread allowed',
          worked: [`Set of ${set.length}: at most ${sayBoth(high, 'force')} under the strongest`],
        },
        remedy: {
          low: null,
          high: remedy('shim', springLoad(valve), 'Shim it up only as far as coil bind leaves room, or change it for one as strong.'),
        },
      }))
    },
  }
}

/** What springs press at their installed height, and how nearly all of a kind press alike. */
export const springLoads: readonly FitDefinition[] = [...valveKinds.map(loadFit), ...valveKinds.map(matchFit)]
