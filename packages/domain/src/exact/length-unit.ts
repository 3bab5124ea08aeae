import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, NANOMETRES_PER_TENTH } from './length.ts'

/** Units in which a length is typed. A thousandth is 0.001 in, a tenth 0.0001 in. */
export const lengthUnits = ['inch', 'millimetre', 'micron', 'thousandth', 'tenth'] as const
export type LengthUnit = (typeof lengthUnits)[number]

/** Units in which a length is shown: the reader's choice. */
export const readerUnits = ['inch', 'millimetre'] as const
export type ReaderUnit = (typeof readerUnits)[number]

/** Nanometres in one of each unit, all exact. */
export const nanometresPer: Record<LengthUnit, number> = {
  inch: NANOMETRES_PER_INCH,
  millimetre: NANOMETRES_PER_MILLIMETRE,
  micron: 1_000,
  thousandth: 25_400,
  tenth: NANOMETRES_PER_TENTH,
}

/** What people type after the figure; µ stands twice because Unicode has a micro sign and a Greek letter. */
export const lengthSuffixes: Readonly<Record<string, LengthUnit>> = {
  in: 'inch', 'in.': 'inch', inch: 'inch', inches: 'inch', '"': 'inch', '″': 'inch', '”': 'inch', "''": 'inch',
  mm: 'millimetre', millimetre: 'millimetre', millimetres: 'millimetre', millimeter: 'millimetre', millimeters: 'millimetre',
  µm: 'micron', μm: 'micron', um: 'micron', micron: 'micron', microns: 'micron',
  thou: 'thousandth', thous: 'thousandth', thousandth: 'thousandth', thousandths: 'thousandth',
  tenth: 'tenth', tenths: 'tenth',
}
