/** A choice that this device keeps: how the grid is drawn, whether the pad is shown. */
export interface Choice<Value extends string> {
  readonly current: Value
  choose(value: Value): void
}

export function choice<Value extends string>(name: string, values: readonly Value[], usual: Value): Choice<Value> {
  const kept = values.find((value) => value === localStorage.getItem(name))
  let current = $state<Value>(kept ?? usual)
  return {
    get current() { return current },
    choose(value) {
      current = value
      localStorage.setItem(name, value)
    },
  }
}
