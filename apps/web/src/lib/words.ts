import type { inspectionResults, Role } from '@tenths/contract'
import type { BenchKind, Duty, InspectionMethod, Stage, VerdictKind, WorkKind } from '@tenths/domain'
import { dutyTitles } from '@tenths/domain'

/** The names that people read for what travels by key. */

export const verdictWords: Record<VerdictKind, string> = {
  within: 'within',
  'not-proven': 'not proven',
  outside: 'outside',
  'not-measured': 'not measured',
}

export const stageTitles: Record<Stage, string> = {
  intake: 'Intake',
  inspection: 'Inspection',
  planning: 'Planning',
  machining: 'Machining',
  fitting: 'Fitting',
  assembly: 'Assembly',
  handover: 'Handover',
}

export const benchTitles: Record<BenchKind, string> = {
  counter: 'Counter',
  teardown: 'Teardown',
  wash: 'Wash',
  inspection: 'Inspection',
  'rod-bench': 'Rod bench',
  office: 'Office',
  'hand-work': 'Hand work',
  'align-hone': 'Align hone',
  mill: 'Mill',
  'boring-bar': 'Boring bar',
  hone: 'Hone',
  'crank-grinder': 'Crank grinder',
  'rod-hone': 'Rod hone',
  'pin-hone': 'Pin hone',
  balancer: 'Balancer',
  'clean-bench': 'Clean bench',
  assembly: 'Assembly',
  'head-bench': 'Head bench',
}

export const roleTitles: Record<Role, string> = { counter: 'Counter', machinist: 'Machinist', owner: 'Owner' }

export const workTitles: Record<WorkKind, string> = {
  'short-block': 'Short block',
  'full-rebuild': 'Full rebuild',
  'head-service': 'Head service',
  'bore-and-hone': 'Bore and hone',
  'crank-regrind': 'Crank regrind',
  balancing: 'Balancing',
}

export const operationStates = {
  waiting: 'waiting',
  ready: 'ready',
  'under-way': 'under way',
  signed: 'signed',
  're-opened': 'open again',
} as const

export const decisionTitles = {
  concession: 'Accept as it is (concession)',
  rework: 'Work it again',
  replace: 'Replace the part',
  scrap: 'Scrap the part',
} as const

/** Duties in the order in which a counter asks. */
export const dutyChoices = Object.entries(dutyTitles).map(([value, title]) => ({ value: value as Duty, title }))

export const methodTitles: Record<InspectionMethod, string> = {
  'magnetic-particle': 'Magnetic particle',
  'dye-penetrant': 'Dye penetrant',
  ultrasonic: 'Ultrasonic',
  'eddy-current': 'Eddy current',
  pressure: 'Under pressure',
}

export const resultTitles = {
  'no-indication': 'No indication', indication: 'Indication', 'not-tested': 'Not tested',
} as const satisfies Record<(typeof inspectionResults)[number], string>
