import type { Role, SignedInPerson } from '@tenths/contract'
import { JUDGE_VERSION } from '@tenths/domain'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

interface Row {
  id: string
  name: string
  roles: Role[]
  hasPin: boolean
  shopName: string
  timeZone: string
  unit: 'inch' | 'millimetre'
  isDemo: boolean
  device: z.infer<typeof SignedInPerson>['device']
}

/** What a person's pages need to know of them and of their shop. @throws Error when there is no such person or shop. */
export async function readSignedInPerson(
  database: Queryable, personId: string, deviceId: string | null,
): Promise<z.infer<typeof SignedInPerson>> {
  const { rows } = await database.query<Row>(
    `SELECT person.id, person.name, person.pin_hash IS NOT NULL AS "hasPin",
            ARRAY(SELECT role FROM person_role WHERE person_id = person.id ORDER BY role) AS roles,
            shop.name AS "shopName", shop.time_zone AS "timeZone", shop.unit, shop.is_demo AS "isDemo",
            (SELECT json_build_object('id', id, 'name', name, 'benchId', bench_id) FROM device WHERE id = $2) AS device
     FROM person, shop WHERE person.id = $1`,
    [personId, deviceId],
  )
  const row = rows[0]
  if (row === undefined) throw new Error('A signed-in person is a row of a shop.')
  const { shopName, timeZone, unit, isDemo, ...person } = row
  return { ...person, shop: { name: shopName, timeZone, unit, isDemo }, judgeVersion: JUDGE_VERSION }
}
