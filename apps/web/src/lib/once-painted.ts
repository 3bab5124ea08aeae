/** Takes work in for later. @returns how to take it back */
type Later = (work: () => void) => () => void

/** Runs the work of everybody who asked since the last frame in one task, once that frame is painted. */
export const oncePainted: Later = gathering((doAll) => setTimeout(doAll))

/** As `oncePainted`, and after all that somebody waits for, such as sending, where the browser knows priorities. */
export const oncePaintedAtLeisure: Later = gathering((doAll) => {
  if ('scheduler' in globalThis) void scheduler.postTask(doAll, { priority: 'background' })
  else setTimeout(doAll)
})

function gathering(put: (doAll: () => void) => void): Later {
  const waiting = new Set<() => void>()

  function doAll(): void {
    const all = [...waiting]
    waiting.clear()
    for (const work of all) work()
  }

  return (work) => {
    if (waiting.size === 0) {
      // A page out of sight paints nothing.
      if (document.hidden) setTimeout(doAll)
      else requestAnimationFrame(() => put(doAll))
    }
    waiting.add(work)
    return () => void waiting.delete(work)
  }
}
