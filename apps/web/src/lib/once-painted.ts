const waiting = new Set<() => void>()

/**
 * Runs the work of everybody who asked since the last frame in one task, once that frame is painted.
 * @returns how to take it back
 */
export function oncePainted(work: () => void): () => void {
  if (waiting.size === 0) ask()
  waiting.add(work)
  return () => void waiting.delete(work)
}

function ask(): void {
  // A page out of sight paints nothing.
  if (document.hidden) setTimeout(doAll)
  else requestAnimationFrame(later)
}

/** After all that somebody waits for, where the browser knows priorities. */
function later(): void {
  if ('scheduler' in globalThis) void scheduler.postTask(doAll, { priority: 'background' })
  else setTimeout(doAll)
}

function doAll(): void {
  const all = [...waiting]
  waiting.clear()
  for (const work of all) work()
}
