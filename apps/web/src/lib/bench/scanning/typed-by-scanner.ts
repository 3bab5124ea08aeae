import { readTagText } from '@tenths/contract'

/** Longest pause between two keys of a scanner, in milliseconds: no hand types a whole code as fast (our choice, no source). */
const longestPause = 100
/** Fewer signs than this are no code that anybody prints on a tag. */
const leastSigns = 6

/** What a burst of keys turned out to be, once Enter ended it. */
export type Scanned =
  | { readonly kind: 'tag'; readonly text: string }
  /** A code of something else. */
  | { readonly kind: 'foreign'; readonly text: string }
  /** A value of a gauge, a key of a person: nothing to do with tags. */
  | { readonly kind: 'nothing' }

/** Tells a scanner, which types like a keyboard but faster, from hands and gauges. */
export class TypedByScanner {
  #text = ''
  #last = -Infinity

  /** Whether nothing is being typed at the moment `at`, in milliseconds. */
  isFresh(at: number): boolean {
    return this.#text === '' || at - this.#last > longestPause
  }

  /** Takes a key in; what Enter ended, else null. */
  take(key: string, at: number): Scanned | null {
    if (this.isFresh(at)) this.#text = ''
    if (key === 'Enter') {
      const text = this.#text
      this.#text = ''
      return sort(text)
    }
    // Shift and its like come between the signs they change.
    if (key.length === 1) {
      this.#text += key
      this.#last = at
    }
    return null
  }
}

function sort(text: string): Scanned {
  if (readTagText(text) !== null) return { kind: 'tag', text }
  const isValue = /^[-+−]?[\d.,/ ]*(mm|in|")?$/.test(text) && !/^\d{8,}$/.test(text)
  return text.length < leastSigns || isValue ? { kind: 'nothing' } : { kind: 'foreign', text }
}
