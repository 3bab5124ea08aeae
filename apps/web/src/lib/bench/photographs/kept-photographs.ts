import { NotTaken } from '../../photographs/not-taken.ts'
import type { Deliver, Subject } from '../../photographs/tray.svelte.ts'
import { benchOutbox } from '../outbox/bench-outbox.svelte.ts'
import { hasRoom } from '../outbox/room.ts'
import type { Photographed } from '../outbox/written-down.ts'
import type { BenchSheet } from '../sheet/bench-sheet.svelte.ts'

/** As many photographs wait on a device, at most: some sixty megabytes. */
export const mostWaiting = 40

/** Has photographs of a step kept on the device, to go out in their order behind what they show. */
export function keptHere(sheet: BenchSheet): Deliver {
  return async ({ id, picture }, { subject, subjectKey, caption }) => {
    const waiting = benchOutbox.entries.filter(({ state, content }) => state !== 'stored' && content.kind === 'photograph').length
    if (waiting >= mostWaiting) {
      throw new NotTaken(`${waiting} photographs wait on this device. It takes more when those have gone out.`)
    }
    if (!benchOutbox.canKeep || !await hasRoom(picture.size)) {
      throw new NotTaken('This device has no room for another photograph. What was written beside it is kept.')
    }
    benchOutbox.add({ ...sheet.doneHere(), kind: 'photograph', id, subject, subjectKey, caption, picture })
  }
}

/** The photographs of one thing that are kept on this device and have not arrived. */
export function waitingOf(sheet: BenchSheet, { subject, subjectKey }: Subject): readonly Photographed[] {
  return sheet.outgoing.flatMap(({ state, content }) => (state !== 'refused' && content.kind === 'photograph'
    && content.subject === subject && content.subjectKey === subjectKey ? [content] : []))
}
