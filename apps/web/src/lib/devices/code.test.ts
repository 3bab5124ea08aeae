import { deviceCodeAlphabet, enrolDevice } from '@tenths/contract'
import { describe, expect, it } from 'vitest'
import { drawDeviceCode, readDeviceCode, showDeviceCode } from './code.ts'

describe('the one-time code of a device', () => {
  it('is taken by the service, and typed in any case with or without its dash', () => {
    const code = drawDeviceCode()
    expect(enrolDevice.body.safeParse({ secret: code }).success).toBe(true)
    expect(readDeviceCode(` ${showDeviceCode(code).toLowerCase()} `)).toBe(code)
  })

  it('uses each sign as often as any other: a byte that would favour the first ones is drawn again', () => {
    const draws = [new Uint8Array(10).fill(255), new Uint8Array(10).fill(deviceCodeAlphabet.length)]
    expect(drawDeviceCode(() => draws.shift() ?? new Uint8Array(10))).toBe(deviceCodeAlphabet.charAt(0).repeat(10))
  })
})
