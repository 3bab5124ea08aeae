import { partKinds } from '@tenths/domain'
import { expect, it } from 'vitest'
import { firstMark } from './marks.ts'

it('marks the first part of each place, no two kinds alike', () => {
  expect(firstMark('block')).toBe('B1')
  expect(firstMark('rod/3')).toBe('R3')
  expect(new Set(partKinds.map((kind) => firstMark(`${kind}/7`))).size).toBe(partKinds.length)
})
