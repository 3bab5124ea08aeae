import { addCustomer, changeCustomer, findCustomers } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { register } from '../http/register.ts'
import * as edit from './edit-customer.ts'
import { findCustomers as find } from './find-customers.ts'

/** Customers: found while their name is typed, added, corrected. */
export function customerRoutes(app: FastifyInstance): void {
  register(app, findCustomers, async ({ shop }, { query }) => ({ customers: await find(shop.pool, query.search) }))
  command(app, addCustomer, ({ client }, { body: { id, ...fields } }) => edit.addCustomer(client, id, fields))
  command(app, changeCustomer, ({ client }, { params, body, ifMatch }) => edit.changeCustomer(client, params.id, body, ifMatch))
}
