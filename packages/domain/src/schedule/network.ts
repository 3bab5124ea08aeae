import { DomainError } from '../errors.ts'
import type { ScheduleInput, ScheduleJob } from './schedule-types.ts'

/** No bench: the operation only waits. */
export const NO_KIND = -1

/**
 * The jobs' operations flattened into arrays, so that thousands of futures can be run over them without allocation. An
 * operation's number is its priority: jobs by nearest promise, within a job the route's order.
 */
export interface Network {
  readonly operationCount: number
  readonly jobOf: Int32Array
  /** Operations of job j: numbers from `firstOfJob[j]` up to `firstOfJob[j + 1]`. */
  readonly firstOfJob: Int32Array
  readonly kindOf: Int32Array
  readonly minutes: Float64Array
  /** How many operations must be done before it. */
  readonly before: Int32Array
  /** Successors of operation n: `successors[firstSuccessor[n]]` up to `firstSuccessor[n + 1]`. */
  readonly firstSuccessor: Int32Array
  readonly successors: Int32Array
  readonly keys: readonly string[]
  /** Jobs in order of promise. */
  readonly jobs: readonly ScheduleJob[]
  readonly promisedAt: Float64Array
  readonly kinds: readonly string[]
  /** Benches by kind, as indices into `input.benches`. */
  readonly benchesOfKind: readonly (readonly number[])[]
}

/**
 * @throws DomainError `rule-unknown` when an operation names a predecessor or a kind of bench that does not exist,
 * `route-cyclic` when a job's operations wait for each other, `value-out-of-range` on minutes that are not positive.
 */
export function compileNetwork(input: ScheduleInput): Network {
  const kinds = [...new Set(input.benches.map((bench) => bench.kind))]
  const kindIndex = new Map(kinds.map((kind, index) => [kind, index]))
  const jobs = [...input.jobs].sort((a, b) => a.promisedAt - b.promisedAt || (a.key < b.key ? -1 : 1))
  const count = jobs.reduce((sum, job) => sum + job.operations.length, 0)

  const jobOf = new Int32Array(count)
  const firstOfJob = new Int32Array(jobs.length + 1)
  const kindOf = new Int32Array(count)
  const minutes = new Float64Array(count)
  const before = new Int32Array(count)
  const keys: string[] = []
  const edges: [from: number, to: number][] = []

  let first = 0
  for (const [jobIndex, job] of jobs.entries()) {
    const numberOf = new Map(job.operations.map((operation, index) => [operation.key, first + index]))
    for (const [index, operation] of job.operations.entries()) {
      const number = first + index
      if (!(operation.minutes > 0)) {
        throw new DomainError('value-out-of-range', `${operation.key} takes ${operation.minutes} minutes.`, operation.key)
      }
      const kind = operation.benchKind === null ? NO_KIND : kindIndex.get(operation.benchKind)
      if (kind === undefined) {
        throw new DomainError('rule-unknown', `No bench can do ${operation.benchKind}.`, operation.key)
      }
      jobOf[number] = jobIndex
      kindOf[number] = kind
      minutes[number] = operation.minutes
      keys.push(operation.key)
      for (const key of operation.after) {
        const predecessor = numberOf.get(key)
        if (predecessor === undefined) {
          throw new DomainError('rule-unknown', `${operation.key} waits for ${key}, which is not in the job.`, operation.key)
        }
        edges.push([predecessor, number])
        before[number] = (before[number] ?? 0) + 1
      }
    }
    first += job.operations.length
    firstOfJob[jobIndex + 1] = first
  }

  const { firstSuccessor, successors } = successorLists(count, edges)
  const network: Network = {
    operationCount: count, jobOf, firstOfJob, kindOf, minutes, before, firstSuccessor, successors, keys, jobs,
    promisedAt: Float64Array.from(jobs, (job) => job.promisedAt),
    kinds,
    benchesOfKind: kinds.map((kind) => input.benches.flatMap((bench, index) => (bench.kind === kind ? [index] : []))),
  }
  refuseCycles(network)
  return network
}

function successorLists(count: number, edges: readonly (readonly [number, number])[]): Pick<Network, 'firstSuccessor' | 'successors'> {
  const firstSuccessor = new Int32Array(count + 1)
  for (const [from] of edges) firstSuccessor[from + 1] = (firstSuccessor[from + 1] ?? 0) + 1
  for (let number = 0; number < count; number += 1) {
    firstSuccessor[number + 1] = (firstSuccessor[number + 1] ?? 0) + (firstSuccessor[number] ?? 0)
  }
  const next = firstSuccessor.slice()
  const successors = new Int32Array(edges.length)
  for (const [from, to] of edges) {
    successors[next[from] ?? 0] = to
    next[from] = (next[from] ?? 0) + 1
  }
  return { firstSuccessor, successors }
}

function refuseCycles(network: Network): void {
  const waiting = network.before.slice()
  const open: number[] = []
  waiting.forEach((count, number) => { if (count === 0) open.push(number) })
  let done = 0
  for (let number = open.pop(); number !== undefined; number = open.pop()) {
    done += 1
    for (let at = network.firstSuccessor[number]!; at < network.firstSuccessor[number + 1]!; at += 1) {
      const successor = network.successors[at]!
      waiting[successor]! -= 1
      if (waiting[successor] === 0) open.push(successor)
    }
  }
  if (done < network.operationCount) {
    const stuck = waiting.findIndex((count) => count > 0)
    throw new DomainError('route-cyclic', `${network.keys[stuck]} waits for itself by way of other steps.`, network.keys[stuck])
  }
}
