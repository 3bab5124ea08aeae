import { expect, it } from 'vitest'
import { printable } from './printable.ts'

it('prints what the standard fonts have and shows where something is missing', () => {
  expect(printable('−0.0004 in, “tight” – 5 µm')).toBe('–0.0004 in, “tight” – 5 µm')
  expect(printable('Łukasz Dvořák')).toBe('Lukasz Dvorák')
  expect(printable('5 ≥ 4 → good')).toBe('5 >= 4 -> good')
  expect(printable('機')).toBe('?')
})
