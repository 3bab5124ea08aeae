import type { FeatureDefinition, Requirement } from '@tenths/domain'
import type { Gauge, Pass, Reading } from '../sheet/operation-sheet.ts'

// A rod bushing and its pin, invented, for the tests of the bench.

export const tenth = 2_540

export const bushing: FeatureDefinition = {
  place: 'rod/1', feature: 'small-end', title: 'Rod 1 small end', shape: 'hole', quantity: 'length', nominal: 23_565_000,
  points: ['front', 'rear'].map((station) => ({ key: `${station}/along-rod`, station, axis: 'along-rod' })), state: [],
}

export const pin: FeatureDefinition = {
  place: 'piston-pin/1', feature: 'diameter', title: 'Pin 1', shape: 'shaft', quantity: 'length', nominal: 23_558_000,
  points: [{ key: 'middle/across', station: 'middle', axis: 'across' }], state: [],
}

export const pinInRod: Requirement = {
  key: 'pin-in-rod/1', fit: 'pin-in-rod', title: 'Pin in rod 1', position: 1, quantity: 'length',
  measurand: { kind: 'clearance', hole: bushing, shaft: pin, pairing: 'overall' },
  limits: { low: 6 * tenth, high: 10 * tenth, target: 7 * tenth, adviceLow: null, adviceHigh: null },
  guard: { kind: 'guarded', coverageFactor: 2 }, critical: true,
  remedy: { low: { action: 'hone', feature: bushing, words: '' }, high: { action: 'replace', feature: null, words: '' } },
  why: { rule: 'pin-in-rod', revision: 1, level: 'starter', formula: 'low = 0.0006', worked: ['low = 0.0006'], source: 'from memory' },
}

export const pinGauge: Gauge = {
  id: 'gauge-1', mark: 'PG-1', name: 'Pin-fit gauge', kind: 'pin-fit', quantity: 'length', resolution: 1_270, analogue: false,
  clockwiseIsSmaller: false, standardUncertainty: 635, calibratedUntil: '2031-01-31', retired: false,
}

export function reading(id: string, point: string, value: number, changes: Partial<Reading> = {}): Reading {
  return { id, point, value, typed: String(value), supersedes: null, reason: null, confirmed: false, note: null, by: 'A', takenAt: '2030-01-01T00:00:00Z', ...changes }
}

export function passOver(changes: Partial<Pass> = {}): Pass {
  return {
    id: 'pass-1', partId: 'rod-A', feature: 'small-end', number: 1, operationKey: 'hone-small-ends', gaugeId: 'gauge-1',
    gaugeMark: 'PG-1', quantity: 'length', standardUncertainty: 635, state: [], setOn: { partId: 'pin-A', feature: 'diameter' }, by: 'A',
    setting: null, temperatures: null, material: null, zero: null, isVoid: false,
    openedAt: '2030-01-01T00:00:00Z', readings: [], ...changes,
  }
}

export const placed = [
  { place: 'rod/1', partId: 'rod-A', mark: 'R1' }, { place: 'piston-pin/1', partId: 'pin-A', mark: 'W1' },
]
