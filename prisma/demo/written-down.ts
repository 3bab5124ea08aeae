import { partOfPlace } from '@tenths/domain'
import { scatterOf } from './scatter.ts'

/** What the people of the demo write down where a step asks for words: invented, in the words of the trade. */
const words: Readonly<Record<string, string>> = {
  plate: 'Steel plate 2, the build’s gasket and bolts, 95 N·m in three steps',
  stones: '220 to size, 280 to 0.01 mm, 400 for the last twelve strokes at low load',
  'finish-asked': 'Ra 0.35 µm, Rpk 0.2, Rk 0.9, Rvk 1.4, angle 40 to 45 degrees, by the rings’ sheet',
}

/** The words for one thing to see. */
export function wordsFor(key: string): string {
  return words[key] ?? 'As the sheet says'
}

/** The lot of what goes into a place: parts of one kind came out of one box. */
export function lotOf(jobKey: string, place: string): string {
  const { kind } = partOfPlace(place)
  const letters = kind.split('-').map((word) => word.charAt(0).toUpperCase()).join('')
  const number = Math.floor(scatterOf('lot', jobKey, kind).between(1_000, 9_999))
  return `${letters}-${number}`
}
