import { materialNames } from '@tenths/domain'
import { z } from 'zod'
import { BaseValue, Behind, DeviceOffset, Id, Instant, Line, Temperature, Text } from '../primitives.ts'
import { route } from '../route.ts'
import { MeasuringState, Quantity, Verdict } from './domain-shapes.ts'

/** What a comparator was set to zero on, and how warm that was where it is told. */
export const GaugeSetting = z.object({ size: BaseValue, temperature: Temperature.nullable() })

/** How warm part and room were when the pass was begun; gauges are as warm as the room. */
export const Temperatures = z.object({ part: Temperature, room: Temperature })

export const Reading = z.object({
  id: Id,
  point: z.string(),
  value: BaseValue,
  /** Of feelers, the blade that did not enter; null where none was tried, left out for any other gauge. */
  blades: z.object({ stops: BaseValue.nullable() }).exactOptional(),
  typed: z.string(),
  /** It was unlikely, and whoever typed it stood by it, with a note where it was beyond belief. */
  confirmed: z.boolean(),
  /** What spoke against it when it was taken, in the service's words; left out where nothing did. */
  doubt: z.string().exactOptional(),
  note: z.string().nullable(),
  supersedes: Id.nullable(),
  reason: z.string().nullable(),
  by: z.string(),
  takenAt: Instant,
})

export const Pass = z.object({
  id: Id,
  partId: Id,
  feature: z.string(),
  number: z.int(),
  operationKey: z.string(),
  gaugeId: Id,
  gaugeMark: z.string(),
  /** What the gauge reads, and so the base unit of the values. */
  quantity: Quantity,
  standardUncertainty: z.number(),
  state: z.array(MeasuringState),
  setOn: z.object({ partId: Id, feature: z.string() }).nullable(),
  /** What was in place while it was taken; absent where that was not recorded. */
  beside: z.array(z.object({ partId: Id, feature: z.string().nullable(), pass: z.int() })).exactOptional(),
  setting: GaugeSetting.nullable(),
  temperatures: Temperatures.nullable(),
  /** What its part is made of, so that its readings are corrected to 20 °C; null where they are taken as read. */
  material: z.enum(materialNames).nullable(),
  /** The latest zero check of its gauge that speaks of it; null while the gauge was not put back on its setting. */
  zero: z.object({ deviation: BaseValue, allowed: BaseValue, by: z.string(), checkedAt: Instant }).nullable(),
  /** Its gauge had drifted: it was read, and does not count. */
  isVoid: z.boolean(),
  by: z.string(),
  openedAt: Instant,
  /** All readings, superseded ones included, oldest first. */
  readings: z.array(Reading),
})

export const takeReadings = route({
  method: 'POST',
  path: '/api/jobs/:id/readings',
  summary: 'Readings of one pass, together: a new pass when `pass` is new, a correction when a reading supersedes one',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    operationKey: Line(80),
    takenBy: Id.exactOptional().describe('Who typed the values: when somebody else is signed in by now, they are refused.'),
    behind: Behind.exactOptional(),
    deviceOffset: DeviceOffset.exactOptional(),
    pass: z.object({
      id: Id,
      partId: Id,
      feature: Line(80),
      /** 1 for the first measuring, one more for each *measure again*. */
      number: z.int().min(1),
      gaugeId: Id,
      state: z.array(MeasuringState),
      setOn: z.object({ partId: Id, feature: Line(80) }).nullable(),
      setting: GaugeSetting.nullable().exactOptional().describe('What a comparator was set to zero on.'),
      temperatures: Temperatures.nullable().exactOptional(),
    }),
    readings: z
      .array(
        z.object({
          id: Id,
          point: Line(80),
          value: BaseValue,
          typed: Line(40),
          supersedes: Id.nullable(),
          reason: Text(500).nullable(),
          deviceAt: Instant.nullable(),
          blades: z.object({ stops: BaseValue.nullable() }).exactOptional()
            .describe('Feelers: the blade that did not enter; null where none was tried.'),
          confirmed: z.boolean().describe('The machinist looked at an unlikely value and stands by it.'),
          note: Text(500).nullable().exactOptional().describe('Why a value beyond belief is right.'),
        }),
      )
      .min(1)
      .max(400),
  }),
  answer: z.object({
    verdicts: z.array(Verdict),
    /** Operations that were signed and relied on what changed. */
    reopened: z.array(z.object({ key: z.string(), title: z.string() })),
  }),
  problems: [
    'not-found', 'other-person', 'job-closed', 'operation-unknown', 'operation-not-reachable', 'part-unknown', 'feature-unknown', 'point-unknown', 'point-taken',
    'pass-not-latest', 'reading-not-latest', 'gauge-out-of-date', 'gauge-unfit', 'length-too-fine', 'value-implausible',
    'value-out-of-range',
  ],
})
