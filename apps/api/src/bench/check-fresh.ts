import {
  doubtsOfTaken, type FeatureDefinition, type KnownPass, type MaterialName, type PlausibilityNumbers, type ReaderUnit, type Surroundings,
  type TakenValue,
} from '@tenths/domain'
import { checkValue } from './check-value.ts'
import type { GaugeInUse } from './gauge-in-use.ts'
import type { NamedPass } from './pass-in-use.ts'
import type { NewReading } from './reading-chain.ts'

interface Taking {
  readonly definition: FeatureDefinition
  readonly pass: NamedPass
  readonly opensPass: boolean
  readonly operationKey: string
  readonly gauge: GaugeInUse
  readonly material: MaterialName | null
  readonly unit: ReaderUnit
  /** Name of whoever typed the values. */
  readonly by: string
  /** By what the shop doubts a value. */
  readonly numbers: PlausibilityNumbers
}

/** A reading that may be kept, with what was said against it and stood by. */
export interface CheckedReading extends NewReading {
  readonly doubt: string | null
}

/**
 * Checks readings one after the other as they were typed, each beside those before it.
 * @throws ServiceError at the field of the first that cannot be taken
 */
export function checkFresh(
  links: readonly { readonly reading: NewReading; readonly field: string }[], taking: Taking, around: Surroundings,
): CheckedReading[] {
  const { definition, pass, gauge, unit, by, numbers } = taking
  const checked: CheckedReading[] = []
  let own = around.passes.find(({ partId, feature, number }) =>
    partId === pass.partId && feature === pass.feature && number === pass.number) ?? emptyPass(taking)
  const others = around.passes.filter((one) => one !== own)
  for (const [index, { reading, field }] of links.entries()) {
    const taken = takenValue(reading, own, taking, taking.opensPass && index === 0)
    const doubts = doubtsOfTaken(taken, { ...around, passes: [...others, own] }, unit, numbers)
    checkValue(reading, {
      definition, gauge, isSetOnMate: pass.setOn !== null, settingSize: pass.setting?.size ?? null, unit, doubts,
    }, `${field}.typed`)
    own = { ...own, readings: [...own.readings, { ...reading, by }] }
    checked.push({ ...reading, doubt: doubts.map(({ sentence }) => sentence).join(' ') || null })
  }
  return checked
}

function emptyPass({ pass, operationKey, gauge: { standardUncertainty }, material }: Taking): KnownPass {
  return { ...pass, operationKey, standardUncertainty, material, isVoid: false, readings: [] }
}

function takenValue(
  { point, value }: NewReading, { standardUncertainty }: KnownPass, { definition, pass, material, by }: Taking, opensPass: boolean,
): TakenValue {
  const { temperatures, setting } = pass
  return {
    definition, point, value, passNumber: pass.number, isSetOnMate: pass.setOn !== null,
    state: pass.state, by, standardUncertainty, settingSize: setting?.size ?? null, opensPass,
    warmth: temperatures && { part: temperatures.part, gauge: setting?.temperature ?? temperatures.room, material },
  }
}
