import { newId } from '$lib/api/call.ts'
import type { openJob } from '@tenths/contract'
import type { Duty, RouteOptions, WorkKind } from '@tenths/domain'
import type { z } from 'zod'

/** A job that is being opened; nothing of it is sent before all of it is there. */
export interface JobDraft {
  id: string
  customer: { id: string; name: string; phone: string } | null
  modelId: string | null
  serial: string
  duty: Duty | undefined
  work: WorkKind
  promisedOn: string
  wanted: string
  notes: string
  options: { -readonly [K in keyof RouteOptions]: RouteOptions[K] }
  intake: IntakeDraft[]
}

export interface IntakeDraft {
  id: string
  description: string
  quantity: number
  condition: string
  ownedBy: 'customer' | 'shop'
}

/** A draft with what most jobs need already chosen (common practice, no source). */
export function emptyJob(): JobDraft {
  return {
    id: newId(), customer: null, modelId: null, serial: '', duty: undefined, work: 'short-block', promisedOn: '', wanted: '',
    notes: '', intake: [],
    options: { alignHone: false, deck: true, oversize: false, crank: 'polish', newRodBolts: true, balance: true },
  }
}

export function emptyIntake(): IntakeDraft {
  return { id: newId(), description: '', quantity: 1, condition: '', ownedBy: 'customer' }
}

/** What the API is sent, or the sentences for what is still missing, by field. */
export function readJob(draft: JobDraft): { body: z.input<(typeof openJob)['body']> } | { missing: Record<string, string> } {
  const { customer, modelId, duty, ...rest } = draft
  const missing: Record<string, string> = {}
  if (!customer) missing.customerId = 'Choose the customer, or add one.'
  if (!modelId) missing.modelId = 'Choose the engine, or add it to the library.'
  if (!duty) missing.duty = 'Say how the engine will be used: it decides the clearances.'
  if (!draft.promisedOn) missing.promisedOn = 'Name the day it is promised for.'
  draft.intake.forEach((item, index) => {
    if (!item.description.trim()) missing[`intake.${index}.description`] = 'Say what it is, or remove the line.'
    if (!Number.isInteger(item.quantity) || item.quantity < 1) missing[`intake.${index}.quantity`] = 'How many?'
  })
  if (!customer || !modelId || !duty || Object.keys(missing).length > 0) return { missing }
  return { body: { ...rest, customerId: customer.id, modelId, duty, parts: null } }
}
