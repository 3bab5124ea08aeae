import { partOfPlace, type PartKind } from '@tenths/domain'

/** What is stamped or tagged on a part of each kind, before its number. */
const letters: Record<PartKind, string> = {
  block: 'B',
  crankshaft: 'C',
  rod: 'R',
  piston: 'P',
  'piston-pin': 'PN',
  'top-ring': 'TR',
  'second-ring': 'SR',
  'oil-ring': 'OR',
  'main-bearing': 'MB',
  'rod-bearing': 'RB',
  'rod-bolts': 'RF',
  'main-bolts': 'MF',
  camshaft: 'CM',
  assembly: 'A',
  head: 'H',
  'intake-valve': 'IV',
  'exhaust-valve': 'EV',
  'cam-bearing': 'CB',
  'head-bolts': 'HF',
  lifter: 'L',
  'head-gasket': 'HG',
}

/** The mark of the first part in a place: `B1`, `C1`, `R3`. It stays with the part when it moves. */
export function firstMark(place: string): string {
  const { kind, number } = partOfPlace(place)
  return `${letters[kind]}${number ?? 1}`
}
