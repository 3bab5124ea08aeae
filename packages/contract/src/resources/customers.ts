import { z } from 'zod'
import { Id, Line, Text } from '../primitives.ts'
import { route } from '../route.ts'

export const Customer = z.object({
  id: Id,
  name: z.string(),
  phone: z.string(),
  email: z.string(),
  version: z.int(),
})

export const findCustomers = route({
  method: 'GET',
  path: '/api/customers',
  summary: 'Customers by any part of name or phone, as it is typed; the twenty nearest',
  who: ['counter', 'owner'],
  query: z.object({ search: Text(120).default('') }),
  answer: z.object({ customers: z.array(Customer.extend({ jobs: z.int() })) }),
})

export const addCustomer = route({
  method: 'POST',
  path: '/api/customers',
  summary: 'Add a customer',
  who: ['counter', 'owner'],
  status: 201,
  body: z.object({ id: Id, name: Line(120), phone: Text(40), email: Text(200) }),
  answer: Customer,
  problems: ['already-exists'],
})

export const changeCustomer = route({
  method: 'PUT',
  path: '/api/customers/:id',
  summary: 'Correct a customer; If-Match carries the version that was read',
  who: ['counter', 'owner'],
  params: z.object({ id: Id }),
  body: z.object({ name: Line(120), phone: Text(40), email: Text(200) }),
  answer: Customer,
  problems: ['not-found', 'edit-stale', 'version-missing'],
})
