import type { FeatureDefinition } from '@tenths/domain'
import { partIn, type OperationSheet, type Pass } from '../sheet/operation-sheet.ts'
import { countingReadings } from './counting.ts'

type Placed = Pick<OperationSheet, 'placed'>

/** Every pass over a feature of the part that sits in its place now, the first one first. */
export function passesOf(sheet: Placed, passes: readonly Pass[], feature: FeatureDefinition): readonly Pass[] {
  const part = partIn(sheet, feature.place)
  return passes
    .filter((pass) => pass.partId === part?.partId && pass.feature === feature.feature)
    .toSorted((one, other) => one.number - other.number)
}

/** The pass that counts, or is being taken; null before the first value. */
export function latestPass(sheet: Placed, passes: readonly Pass[], feature: FeatureDefinition): Pass | null {
  return passesOf(sheet, passes, feature).at(-1) ?? null
}

/** Whether every point of the feature has a value in this pass. */
export function isFull(feature: FeatureDefinition, pass: Pass | null): boolean {
  if (pass === null || pass.isVoid) return false
  const measured = new Set(countingReadings(pass.readings).map(({ point }) => point))
  return feature.points.every(({ key }) => measured.has(key))
}

/** What was typed here lies over what the service last answered, until its answer holds it too. */
export function withLocal(
  passes: readonly Pass[], local: readonly { readonly pass: Omit<Pass, 'readings'>; readonly reading: Pass['readings'][number] }[],
): readonly Pass[] {
  const all = new Map(passes.map((pass) => [pass.id, pass]))
  for (const { pass, reading } of local) {
    const known = all.get(pass.id) ?? { ...pass, readings: [] }
    if (known.readings.some(({ id }) => id === reading.id)) continue
    all.set(pass.id, { ...known, readings: [...known.readings, reading] })
  }
  return [...all.values()]
}
