import type { ClockedGap, RingClock } from '@tenths/domain'

/** From the outermost circle of the picture inwards: as the rings lie from the crown down. */
export const drawnGaps: readonly ClockedGap[] = [
  'top-ring', 'second-ring', 'upper-rail', 'expander', 'lower-rail', 'support-rail',
]

export const gapTitles: Record<ClockedGap, string> = {
  'top-ring': 'Top ring',
  'second-ring': 'Second ring',
  'upper-rail': 'Upper oil rail',
  expander: 'Oil expander, ends butted',
  'lower-rail': 'Lower oil rail',
  'support-rail': 'Support rail, its dimple in the opening',
}

/** One circle of the picture, open where the ring's gap is to lie. */
export interface DrawnRing {
  readonly gap: ClockedGap
  /** As it is lettered in picture and key. */
  readonly letter: string
  readonly angle: number
  readonly radius: number
  /** The circle with its opening, as an SVG path around the middle. */
  readonly path: string
  /** Where the opening is. */
  readonly at: Spot
}

export interface Spot {
  readonly x: number
  readonly y: number
}

/** Clocks that are alike, and whose they are. */
export interface ClockOfCylinders {
  readonly cylinders: readonly number[]
  readonly clock: RingClock
  readonly rings: readonly DrawnRing[]
}

const outermost = 84
const between = 13
/** Half of what each opening takes of its circle, as a length along it. */
const halfOpening = 10

/** Each clock once, with the cylinders that it holds for: usually all of an engine are alike. */
export function drawClocks(clocks: readonly RingClock[]): readonly ClockOfCylinders[] {
  const alike = new Map<string, RingClock[]>()
  for (const clock of clocks) {
    const text = JSON.stringify([clock.majorThrustHour, clock.gaps])
    alike.set(text, [...(alike.get(text) ?? []), clock])
  }
  return [...alike.values()].flatMap((same) => {
    const clock = same[0]
    return clock === undefined ? [] : [{ cylinders: same.map(({ cylinder }) => cylinder), clock, rings: drawRings(clock) }]
  })
}

function drawRings({ gaps }: RingClock): readonly DrawnRing[] {
  const angles = new Map(gaps.map(({ gap, angle }) => [gap, angle]))
  return drawnGaps.filter((gap) => angles.has(gap)).map((gap, index) => {
    const angle = angles.get(gap) ?? 0
    const radius = outermost - index * between
    return { gap, letter: String.fromCharCode(65 + index), angle, radius, path: openCircle(radius, angle), at: spotAt(radius, angle) }
  })
}

/** A point on the crown: `angle` in thousandths of a degree clockwise from the front, which is up. */
export function spotAt(radius: number, angle: number): Spot {
  const turned = (angle / 180_000) * Math.PI
  return { x: radius * Math.sin(turned), y: -radius * Math.cos(turned) }
}

function openCircle(radius: number, angle: number): string {
  const half = (halfOpening / radius) * (180_000 / Math.PI)
  const [from, to] = [spotAt(radius, angle + half), spotAt(radius, angle - half)]
  return `M${from.x.toFixed(2)} ${from.y.toFixed(2)}A${radius} ${radius} 0 1 1 ${to.x.toFixed(2)} ${to.y.toFixed(2)}`
}

/** An angle as a time on the clock: 130° is `4:20`. */
export function clockTime(angle: number): string {
  const minutes = Math.round(angle / 500) % 720
  const hour = Math.floor(minutes / 60)
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, '0')}`
}

/** The clock in words, from the crown down. */
export function describeClock({ cylinders, clock, rings }: ClockOfCylinders): string {
  const gaps = rings.map(({ gap, angle }) => `${gapTitles[gap]} at ${clockTime(angle)} (${angle / 1_000}°)`)
  return `${cylinderWords(cylinders)}, seen on the crown with the front of the engine at 12: ${gaps.join('; ')}. `
    + `Major thrust at ${clock.majorThrustHour}:00, the pin along 12:00 and 6:00.`
}

/** `Cylinder 1`, or `Cylinders 1, 2 and 3`. */
export function cylinderWords(cylinders: readonly number[]): string {
  if (cylinders.length === 1) return `Cylinder ${cylinders[0]}`
  return `Cylinders ${cylinders.slice(0, -1).join(', ')} and ${cylinders.at(-1)}`
}

const againstTitles: Record<RingClock['faults'][number]['against'], string> = {
  ...gapTitles, 'major-thrust': 'the major thrust side', 'minor-thrust': 'the minor thrust side', pin: 'an end of the pin',
}

/** What the rule finds wrong with a clock, one sentence each. */
export function faultSentences({ faults }: Pick<RingClock, 'faults'>): readonly string[] {
  return faults.map(({ gap, against, distance, least }) =>
    `${gapTitles[gap]}: ${distance / 1_000}° from ${againstTitles[against]}, ${least / 1_000}° at least.`)
}
