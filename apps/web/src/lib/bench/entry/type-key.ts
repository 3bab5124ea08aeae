/** Keys of the on-screen pad, in rows as they are drawn. */
export const padKeys = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
  ['±', '0', '.'],
] as const
export type PadKey = (typeof padKeys)[number][number] | '⌫'

/** What stands in the cell after a key of the pad. A second point does nothing; the sign turns and turns back. */
export function typeKey(text: string, key: PadKey): string {
  switch (key) {
    case '⌫': return text.slice(0, -1)
    case '±': return /^[-−]/.test(text) ? text.slice(1) : `−${text}`
    case '.': return /[.,]/.test(text) ? text : `${text}.`
    default: return text + key
  }
}
