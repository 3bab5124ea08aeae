/** The device's own time now. It is kept beside the server's and orders nothing. */
export function deviceTime(): string {
  return new Date().toISOString()
}
