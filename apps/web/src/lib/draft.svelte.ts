/** What is being typed, kept in this tab: a reload, a detour or a refusal loses nothing. */
export interface Draft<T> {
  current: T
  /** Back to the start, once it has been sent. */
  clear(): void
}

/** A draft by name; call it while a component is made. `fresh` gives a new, empty one. */
export function draft<T extends object>(name: string, fresh: () => T): Draft<T> {
  const kept = sessionStorage.getItem(name)
  let current = $state<T>(kept ? { ...fresh(), ...(JSON.parse(kept) as Partial<T>) } : fresh())
  $effect(() => sessionStorage.setItem(name, JSON.stringify(current)))
  return {
    get current() { return current },
    set current(value) { current = value },
    clear() {
      current = fresh()
      sessionStorage.removeItem(name)
    },
  }
}
