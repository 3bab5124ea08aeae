import { deviceCodeAlphabet, deviceCodeLength } from '@tenths/contract'

/** Bytes above this are drawn again, so that each sign of the alphabet comes as often as any other. */
const fair = 256 - (256 % deviceCodeAlphabet.length)

/** A one-time code for a tablet, from the browser's own chance: about 49 bits. */
export function drawDeviceCode(draw: (bytes: Uint8Array<ArrayBuffer>) => Uint8Array = (bytes) => crypto.getRandomValues(bytes)): string {
  let code = ''
  while (code.length < deviceCodeLength) {
    for (const byte of draw(new Uint8Array(deviceCodeLength))) {
      if (byte < fair && code.length < deviceCodeLength) code += deviceCodeAlphabet[byte % deviceCodeAlphabet.length]
    }
  }
  return code
}

/** `ABCDE-FGHJK`, as it is read from one screen and typed on another. */
export function showDeviceCode(code: string): string {
  return `${code.slice(0, 5)}-${code.slice(5)}`
}

/** What was typed as a code, whatever case and dashes it was typed with. */
export function readDeviceCode(typed: string): string {
  return typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, '')
}
