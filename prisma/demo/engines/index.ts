import { flatFour } from './flat-four.ts'
import { hillClimbV6 } from './hill-climb-v6.ts'
import { inlineFour } from './inline-four.ts'
import type { DemoEngine } from './model.ts'
import { single } from './single.ts'
import { streetV8 } from './street-v8.ts'
import { workBoatV8, workBoatV8RolledFillet } from './work-boat-v8.ts'

/** The shop's library of engines. */
export const engines = {
  hillClimbV6, workBoatV8, workBoatV8RolledFillet, streetV8, inlineFour, flatFour, single,
} satisfies Record<string, DemoEngine>

export type EngineKey = keyof typeof engines
