/** A material's linear expansion and where the figure comes from. */
export interface Material {
  readonly title: string
  /** Linear expansion near room temperature, 10⁻⁹ per °C. */
  readonly expansion: number
  readonly source: string
}

const swyt = 'Swyt, J. Res. NIST 99(1), 1994 (typical value in metrology)'
const callister = 'Callister, table B.6'
const secondary = 'amesweb.info expansion chart (secondary)'
const memory = 'from memory, 20 to 100 °C'

/**
 * What engines and gauges are made of. An iron-lined aluminium bore is none of them: soak it, do not correct
 * it.
 */
export const materials = {
  'gauge-steel': { title: 'Gauge steel', expansion: 11_500, source: swyt },
  aluminium: { title: 'Aluminium', expansion: 23_100, source: swyt },
  'steel-1020': { title: 'Steel 1020', expansion: 11_700, source: callister },
  'steel-1040': { title: 'Steel 1040', expansion: 11_300, source: callister },
  'steel-4140': { title: 'Steel 4140 or 4340', expansion: 12_300, source: callister },
  'grey-iron': { title: 'Grey iron', expansion: 11_400, source: callister },
  'ductile-iron-60-40-18': { title: 'Ductile iron 60-40-18', expansion: 11_200, source: callister },
  'ductile-iron-80-55-06': { title: 'Ductile iron 80-55-06', expansion: 10_600, source: callister },
  'aluminium-356': { title: 'Aluminium 356', expansion: 21_500, source: callister },
  'bearing-bronze': { title: 'Bearing bronze C93200', expansion: 18_000, source: callister },
  'phosphor-bronze': { title: 'Phosphor bronze C51000', expansion: 17_800, source: secondary },
  'aluminium-bronze': { title: 'Aluminium bronze C62300', expansion: 16_200, source: secondary },
  'aluminium-2618': { title: 'Aluminium 2618', expansion: 22_300, source: memory },
  'aluminium-4032': { title: 'Aluminium 4032', expansion: 19_400, source: memory },
} as const satisfies Record<string, Material>

export type MaterialName = keyof typeof materials
export const materialNames = Object.keys(materials) as readonly MaterialName[] as readonly [MaterialName, ...MaterialName[]]
