import { fixed } from '../exact/format-length.ts'

/** A temperature from thousandths of a °C: “21.5 °C”, with one decimal or as many as were typed. */
export function sayDegrees(thousandths: number): string {
  return `${fixed(BigInt(thousandths), 3).replace(/0{1,2}$/, '')} °C`
}
