/** Digits of a PIN. */
export const pinLength = 6

/** What stands on the pad after a key; anything but a digit is ignored, and so is a seventh. */
export function typePin(pin: string, key: string): string {
  if (key === 'Backspace') return pin.slice(0, -1)
  return /^\d$/.test(key) && pin.length < pinLength ? pin + key : pin
}
