/**
 * How a value came here: `read` it was seen in the source; `computed` it was worked out from figures read there; `from
 * memory` it was not looked up.
 */
export type Label = 'read' | 'computed' | 'from memory'

/** Published values that stand together: one source, one tolerance and the reason for it. */
export interface CheckTable<Value> {
  readonly title: string
  readonly source: string
  readonly label: Label
  /** In the unit of the values; 0 asks for equality. */
  readonly tolerance: number
  readonly reason: string
  readonly values: readonly Value[]
}
