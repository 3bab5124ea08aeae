/** A number that counts something, as a job's does: an address with anything else in its place names nothing. */
export function match(text: string): boolean {
  return /^[1-9]\d{0,8}$/.test(text)
}
