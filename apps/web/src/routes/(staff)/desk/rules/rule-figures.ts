import type { Rule } from '@tenths/contract'
import { formatQuantity, guardChoices, parseLength, readerQuantityUnits, round, type ParameterUnit, type ReaderUnit } from '@tenths/domain'
import type { z } from 'zod'
import { lengthText } from '../../../../lib/engines/length-text.ts'
import { figureText, readFigure, unitOf } from '../../../../lib/figure-text.ts'

export type Parameter = z.infer<typeof Rule>['parameters'][number]

/** Near a limit, as the owner chooses it. */
export const guardTitles: Record<(typeof guardChoices)[number], string> = {
  accepted: 'Accepted as read',
  guarded: 'Guarded by U',
  'guarded-where-wide': 'Guarded where there is room',
}

/** A rule's number as it would be typed: a length, a part of the diameter such as 0.0009, a percentage, a torque, a pressure. */
export function parameterText({ value, unit: parameterUnit }: Parameter, unit: ReaderUnit): string {
  const known = parameterUnit as ParameterUnit
  switch (known) {
    case 'length': return figureText(value, 'length', unit)
    case 'angle': return figureText(value, known, unit)
    case 'torque': case 'roughness': case 'pressure': case 'mass': case 'force': return exactText(value, known, unit)
    // Millionths of the diameter stand to it as nanometres to a millimetre.
    case 'per-diameter': return Number.isInteger(value) ? lengthText(value, 'millimetre') : String(value / 1_000_000)
    case 'percent': return String(value)
    // Thousandths of mm/s stand to it as microns to a millimetre.
    case 'grade': return String(value / 1_000)
    case 'guard': return guardChoices[value] ?? 'accepted'
  }
}

/** With as many decimals as it takes to come back the same, and no more noughts than that: a rule that is only looked at stays as it is. */
function exactText(value: number, quantity: 'torque' | 'roughness' | 'pressure' | 'mass' | 'force', unit: ReaderUnit): string {
  return formatQuantity(value, readerQuantityUnits[quantity][unit], 4, 'half-even').replace(/\.?0+$/, '')
}

/** What was typed, as the rule keeps it. @throws DomainError with a sentence for the field */
export function readParameter(text: string, parameterUnit: string, unit: ReaderUnit): number {
  const known = parameterUnit as ParameterUnit
  switch (known) {
    case 'length': return readFigure(text, 'length', unit)
    case 'torque': case 'angle': case 'roughness': case 'pressure': case 'mass': case 'force': return readFigure(text, known, unit)
    case 'per-diameter': return parseLength(text, 'millimetre')
    // Read to a millionth of a percent, so that 12.5 is 12.5.
    case 'percent': return round(parseLength(text, 'millimetre'), 'half-even') / 1_000_000
    case 'grade': return round(parseLength(text, 'millimetre') / 1_000, 'half-even')
    case 'guard': return (guardChoices as readonly string[]).indexOf(text)
  }
}

/** What stands behind the field. */
export function parameterUnitWords(parameterUnit: string, unit: ReaderUnit): string {
  const known = parameterUnit as ParameterUnit
  switch (known) {
    case 'length': return unitOf('length', unit)
    case 'torque': case 'angle': case 'roughness': case 'pressure': case 'mass': case 'force': return unitOf(known, unit)
    case 'per-diameter': return unit === 'inch' ? 'in per inch' : 'mm per mm'
    case 'percent': return '%'
    case 'grade': return 'mm/s'
    case 'guard': return ''
  }
}
