import type { PlanInput, RouteOptions, WorkKind } from '../plan-types.ts'

/** What stands on the bench, so that a step asks only for what is there. */
export interface WorkScope {
  readonly block: boolean
  readonly crank: boolean
  readonly rods: boolean
  readonly heads: boolean
  /** A short block is put together: bearings, rings and trial assembly. */
  readonly assembled: boolean
  /** Steps of this kind of work; null for all whose parts are there. */
  readonly steps: ReadonlySet<string> | null
}

const beforeWork = ['receive', 'strip-wash', 'crack-test', 'approve-plan']
const afterWork = ['final-wash', 'parts-inspection', 'hand-over']
const only = (...steps: readonly string[]) => new Set([...beforeWork, ...steps, ...afterWork])
const bare = { block: false, crank: false, rods: false, heads: false, assembled: false, steps: null }

const scopes: Record<WorkKind, WorkScope> = {
  'short-block': { ...bare, block: true, crank: true, rods: true, assembled: true },
  'full-rebuild': { block: true, crank: true, rods: true, heads: true, assembled: true, steps: null },
  'head-service': {
    ...bare,
    heads: true,
    steps: only('strip-heads', 'measure-heads', 'fit-guides', 'cut-seats', 'surface-heads', 'assemble-heads'),
  },
  'bore-and-hone': {
    ...bare,
    block: true,
    steps: only('measure-block', 'receive-parts', 'deburr', 'align-hone', 'deck', 'bore', 'bores-sent-out', 'hone-bores', 'bore-finish'),
  },
  'crank-regrind': {
    ...bare,
    crank: true,
    steps: only('measure-crank', 'grind-crank', 'polish-crank'),
  },
  balancing: { ...bare, crank: true, rods: true, steps: only('measure-crank', 'balance') },
}

/** Which parts and steps a kind of work has. From memory, common practice; the shop edits it. */
export function scopeOf(work: WorkKind): WorkScope {
  return scopes[work]
}

/** What was ordered, with what the kind of work itself says: a crank sent in for grinding is ground or polished. */
export function optionsOf({ work, options }: PlanInput): RouteOptions {
  switch (work) {
    case 'crank-regrind':
      return options.crank === 'none' ? { ...options, crank: 'grind' } : options
    case 'balancing':
      return { ...options, crank: 'none', balance: true }
    default:
      return options
  }
}
