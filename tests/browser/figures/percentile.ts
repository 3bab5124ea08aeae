/** The value that this share of all values does not exceed. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
}
