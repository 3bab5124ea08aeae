/**
 * What is typed, once the hand rests: a search asks for words, not for every letter.
 * Call it while a component is made.
 */
export function asTyped(typed: () => string, restMilliseconds = 150): { readonly current: string } {
  let current = $state(typed())
  $effect(() => {
    const text = typed()
    const rest = setTimeout(() => { current = text }, restMilliseconds)
    return () => clearTimeout(rest)
  })
  return { get current() { return current } }
}
