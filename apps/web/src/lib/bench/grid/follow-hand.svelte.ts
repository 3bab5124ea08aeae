import type { Attachment } from 'svelte/attachments'
import type { EntryDesk } from '../entry/entry-desk.svelte.ts'

/**
 * The focus follows the hand through a grid. It is taken from a field or a button elsewhere only when that asked for it.
 */
export function followHand(desk: EntryDesk): Attachment<HTMLElement> {
  return (grid) => {
    const inputOf = (key: string) => grid.querySelector<HTMLInputElement>(`input[data-cell="${CSS.escape(key)}"]`)
    const isHere = () => grid.contains(document.activeElement)

    const takeFocusTo = (key: string): boolean => {
      const input = isHere() ? inputOf(key) : null
      input?.focus()
      return input !== null
    }
    desk.takeFocusTo = takeFocusTo

    $effect(() => {
      const input = desk.focusOn === null ? null : inputOf(desk.focusOn)
      if (input === null) return
      desk.focusOn = null
      input.focus()
      input.select()
    })

    const place = $derived(desk.state.current === null ? null : desk.current?.key ?? null)
    $effect(() => {
      const input = place === null ? null : inputOf(place)
      if (input === null || document.activeElement === input) return
      if (isHere()) input.focus()
      else input.scrollIntoView({ block: 'nearest', inline: 'nearest' })
    })

    return () => {
      if (desk.takeFocusTo === takeFocusTo) desk.takeFocusTo = () => false
    }
  }
}
