import type { BenchKind } from '@tenths/domain'
import type { PersonKey } from './people.ts'

/** A bench of the demo shop, at least one of each kind. */
export interface DemoBench {
  readonly name: string
  readonly kind: BenchKind
}

export const benches: readonly DemoBench[] = [
  { name: 'Front counter', kind: 'counter' },
  { name: 'Teardown stand', kind: 'teardown' },
  { name: 'Wash bay', kind: 'wash' },
  { name: 'Inspection room', kind: 'inspection' },
  { name: 'Rod bench', kind: 'rod-bench' },
  { name: 'Office', kind: 'office' },
  { name: 'Hand-work bench', kind: 'hand-work' },
  { name: 'Align hone', kind: 'align-hone' },
  { name: 'Surface mill', kind: 'mill' },
  { name: 'Boring bar', kind: 'boring-bar' },
  { name: 'Hone 1, large', kind: 'hone' },
  { name: 'Hone 2, small', kind: 'hone' },
  { name: 'Crank grinder', kind: 'crank-grinder' },
  { name: 'Rod hone', kind: 'rod-hone' },
  { name: 'Pin hone', kind: 'pin-hone' },
  { name: 'Balancer', kind: 'balancer' },
  { name: 'Clean bench', kind: 'clean-bench' },
  { name: 'Assembly room', kind: 'assembly' },
  { name: 'Head bench', kind: 'head-bench' },
]

/** Who works at each kind of bench, and who signs beside them where two signatures are due. */
export const staffing: Record<BenchKind, readonly [PersonKey, PersonKey]> = {
  counter: ['pim', 'bryn'],
  teardown: ['bryn', 'halvard'],
  wash: ['bryn', 'sunniva'],
  inspection: ['sunniva', 'halvard'],
  'rod-bench': ['sunniva', 'halvard'],
  office: ['odile', 'sunniva'],
  'hand-work': ['bryn', 'halvard'],
  'align-hone': ['halvard', 'bryn'],
  mill: ['halvard', 'sunniva'],
  'boring-bar': ['halvard', 'sunniva'],
  hone: ['halvard', 'sunniva'],
  'crank-grinder': ['halvard', 'sunniva'],
  'rod-hone': ['sunniva', 'halvard'],
  'pin-hone': ['sunniva', 'halvard'],
  balancer: ['halvard', 'sunniva'],
  'clean-bench': ['bryn', 'sunniva'],
  assembly: ['bryn', 'sunniva'],
  'head-bench': ['halvard', 'sunniva'],
}
