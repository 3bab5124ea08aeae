/** Path of a Chromium to test with; installs Debian's when it may. Throws an Error whose message says what to do. */
export function findChromium(): Promise<string>
