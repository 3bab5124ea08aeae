/** Whether a gauge of this kind is a set of feelers, which tell an interval and no size. The kind is the shop's own words. */
export function readsBlades(gaugeKind: string): boolean {
  return /feeler/i.test(gaugeKind)
}

/**
 * Whether a gauge of this kind compares with a size that it is set to: its setting is asked for. Any other gauge may be
 * set to zero on a size as well.
 */
export function isComparator(gaugeKind: string): boolean {
  return /bore.?gauge|comparator|snap.?gauge/i.test(gaugeKind)
}
