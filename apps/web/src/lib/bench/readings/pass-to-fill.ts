import type { FeatureDefinition, MaterialName, MeasuringState } from '@tenths/domain'
import { measuringStateTitles } from '@tenths/domain'
import { whyNot } from '../gauges/fitness.ts'
import type { Gauge, Pass } from '../sheet/operation-sheet.ts'

/** All that decides which pass a value belongs to. */
export interface Taking {
  readonly feature: FeatureDefinition
  /** The pass begun at this step, if there is one to go on with. */
  readonly open: Pass | null
  /** A slip in the open pass is put right: gauge, state and setting are those with which it was taken. */
  readonly isCorrecting: boolean
  /** Number of the latest pass of all, wherever it was taken; 0 before the first. */
  readonly latestNumber: number
  readonly partId: string | null
  readonly gauge: Gauge | null
  readonly setOn: { readonly partId: string; readonly feature: string } | null
  /** What a comparator is set to zero on; null for a gauge that reads sizes. */
  readonly setting: Pass['setting']
  /** How warm part and room are; null where nobody told. */
  readonly temperatures: Pass['temperatures']
  /** What the part is made of, where that is told by the plan. */
  readonly material: MaterialName | null
  readonly states: ReadonlySet<MeasuringState>
  /** The shop's own day, against which a gauge lapses. */
  readonly today: string
}

/** What a new pass holds beside what its numbering and its taker say. */
export type NewPass = Pick<
  Pass,
  'partId' | 'feature' | 'gaugeId' | 'gaugeMark' | 'quantity' | 'standardUncertainty' | 'state' | 'setOn' | 'setting'
  | 'temperatures' | 'material' | 'zero' | 'isVoid'
>

export type PassToFill =
  | { readonly kind: 'open'; readonly pass: Pass }
  | { readonly kind: 'new'; readonly pass: NewPass }
  | { readonly kind: 'none'; readonly sentence: string }

/** The pass that a value taken now belongs to, or the sentence that says why there is none. */
export function passToFill(taking: Taking): PassToFill {
  const { feature, open, isCorrecting, latestNumber, partId, gauge, setOn, setting, temperatures, material, states, today } = taking
  if (partId === null) return none('No part is in this place: put one in before measuring it.')
  if (open !== null && open.number < latestNumber) {
    return none(`Pass ${latestNumber} was taken since: choose “Measure again” to begin another.`)
  }
  if (open !== null && isCorrecting) return { kind: 'open', pass: open }
  if (gauge === null) return none('Choose the gauge in hand first.')
  const unfit = whyNot(gauge, feature, today)
  if (unfit !== null) return none(unfit)
  const missing = feature.state.filter((state) => !states.has(state))
  if (missing.length > 0) return none(`Tick first: ${missing.map((state) => measuringStateTitles[state]).join(', ')}.`)
  if (open !== null) {
    const other = otherMeasuring(open, gauge, setOn, setting)
    return other === null ? { kind: 'open', pass: open } : none(other)
  }
  return {
    kind: 'new',
    pass: {
      partId,
      feature: feature.feature,
      gaugeId: gauge.id,
      gaugeMark: gauge.mark,
      quantity: gauge.quantity,
      standardUncertainty: gauge.standardUncertainty,
      state: [...feature.state],
      setOn: setOn && { partId: setOn.partId, feature: setOn.feature },
      setting,
      temperatures,
      material: temperatures === null || setOn !== null || feature.quantity !== 'length' ? null : material,
      zero: null,
      isVoid: false,
    },
  }
}

/** Why a value taken now is of another measuring than the one begun; null when it belongs to it. */
function otherMeasuring(
  open: Pass, gauge: Gauge, setOn: Taking['setOn'], setting: Taking['setting'],
): string | null {
  if (gauge.id !== open.gaugeId) {
    return `Pass ${open.number} was begun with ${open.gaugeMark}: take that gauge again, or choose “Measure again”.`
  }
  if ((setting?.size ?? null) !== (open.setting?.size ?? null)) {
    return `Pass ${open.number} was begun with another setting of the gauge: set it as before, or choose “Measure again”.`
  }
  if (setOn?.partId === open.setOn?.partId) return null
  return open.setOn === null
    ? `Pass ${open.number} was begun with sizes: choose “Measure again” to read clearances.`
    : `Pass ${open.number} was begun with the gauge set on the mating part: choose “Measure again” to read sizes.`
}

function none(sentence: string): PassToFill {
  return { kind: 'none', sentence }
}
