import type { JobOperation } from '@tenths/contract'
import type { z } from 'zod'

export type WireOperation = z.infer<typeof JobOperation>

/** Columns of `operation_state` under the contract's names, for any query that lists steps. */
export const operationColumns = `
  operation_state.operation_key AS key, operation_state.title, operation_state.stage,
  operation_state.bench_kind AS "benchKind", operation_state.minutes, operation_state.state,
  operation_state.within, operation_state.not_proven AS "notProven", operation_state.outside,
  operation_state.not_measured AS "notMeasured", operation_state.conceded, operation_state.to_see AS "toSee",
  operation_state.seen, operation_state.open_findings AS "openFindings"`
