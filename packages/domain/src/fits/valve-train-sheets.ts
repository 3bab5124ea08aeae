import type { ValveKind } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import { camCentreline, installedHeight, valveLash } from '../features/top-end/references.ts'
import { guardParameter, reading, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

const CARD = 'Timing and lash belong to the camshaft: its card gives them.'
/** Why heights and loads of springs wait for a sheet. */
export const SPRINGS = 'The height that a spring is set up at, and its load there, belong to spring and camshaft.'

const camTiming: FitDefinition = {
  key: 'cam-centreline',
  title: 'Intake centreline',
  quantity: 'angle',
  critical: true,
  judgedAt: ['valve-room'],
  parameters: [guardParameter('accepted')],
  lines: () => [
    {
      position: null,
      title: 'Intake centreline',
      quantity: 'angle',
      measurand: reading(camCentreline, 'each'),
      rule: { kind: 'sheet-needed', reason: CARD },
      remedy: {
        low: remedy('investigate', null, 'Retard the camshaft by key, bushing or slot, and degree it again.'),
        high: remedy('investigate', null, 'Advance the camshaft by key, bushing or slot, and degree it again.'),
      },
    },
  ],
}

/** What only the cards of camshaft and springs say: without them there is no verdict. */
export const valveTrainSheets: readonly FitDefinition[] = [
  ...valveKinds.map(heightFit), camTiming, ...valveKinds.map(lashFit),
]

function heightFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} spring installed height`
  return {
    key: `${kind}-installed-height`,
    title,
    critical: false,
    judgedAt: ['assemble-heads'],
    parameters: [guardParameter('accepted')],
    lines: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title} ${valve.number}`,
        quantity: 'length',
        measurand: reading(installedHeight(valve), 'each'),
        rule: { kind: 'sheet-needed', reason: SPRINGS },
        remedy: {
          low: remedy('face', null, 'Take a shim out, or cut the spring’s seat deeper.'),
          high: remedy('shim', null, 'Shim the spring up, and check it against coil bind again.'),
        },
      })),
  }
}

function lashFit(kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} lash`
  return {
    key: `${kind}-lash`,
    title,
    critical: false,
    judgedAt: ['install-heads'],
    parameters: [guardParameter('accepted')],
    lines: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title}, valve ${valve.number}`,
        quantity: 'length',
        measurand: reading(valveLash(valve), 'each'),
        rule: { kind: 'sheet-needed', reason: CARD },
        remedy: {
          low: remedy('investigate', null, 'Set it wider, cold or hot as the card says: a valve held open burns.'),
          high: remedy('investigate', null, 'Set it closer, cold or hot as the card says.'),
        },
      })),
  }
}
