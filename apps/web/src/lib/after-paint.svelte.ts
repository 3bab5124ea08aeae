import { untrack } from 'svelte'
import { oncePaintedAtLeisure } from './once-painted.ts'

/**
 * Follows a value one frame behind: what is drawn from it keeps nobody waiting who only looks at what a key did in its own place.
 * Call it while a component is made; `read` is to be cheap, what is costly is derived from what this gives.
 */
export function afterPaint<T>(read: () => T): { readonly current: T } {
  let current = $state.raw(untrack(read))
  $effect(() => {
    const now = read()
    return oncePaintedAtLeisure(() => { current = now })
  })
  return { get current() { return current } }
}
