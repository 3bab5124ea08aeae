import type { Pass, Reading } from '../sheet/operation-sheet.ts'
import type { OutboxEntry } from './outbox-entry.ts'

/** One typed value with all it needs to arrive: where it was typed, by whom, in which pass, and what was said of it. */
export interface TypedReading {
  readonly kind: 'reading'
  readonly personId: string
  readonly jobId: string
  readonly jobNumber: number
  readonly operationKey: string
  readonly operationTitle: string
  /** It was read behind steps that are only marked as signed: it goes out when those have arrived. */
  readonly behind: boolean
  /** Milliseconds by which the service's clock was ahead of the device's; null while that is not known. */
  readonly deviceOffset: number | null
  readonly cell: string
  /** The cell in words, for a list that does not show the grid. */
  readonly cellTitle: string
  readonly pass: Omit<Pass, 'readings'>
  readonly reading: Reading
  readonly confirmed: boolean
}

/** What a pass and a reading say of themselves since they are kept: an entry of an older version of the program has none. */
const untold = { setting: null, temperatures: null, material: null } as const
const untoldOfReading = { deviceOffset: null } as const

/** Exactly these fields, as plain data: nothing else that a page knows ever lies on the device, a PIN least of all. */
export function plainReading(typed: TypedReading): TypedReading {
  const { personId, jobId, jobNumber, operationKey, operationTitle, behind, cell, cellTitle, pass, reading, confirmed } = typed
  const { deviceOffset } = { ...untoldOfReading, ...typed }
  const { id, partId, feature, number, gaugeId, gaugeMark, quantity, standardUncertainty, by, openedAt } = pass
  const told = { ...untold, ...pass }
  const { point, value, typed: text, supersedes, reason, takenAt } = reading
  return {
    kind: 'reading', personId, jobId, jobNumber, operationKey, operationTitle, behind, deviceOffset, cell, cellTitle, confirmed,
    pass: {
      id, partId, feature, number, operationKey: pass.operationKey, gaugeId, gaugeMark, quantity, standardUncertainty, by, openedAt,
      state: [...pass.state],
      setOn: pass.setOn && { partId: pass.setOn.partId, feature: pass.setOn.feature },
      setting: told.setting && { size: told.setting.size, temperature: told.setting.temperature },
      temperatures: told.temperatures && { part: told.temperatures.part, room: told.temperatures.room },
      material: told.material,
      zero: null,
      isVoid: false,
    },
    reading: {
      id: reading.id, point, value, typed: text, supersedes, reason, by: reading.by, takenAt,
      confirmed: reading.confirmed, note: reading.note,
      ...(reading.blades && { blades: { stops: reading.blades.stops } }),
    },
  }
}

/** Who did it. */
export function doneBy(work: { readonly kind: string; readonly by?: string; readonly reading?: { readonly by: string } }): string {
  return work.by ?? work.reading?.by ?? ''
}

/** Whether what is on its way is a typed value. */
export function isOfReading(entry: OutboxEntry<{ readonly kind: string }>): entry is OutboxEntry<TypedReading> {
  return entry.content.kind === 'reading'
}
