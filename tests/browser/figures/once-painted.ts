/**
 * A function of the page, as script: calls back once the next frame is painted. That is when the task after the frame runs;
 * it goes before whatever the page itself puts off until then.
 */
export const oncePainted = `((done) => requestAnimationFrame(() => scheduler.postTask(done, { priority: 'user-blocking' })))`
