import type { Role } from '@tenths/contract'

/** Someone of the demo shop. Password and PIN exist only here, are printed at the first start, and protect nothing. */
export interface DemoPerson {
  readonly name: string
  readonly signInName: string
  readonly password: string
  readonly pin: string
  readonly roles: readonly Role[]
}

export const shop = { name: 'Lantern Quay Engine Works', timeZone: 'UTC', unit: 'inch' } as const

/** Everybody by sign-in name; the owner comes first, because the shop is set up by the owner. */
export const people = {
  odile: {
    name: 'Odile Marrow', signInName: 'odile', password: 'lantern-odile', pin: '402917',
    // Whoever sets a shop up may do everything in it.
    roles: ['owner', 'counter', 'machinist'],
  },
  pim: { name: 'Pim Tesselaar', signInName: 'pim', password: 'lantern-pim', pin: '318264', roles: ['counter'] },
  bryn: {
    name: 'Bryn Ashgrove', signInName: 'bryn', password: 'lantern-bryn', pin: '560138', roles: ['counter', 'machinist'],
  },
  halvard: {
    name: 'Halvard Quill', signInName: 'halvard', password: 'lantern-halvard', pin: '729405', roles: ['machinist'],
  },
  sunniva: {
    name: 'Sunniva Reedle', signInName: 'sunniva', password: 'lantern-sunniva', pin: '184653', roles: ['machinist'],
  },
} as const satisfies Record<string, DemoPerson>

export type PersonKey = keyof typeof people
