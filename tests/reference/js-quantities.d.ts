/** What the tests use of js-quantities, which comes without types. */
declare module 'js-quantities' {
  interface Quantity {
    to(unit: string): Quantity
    add(other: Quantity): Quantity
    sub(other: Quantity): Quantity
    mul(other: Quantity | number): Quantity
    div(other: Quantity): Quantity
    lte(other: Quantity): boolean
    gte(other: Quantity): boolean
    lt(other: Quantity): boolean
    gt(other: Quantity): boolean
    readonly scalar: number
  }
  function Qty(value: number, unit: string): Quantity
  export default Qty
}
