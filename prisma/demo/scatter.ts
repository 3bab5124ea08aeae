/**
 * Chance that always tells the same story: a name goes in, the same numbers come out, whatever was drawn before. So a
 * value of the demo shop depends on its job, feature, pass and point alone, and a changed script moves no other value.
 * FNV-1a of the name seeds mulberry32 (both public domain, 32 bits): far from random enough for anything but a demo.
 */
export interface Scatter {
  /** Evenly spread, `low` included, `high` not. */
  between(low: number, high: number): number
  /** Bell-shaped, from −1 to 1: the mean of four even draws, as chance errors of machining add up. */
  bell(): number
  pick<T>(list: readonly T[]): T
}

export function scatterOf(...name: readonly (string | number)[]): Scatter {
  let state = fnv1a(name.join('\u001f'))
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const between = (low: number, high: number) => low + (high - low) * next()
  return {
    between,
    bell: () => (between(-1, 1) + between(-1, 1) + between(-1, 1) + between(-1, 1)) / 4,
    pick: (list) => {
      const chosen = list[Math.floor(next() * list.length)]
      if (chosen === undefined) throw new Error('There is nothing to pick from.')
      return chosen
    },
  }
}

function fnv1a(text: string): number {
  let hash = 0x811c9dc5
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193)
  return hash | 0
}
