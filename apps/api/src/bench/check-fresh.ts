import {
  doubtsOfTaken, type FeatureDefinition, type KnownPass, type MaterialName, type ReaderUnit, type Surroundings, type TakenValue,
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
}

/**
 * Checks readings one after the other as they were typed, each beside those before it.
 * @throws ServiceError at the field of the first that cannot be taken
 */
export function checkFresh(
  links: readonly { readonly reading: NewReading; readonly field: string }[], taking: Taking, around: Surroundings,
): void {
  const { definition, pass, gauge, unit } = taking
  let own = around.passes.find(({ partId, feature, number }) =>
    partId === pass.partId && feature === pass.feature && number === pass.number) ?? emptyPass(taking)
  const others = around.passes.filter((one) => one !== own)
  for (const [index, { reading, field }] of links.entries()) {
    const taken = takenValue(reading, taking, taking.opensPass && index === 0)
    const doubts = doubtsOfTaken(taken, { ...around, passes: [...others, own] }, unit)
    checkValue(reading, {
      definition, gauge, isSetOnMate: pass.setOn !== null, settingSize: pass.setting?.size ?? null, unit, doubts,
    }, `${field}.typed`)
    own = { ...own, readings: [...own.readings, reading] }
  }
}

function emptyPass({ pass, operationKey }: Taking): KnownPass {
  const { partId, feature, number, setOn } = pass
  return { partId, feature, number, operationKey, setOn, isVoid: false, readings: [] }
}

function takenValue(
  { point, value }: NewReading, { definition, pass, material }: Taking, opensPass: boolean,
): TakenValue {
  const { temperatures, setting } = pass
  return {
    definition, point, value, passNumber: pass.number, isSetOnMate: pass.setOn !== null,
    isCoated: pass.state.includes('coated'), settingSize: setting?.size ?? null, opensPass,
    warmth: temperatures && { part: temperatures.part, gauge: setting?.temperature ?? temperatures.room, material },
  }
}
