/** One number on the page of rules, as it stands and as it would be typed. */
export interface Figure {
  /** By what the API names it. */
  readonly name: string
  readonly label: string
  readonly text: string
  /** What stands behind the figure. */
  readonly unitWords: string
  readonly hint?: string | undefined
  /** The starter's number as it would be typed, where one can go back to it. */
  readonly starter?: string
  /** Value and title of each, where it is chosen and not typed. */
  readonly choices?: readonly (readonly [value: string, title: string])[]
  /** What was typed, as it is kept. @throws DomainError with a sentence for the field */
  readonly read: (text: string) => number
}
