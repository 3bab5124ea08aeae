import type { revisePlausibility } from '@tenths/contract'
import { shopNumbersAfter, type ReaderUnit, type ShopNumbers } from '@tenths/domain'
import type { PoolClient } from 'pg'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { listNumbers } from './list-numbers.ts'
import { numbersInForce } from './numbers-in-force.ts'

type Route = typeof revisePlausibility

/**
 * Adds a revision of the shop's own numbers. From now on values are doubted by it; what was taken stays as it is.
 * @throws ServiceError `edit-stale` when somebody revised them meanwhile, `body-invalid` when nothing changes;
 *   DomainError as shopNumbersAfter
 */
export async function reviseNumbers(
  { client, person }: CommandContext, { body: { numbers, reason, basedOn } }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const { revision, own } = await numbersInForce(client)
  // What is sent is right or wrong beside the numbers that were looked at, and beside no others.
  if (basedOn !== revision) throw stale()
  const next = shopNumbersAfter(own, numbers, await unitOfShop(client))
  if (isSame(own, next)) throw new ServiceError('body-invalid', 'These are the numbers that stand already.', 'numbers')
  const { rowCount } = await client.query(
    `INSERT INTO plausibility_revision (revision, numbers, reason, made_by)
     VALUES ($1, $2, $3, $4)
     ON CONFLICT (revision) DO NOTHING`,
    [revision + 1, JSON.stringify(next), reason, person.id],
  )
  if (rowCount === 0) throw stale()
  return listNumbers(client)
}

function stale(): ServiceError {
  return new ServiceError('edit-stale', 'Somebody changed these numbers meanwhile: look at them again.', 'basedOn')
}

function isSame(one: ShopNumbers, other: ShopNumbers): boolean {
  const keys = Object.keys({ ...one, ...other })
  return keys.every((key) => one[key] === other[key])
}

async function unitOfShop(client: PoolClient): Promise<ReaderUnit> {
  const { rows: [shop] } = await client.query<{ unit: ReaderUnit }>('SELECT unit FROM shop')
  if (shop === undefined) throw new Error('The shop is not set up.')
  return shop.unit
}
