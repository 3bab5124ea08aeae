/* global document, getComputedStyle, innerHeight, innerWidth */
// Each of these runs within the page and stands alone: it reaches nothing of this file.

export function smallTargets(least) {
  const targets = 'a[href], button, input, select, textarea, summary, [role="button"], [role="switch"], [role="option"]'
  // Beneath an open dialog nothing can be touched.
  const shown = [...(document.querySelector('dialog[open]') ?? document).querySelectorAll(targets)].filter((one) =>
    one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !one.closest('.aloud, [inert]'))
  return shown.flatMap((one) => {
    // A tick is touched anywhere on its line.
    const touched = one.matches('[type="checkbox"], [type="radio"]') ? one.closest('label') ?? one : one
    const { width, height, bottom } = touched.getBoundingClientRect()
    const isInSentence = one.matches('a') && getComputedStyle(one).display === 'inline'
    // Above the page lies what only the keyboard brings into sight. Half a pixel is lost to rounding.
    if (isInSentence || bottom + document.documentElement.scrollTop <= 0 || Math.min(width, height) >= least - 0.5) return []
    return `${one.tagName.toLowerCase()} “${(one.ariaLabel ?? touched.innerText).trim().slice(0, 40)}”: ${width.toFixed()} × ${height.toFixed()}`
  })
}

export function cutOff() {
  const { clientWidth: edge, scrollWidth } = document.documentElement
  const scrolls = (one) => one !== null && one !== document.body
    && (/auto|scroll/.test(getComputedStyle(one).overflowX) || scrolls(one.parentElement))
  const wide = [...document.body.querySelectorAll('*')].filter((one) => one.checkVisibility() && !one.closest('.aloud')
    && !one.parentElement.closest('svg') && one.getBoundingClientRect().right > edge + 1 && !scrolls(one.parentElement))
  return [
    ...(scrollWidth > edge ? [`the page is ${scrollWidth} wide, the screen ${edge}`] : []),
    ...wide.map((one) => `${one.tagName.toLowerCase()} “${(one.innerText ?? '').trim().slice(0, 40)}” ends at ${one.getBoundingClientRect().right.toFixed()} of ${edge}`),
  ]
}

export function describeFocus() {
  const focused = document.activeElement
  if (focused === null || focused === document.body) return null
  const known = (globalThis.focusedBefore ??= new Set())
  // Day, month and year of one field are three stops of the Tab key.
  const isWithin = globalThis.focusedLast === focused && focused.matches('[type^="date"], [type="time"]')
  const isBack = known.has(focused) && !isWithin
  known.add(focused)
  globalThis.focusedLast = focused
  // Of a field that only its label shows, the label is looked at.
  const shown = focused.matches('.aloud') ? focused.labels?.[0] ?? focused : focused
  const words = `${focused.tagName.toLowerCase()} “${(focused.ariaLabel ?? focused.innerText ?? '').trim().replace(/\s+/g, ' ').slice(0, 40)}”`
  const { outlineStyle, outlineWidth } = getComputedStyle(shown)
  const { left, top, width, height } = shown.getBoundingClientRect()
  const [x, y] = [left + width / 2, top + Math.min(height, innerHeight) / 2]
  const above = document.elementFromPoint(x, y)
  const isCovered = above !== null && !shown.contains(above) && !above.contains(shown)
  const isOutOfSight = x < 0 || y < 0 || x > innerWidth || y > innerHeight
  return {
    isBack,
    trouble: [
      ...(outlineStyle === 'none' || Number.parseFloat(outlineWidth) < 2 ? [`${words} does not show that it has the focus`] : []),
      ...(isCovered || isOutOfSight ? [`${words} has the focus where it cannot be seen`] : []),
    ],
  }
}

export function unreached() {
  const known = globalThis.focusedBefore ?? new Set()
  globalThis.focusedBefore = undefined
  const targets = 'a[href], button, input, select, textarea, summary, [tabindex="0"]'
  const isOfGroup = (one) => one.type === 'radio' && [...known].some(({ name }) => name === one.name)
  return [...(document.querySelector('dialog[open]') ?? document).querySelectorAll(targets)]
    .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.disabled && one.tabIndex >= 0
      && !known.has(one) && !isOfGroup(one))
    .map((one) => `${one.tagName.toLowerCase()} “${(one.ariaLabel ?? one.innerText ?? '').trim().replace(/\s+/g, ' ').slice(0, 40)}”`)
}
