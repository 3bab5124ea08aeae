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
}

/** Exactly these fields, as plain data. */
export function plainStep(done: DoneAtStep): DoneAtStep {
  const { personId, by, jobId, jobNumber, operationKey, operationTitle, behind, deviceAt } = done
  return { personId, by, jobId, jobNumber, operationKey, operationTitle, behind, deviceAt }
}
