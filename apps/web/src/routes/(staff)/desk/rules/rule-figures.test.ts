import { DomainError, starterRules } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { parameterText, readParameter } from './rule-figures.ts'

describe('a number of a rule', () => {
  const parameters = starterRules().flatMap((rule) => rule.parameters.map((parameter) => ({ ...parameter, name: parameter.key })))

  it.each(['inch', 'millimetre'] as const)('is kept as it is when it is shown and saved in %s', (unit) => {
    for (const parameter of parameters) {
      expect(readParameter(parameterText(parameter, unit), parameter.unit, unit)).toBe(parameter.value)
    }
    expect(parameters.length).toBeGreaterThan(20)
  })

  it('is refused with a sentence when it is no figure', () => {
    expect(() => readParameter('loose', 'length', 'inch')).toThrow(DomainError)
    expect(readParameter('0.00075', 'per-diameter', 'inch')).toBe(750)
    expect(readParameter('12.5', 'percent', 'inch')).toBe(12.5)
  })
})
