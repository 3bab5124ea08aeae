import type { ReaderUnit } from '@tenths/domain'
import type { Model } from './draft-types.ts'
import { lengthWithUnit } from './length-text.ts'

/** What a person chooses from when an engine or its parts are typed. */

export const arrangements = [
  { value: 'inline', title: 'In line' },
  { value: 'v', title: 'V' },
  { value: 'flat', title: 'Flat' },
  { value: 'single', title: 'Single' },
] as const

export const numberings = [
  { value: 'by-bank', title: 'Bank by bank', hint: '1–4 on one, 5–8 on the other' },
  { value: 'alternating', title: 'Alternating', hint: '1, 3, 5, 7 on one, 2, 4, 6, 8 on the other' },
] as const

export const sides = [
  { value: 'viewer-left', title: 'On your left' },
  { value: 'viewer-right', title: 'On your right' },
] as const

export const sharings = [
  { value: 'two-plain-rods', title: 'Two plain rods side by side', hint: 'Each has a side that must face the cheek' },
  { value: 'one-rod', title: 'One rod' },
  { value: 'split-pin', title: 'Two rods on a split pin' },
  { value: 'fork-and-blade', title: 'Fork and blade' },
] as const

export const rotations = [
  { value: 'clockwise', title: 'Clockwise' },
  { value: 'counterclockwise', title: 'Counter-clockwise' },
] as const

export const coolings = [
  { value: 'water', title: 'Water' },
  { value: 'air', title: 'Air' },
] as const

export const camshaftPlaces = [
  { value: 'in-block', title: 'In the block', hint: 'Lifters and pushrods' },
  { value: 'overhead', title: 'In the head' },
] as const

export const headMaterials = [
  { value: 'iron', title: 'Iron' },
  { value: 'aluminium', title: 'Aluminium' },
  { value: 'unknown', title: 'Not known yet' },
] as const

export const blocks = [
  { value: 'not-told', title: 'Not told', hint: 'Readings are taken as they are read' },
  { value: 'iron', title: 'Iron', hint: 'Readings are corrected to 20 °C' },
  { value: 'aluminium-with-liners', title: 'Aluminium with liners', hint: 'Soaked, not corrected' },
] as const

export const boreSurfaces = [
  { value: 'not-told', title: 'Not told', hint: 'Planned as plain' },
  { value: 'plain', title: 'Plain' },
  { value: 'sleeved', title: 'Sleeved', hint: 'An oversize is sent out, not bored here' },
  { value: 'plated', title: 'Plated', hint: 'An oversize is sent out; the piston’s room is on its maker’s sheet' },
] as const

export const cycles = [
  { value: 'not-told', title: 'Not told', hint: 'Judged as a four-stroke' },
  { value: 'four-stroke', title: 'Four-stroke' },
  { value: 'two-stroke', title: 'Two-stroke', hint: 'The piston’s room is on its maker’s sheet' },
] as const

export const ignitions = [
  { value: 'not-told', title: 'Not told', hint: 'Judged as fired by a spark' },
  { value: 'spark', title: 'Spark' },
  { value: 'diesel', title: 'Diesel', hint: 'No least quench' },
] as const

export const chambers = [
  { value: 'not-told', title: 'Not told', hint: 'Quench is held as in a closed one' },
  { value: 'closed', title: 'Closed', hint: 'With a flat that the crown comes close to' },
  { value: 'open', title: 'Open', hint: 'No least quench' },
] as const

export const crowns = [
  { value: 'not-told', title: 'Not told', hint: 'Quench is held as over a flat one' },
  { value: 'flat', title: 'Flat' },
  { value: 'dished', title: 'Dished', hint: 'No least quench' },
  { value: 'domed', title: 'Domed' },
] as const

export const alloys = [
  { value: 'cast', title: 'Cast' },
  { value: 'hypereutectic', title: 'Hypereutectic' },
  { value: '4032', title: 'Forged 4032' },
  { value: '2618', title: 'Forged 2618' },
] as const

export const pinFits = [
  { value: 'floating', title: 'Floats', hint: 'Free in rod and piston' },
  { value: 'pressed', title: 'Pressed', hint: 'Locked in the rod' },
] as const

export const rodMaterials = [
  { value: 'steel', title: 'Steel' },
  { value: 'aluminium', title: 'Aluminium' },
] as const

export const retainerCounts = [
  { value: '1', title: 'One a side' },
  { value: '2', title: 'Two a side' },
  { value: '0', title: 'None, or not known' },
] as const

export const ringTitles = { top: 'Top ring', second: 'Second ring', oil: 'Oil ring' } as const

/** An engine in one line: *V8, 90°, bore 4.0000 in, stroke 3.4800 in*. */
export function engineInWords(engine: Model['specification'], unit: ReaderUnit): string {
  const { arrangement, cylinders, bankAngle } = engine
  const layout = {
    v: `V${cylinders}, ${bankAngle / 1000}°`,
    flat: `Flat ${cylinders}`,
    inline: `In-line ${cylinders}`,
    single: 'Single',
  }[arrangement]
  return `${layout}, bore ${lengthWithUnit(engine.bore, unit)}, stroke ${lengthWithUnit(engine.stroke, unit)}`
}
