/** Below this many bytes that the browser still grants, nothing more is accepted: what is on the way must find room. */
const leastRoom = 1_000_000

/**
 * Whether the browser grants this site enough room for more, and for so many bytes beside; true where it does not say.
 * Some browsers answer a made-up figure, so that no site learns how full the device is: there the first write that fails
 * says it.
 */
export async function hasRoom(
  bytes = 0,
  storage: Pick<StorageManager, 'estimate'> | undefined = typeof navigator === 'undefined' ? undefined : navigator.storage,
): Promise<boolean> {
  const { usage, quota } = await storage?.estimate().catch(() => undefined) ?? {}
  return usage === undefined || quota === undefined || quota - usage >= leastRoom + bytes
}

/** Asks the browser not to clear what lies here when the device runs short; it may say no. */
export function askToStay(): void {
  const storage = navigator.storage as StorageManager | undefined
  void storage?.persist?.().catch(() => false)
}
