import { page } from '$app/state'
import type { Role, SignedInPerson } from '@tenths/contract'
import type { ReaderUnit } from '@tenths/domain'
import type { z } from 'zod'

export type Person = z.infer<typeof SignedInPerson>

/** The signed-in person, on every page of the people of the shop: what the layout read, so it is never two things. */
export const session = {
  get person(): Person {
    const person = page.data.person
    if (!person) throw new Error('No one is signed in on this page.')
    return person
  },
  /** The unit in which lengths are typed and shown. */
  get unit(): ReaderUnit {
    return chosen.unit ?? this.person.shop.unit
  },
  /** Another unit than the shop's for this browser; null goes back to the shop's. */
  readIn(unit: ReaderUnit | null): void {
    chosen.unit = unit
    if (unit) localStorage.setItem('unit', unit)
    else localStorage.removeItem('unit')
  },
  mayBe(...roles: readonly Role[]): boolean {
    return this.person.roles.some((role) => roles.includes(role))
  },
}

const chosen = $state<{ unit: ReaderUnit | null }>({ unit: rememberedUnit() })

function rememberedUnit(): ReaderUnit | null {
  const unit = typeof localStorage === 'undefined' ? null : localStorage.getItem('unit')
  return unit === 'inch' || unit === 'millimetre' ? unit : null
}
