/** Where and by whom something was done at a bench. */
export interface DoneAtStep {
  readonly personId: string
  /** The person's name, for whoever sees that it waits. */
  readonly by: string
  readonly jobId: string
  readonly jobNumber: number
  readonly operationKey: string
  readonly operationTitle: string
  /** It was done behind steps that are only marked as signed: it goes out when those have arrived. */
  readonly behind: boolean
  /** By the device's own clock. */
  readonly deviceAt: string
  /** Milliseconds by which the service's clock was ahead of the device's; null while that is not known. */
  readonly deviceOffset: number | null
}

/** What an entry of an older version of the program does not say. */
const untold = { deviceOffset: null } as const

/** Exactly these fields, as plain data. */
export function plainStep(done: DoneAtStep): DoneAtStep {
  const { personId, by, jobId, jobNumber, operationKey, operationTitle, behind, deviceAt, deviceOffset } = { ...untold, ...done }
  return { personId, by, jobId, jobNumber, operationKey, operationTitle, behind, deviceAt, deviceOffset }
}
