/**
 * A count or a length that Postgres keeps as int8, read as a number. Throws a RangeError beyond ±(2⁵³ − 1),
 * where a number would silently become another one.
 */
export function wholeNumber(text: string): number {
  const value = Number(text)
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is too large to be read exactly`)
  return value
}
