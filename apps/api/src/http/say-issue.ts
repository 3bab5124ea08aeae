import type { z } from 'zod'

/**
 * A sentence for input that does not fit its schema. Sentences written at the schema itself win over these.
 */
export function sayIssue(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.input === undefined || issue.input === null) return 'This is needed.'
      return issue.expected === 'int' ? 'A whole number is needed here.' : `This must be ${nameOfType[issue.expected] ?? 'of another kind'}.`
    case 'too_small':
      if (issue.origin === 'string' || issue.origin === 'array') {
        return issue.minimum === 1 ? 'This is needed.' : `At least ${issue.minimum} are needed.`
      }
      return `This must be ${issue.minimum} or more.`
    case 'too_big':
      if (issue.origin === 'string') return `This is too long: ${issue.maximum} characters at most.`
      if (issue.origin === 'array') return `These are too many: ${issue.maximum} at most.`
      return `This must be ${issue.maximum} or less.`
    case 'invalid_format':
      return sentenceOfFormat[issue.format] ?? 'This is not written as it should be.'
    case 'invalid_value':
      return `This must be one of: ${issue.values.map(String).join(', ')}.`
    default:
      return 'This cannot be read.'
  }
}

const nameOfType: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'yes or no',
  object: 'a group of fields',
  array: 'a list',
}

const sentenceOfFormat: Readonly<Record<string, string>> = {
  uuid: 'This is not an id.',
  date: 'This is not a day of the calendar, written like 2031-04-30.',
  datetime: 'This is not an instant with its offset, written like 2031-04-30T14:05:00Z.',
}
