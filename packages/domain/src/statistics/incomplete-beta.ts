/**
 * Coefficients of Lanczos' approximation to the gamma function, g = 7 (Godfrey's, from memory; checked by
 * tests).
 */
const lanczos = [
  0.999_999_999_999_809_93, 676.520_368_121_885_1, -1_259.139_216_722_402_8, 771.323_428_777_653_13,
  -176.615_029_162_140_59, 12.507_343_278_686_905, -0.138_571_095_265_720_12, 9.984_369_578_019_571_6e-6,
  1.505_632_735_149_311_6e-7,
] as const

/**
 * Natural logarithm of the gamma function for x > 0, to about 14 figures.
 * @formula incomplete-beta
 */
export function logGamma(x: number): number {
  const [first, ...rest] = lanczos
  const shifted = x - 1
  const sum = rest.reduce((total, coefficient, index) => total + coefficient / (shifted + index + 1), first as number)
  const t = shifted + 7.5
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum)
}

/**
 * The regularised incomplete beta function I_x(a, b) for 0 ≤ x ≤ 1 and positive a and b: by its continued
 * fraction (modified Lentz), from whichever end converges.
 * @formula incomplete-beta
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a)
  const logFront = logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)
  return (Math.exp(logFront) * continuedFraction(x, a, b)) / a
}

const tiny = 1e-300

function continuedFraction(x: number, a: number, b: number): number {
  let c = 1
  let d = 1 / away(1 - ((a + b) * x) / (a + 1))
  let value = d
  for (let m = 1; m <= 500; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / away(1 + even * d)
    c = away(1 + even / c)
    value *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / away(1 + odd * d)
    c = away(1 + odd / c)
    value *= d * c
    if (Math.abs(d * c - 1) < 1e-15) break
  }
  return value
}

/** Keeps a denominator away from nothing. */
function away(value: number): number {
  return Math.abs(value) < tiny ? tiny : value
}
