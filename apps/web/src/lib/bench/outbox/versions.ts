/** An entry as some version of the program kept it. */
export interface Versioned {
  readonly version: number
  readonly sequence?: number
  readonly content: Readonly<Record<string, unknown>>
}

/** One step from each version to the next. */
const steps: Readonly<Record<number, (entry: Versioned) => Versioned>> = {
  // Only readings were kept, none of them behind a step that was merely marked as signed.
  1: (entry) => ({
    ...entry,
    version: 2,
    reason: null,
    content: { ...entry.content, kind: 'reading', behind: false, cellTitle: entry.content['cell'] },
  }),
  // No zero checks were kept: an older program must leave these where they are.
  2: (entry) => ({ ...entry, version: 3 }),
  // Nor results of tests, lots, findings and photographs.
  3: (entry) => ({ ...entry, version: 4 }),
}

/** An entry of an older version as a newer one has it; as it is when no step leads further. */
export function upgraded(entry: Versioned, wanted: number): Versioned {
  let now = entry
  for (let step = steps[now.version]; step !== undefined && now.version < wanted; step = steps[now.version]) now = step(now)
  return now
}
