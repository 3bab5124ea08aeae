/** What a key that a gauge, or a hand, presses outside the grid asks of the page; null leaves it alone. */
export type GaugeKey = { readonly kind: 'type'; readonly text: string } | { readonly kind: 'enter' | 'undo' }

interface Pressed {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

/** Where the key went: into a text that somebody types, or nowhere that takes text. */
export interface KeyTarget {
  readonly takesText: boolean
  /** A dialogue is open: what is typed is meant for it. */
  readonly isElsewhere: boolean
}

const figure = /^[\d.,+\-−/]$/

/**
 * A digital gauge types digits, then Enter, wherever the cursor is. Enter belongs to the gauge only after digits: alone
 * it presses the button that has the focus.
 * @param hasBegun whether digits came since the focus last moved
 */
export function readGaugeKey({ key, ctrlKey, metaKey, altKey }: Pressed, target: KeyTarget, hasBegun: boolean): GaugeKey | null {
  if (target.takesText || target.isElsewhere || altKey) return null
  if ((key === 'z' || key === 'Z') && (ctrlKey || metaKey)) return { kind: 'undo' }
  if (ctrlKey || metaKey) return null
  if (figure.test(key)) return { kind: 'type', text: key }
  return key === 'Enter' && hasBegun ? { kind: 'enter' } : null
}

/** What stands at the end of a key's way, as far as the grid goes. */
export function targetOf(element: Element | null): KeyTarget {
  const field = element?.closest('input, textarea, [contenteditable]') ?? null
  const isButtonLike = field instanceof HTMLInputElement && ['checkbox', 'radio', 'button', 'submit'].includes(field.type)
  return {
    takesText: field !== null && !isButtonLike,
    isElsewhere: document.querySelector('dialog[open]') !== null || (element?.closest('[data-keys]') ?? null) !== null,
  }
}
