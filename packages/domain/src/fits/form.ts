import type { FeatureReference } from '../features/feature.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import { limitsOf, reading, say } from './building-blocks.ts'
import type { FitLine } from './fit-definition.ts'

/** The two forms that two-point gauges can see. */
export const forms = ['out-of-round', 'taper'] as const
export type Form = (typeof forms)[number]

export const formTitles: Record<Form, string> = { 'out-of-round': 'out-of-round', taper: 'taper' }

const formulas: Record<Form, string> = {
  'out-of-round':
    'largest difference between axes at one station (two-point; an odd number of lobes stays unseen)',
  taper: 'largest difference between stations on one axis',
}

/** One line for the form of one feature: there is no low limit, and above the target is advice. */
export function formLine(
  form: Form,
  feature: FeatureReference,
  title: string,
  position: number,
  figures: { readonly target: number; readonly high: number },
  high: RemedyRule,
): FitLine {
  return {
    position,
    title: `${title} ${formTitles[form]}`,
    quantity: 'length',
    measurand: reading(feature, form),
    rule: {
      kind: 'computed',
      limits: limitsOf({ high: figures.high, target: figures.target, adviceHigh: figures.target }),
      formula: formulas[form],
      worked: [`At most ${say(figures.high)}, better within ${say(figures.target)}`],
    },
    remedy: { low: null, high },
  }
}
