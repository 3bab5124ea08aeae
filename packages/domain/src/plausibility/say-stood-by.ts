/** What a reading tells of its doubt. */
interface StoodBy {
  readonly confirmed: boolean
  readonly doubt?: string
  readonly note: string | null
}

/** That a value was asked about, by what, and what whoever stood by it said; empty where nobody asked. */
export function sayStoodBy({ confirmed, doubt, note }: StoodBy): string {
  if (!confirmed) return ''
  return `unlikely${doubt === undefined ? '' : ` (“${doubt}”)`}, stood by${note === null ? '' : `: ${note}`}`
}
