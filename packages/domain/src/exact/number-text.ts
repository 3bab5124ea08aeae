/** A typed number as an exact ratio; the denominator is positive. */
export interface Ratio {
  readonly numerator: bigint
  readonly denominator: bigint
}

/** No measured value needs more; a longer text is a slip, and would only cost time. */
const longestText = 40

const decimal = /^(\d+[.,]?\d*|[.,]\d+)$/
const fraction = /^(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)$/

/**
 * Reads a number as people type it: `4.0312`, `101,6`, `.5`, `1/64`, `4 1/32`, `4-1/32`, each with an
 * optional sign (`+`, `-`, `−`). A point or a comma is the decimal mark; thousands are never grouped.
 * @returns the exact ratio, or null when the text is not such a number
 */
export function readNumber(text: string): Ratio | null {
  const trimmed = text.trim()
  if (trimmed.length === 0 || trimmed.length > longestText) return null
  const signed = /^([+\-−]?)\s*(.*)$/s.exec(trimmed)
  const sign = signed?.[1] === '-' || signed?.[1] === '−' ? -1n : 1n
  const magnitude = readMagnitude(signed?.[2] ?? '')
  return magnitude && { numerator: sign * magnitude.numerator, denominator: magnitude.denominator }
}

function readMagnitude(text: string): Ratio | null {
  if (decimal.test(text)) {
    const [whole = '', part = ''] = text.split(/[.,]/)
    return { numerator: BigInt(whole + part), denominator: 10n ** BigInt(part.length) }
  }
  const match = fraction.exec(text)
  if (match === null) return null
  const [, whole = '0', top = '', bottom = ''] = match
  const denominator = BigInt(bottom)
  if (denominator === 0n) return null
  return { numerator: BigInt(whole) * denominator + BigInt(top), denominator }
}
