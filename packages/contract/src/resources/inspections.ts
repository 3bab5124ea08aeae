import { z } from 'zod'
import { BaseValue, Behind, Id, Instant, Line, Text } from '../primitives.ts'
import { route } from '../route.ts'
import { InspectionMethod } from './domain-shapes.ts'

export const inspectionResults = ['no-indication', 'indication', 'not-tested'] as const

/** What a test of one area showed. A later result of the same area counts instead; the earlier one stays in sight. */
export const InspectionResult = z.object({
  id: Id,
  item: z.string(),
  /** Mark of the part that was tested; null while no part is tracked in that place. */
  mark: z.string().nullable(),
  method: InspectionMethod,
  /** Test pressure in pascals. */
  pressure: BaseValue.nullable(),
  result: z.enum(inspectionResults),
  note: z.string(),
  inspector: z.string(),
  by: z.string(),
  inspectedAt: Instant,
  /** The latest of its area, for the part that sits there now. */
  counts: z.boolean(),
  /** The owner lets the part pass as it is. */
  conceded: z.boolean(),
})

export const recordInspections = route({
  method: 'POST',
  path: '/api/jobs/:id/inspections',
  summary: 'Keep results of crack and pressure tests; anything but *no indication* waits for the owner and stops the step',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    operationKey: Line(80),
    testedBy: Id.exactOptional().describe('Who wrote the results down: when somebody else is signed in by now, they are refused.'),
    behind: Behind.exactOptional(),
    results: z
      .array(
        z.object({
          id: Id,
          item: Line(80),
          method: InspectionMethod,
          pressure: BaseValue.nullable(),
          result: z.enum(inspectionResults),
          note: Text(500),
          inspectorId: Id,
          deviceAt: Instant.exactOptional(),
        }),
      )
      .min(1)
      .max(100),
  }),
  answer: z.object({
    inspections: z.array(InspectionResult),
    /** Operations that were signed and relied on an earlier result. */
    reopened: z.array(z.object({ key: z.string(), title: z.string() })),
  }),
  problems: [
    'not-found', 'other-person', 'job-closed', 'operation-unknown', 'operation-not-reachable', 'body-invalid',
    'value-out-of-range', 'already-exists',
  ],
})
