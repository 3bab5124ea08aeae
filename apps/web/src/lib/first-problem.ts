import { tick } from 'svelte'

/** Brings the first field that is blamed into view and gives it the focus, once the page shows the blame. */
export async function toFirstProblem(form: EventTarget | null): Promise<void> {
  await tick()
  if (!(form instanceof HTMLElement)) return
  const blamed = form.querySelector<HTMLElement>('[aria-invalid="true"]')
  // A group of choices takes no focus itself: its first choice does.
  const control = blamed?.matches('fieldset') ? blamed.querySelector<HTMLElement>('input') : blamed
  control?.focus()
}
