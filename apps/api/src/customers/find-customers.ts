import type { Queryable } from '../database/queryable.ts'
import { beginningWith, containing } from '../http/search-pattern.ts'

export interface FoundCustomer {
  id: string
  name: string
  phone: string
  email: string
  version: number
  jobs: number
}

/**
 * The twenty nearest customers for what was typed so far: any part of the name, or any run of the phone's digits
 * however they are grouped. Names that begin with it come first; without a search, whoever came last.
 */
export async function findCustomers(database: Queryable, search: string): Promise<FoundCustomer[]> {
  const digits = search.replaceAll(/\D/g, '')
  const { rows } = await database.query<FoundCustomer>(
    `SELECT id, name, phone, email, version, (SELECT count(*)::int FROM job WHERE job.customer_id = customer.id) AS jobs
     FROM customer
     WHERE name ILIKE $1 OR ($2 <> '' AND phone_digits LIKE '%' || $2 || '%')
     ORDER BY $3 <> '' AND name ILIKE $4 DESC, CASE WHEN $3 = '' THEN created_at END DESC, lower(name), id
     LIMIT 20`,
    [containing(search), onlyPhone(search) ? digits : '', search, beginningWith(search)],
  )
  return rows
}

/** Whether a search can be part of a phone number: digits and the signs between them. */
function onlyPhone(search: string): boolean {
  return /^[\d\s+().\-/]*\d[\d\s+().\-/]*$/.test(search)
}
