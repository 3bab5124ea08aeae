import { describe, expect, it } from 'vitest'
import type { FeatureDefinition } from '../features/feature.ts'
import { bore, deckClearanceAt, endGap, mainBearing, mainHousing, ringSideClearance } from '../features/references.ts'
import { countedPass } from '../judging/counted-pass.ts'
import { indexFeatures } from '../features/feature-index.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'
import { plan } from '../plan/plan.ts'
import { besideNow } from './beside.ts'
import { measurementsOf, type FeaturePass, type PlacedPart } from './pass.ts'

const features = indexFeatures(plan(planInput(v8, v8Parts)).features)
const definitionOf = ({ place, feature }: { place: string; feature: string }): FeatureDefinition => {
  const found = features.get(place)?.get(feature)
  if (found === undefined) throw new Error(`no ${place}#${feature}`)
  return found
}

function passOf(reference: { place: string; feature: string }, partId: string, number = 1): FeaturePass {
  const definition = definitionOf(reference)
  return {
    partId, feature: reference.feature, number, standardUncertainty: 0, state: definition.state, setOn: null,
    readings: definition.points.map(({ key }) => ({ id: `${partId}.${number}.${key}`, point: key, value: 400_000 })),
  }
}

const block: PlacedPart = { place: 'block', partId: 'block' }
const gap = endGap('top-ring', 1)
const ring: PlacedPart = { place: gap.place, partId: 'ring' }
const boreOnce = passOf(bore(1), 'block')

/** A pass of the reference, taken beside what the given parts and passes were. */
function takenBeside(
  reference: { place: string; feature: string }, partId: string, placed: PlacedPart[], passes: FeaturePass[],
): FeaturePass {
  return { ...passOf(reference, partId), beside: besideNow(definitionOf(reference), measurementsOf(placed, passes)) }
}

describe('a reading taken in place', () => {
  it('keeps which part and which measuring of it was there', () => {
    const taken = takenBeside(gap, 'ring', [block, ring], [boreOnce])
    expect(taken.beside).toEqual([{ partId: 'block', feature: 'bore-1', pass: 1 }])
    expect(countedPass(gap, measurementsOf([block, ring], [boreOnce, taken]), features).kind).toBe('counted')
  })

  it('a ring gap counts no longer after its bore was honed again, and says so', () => {
    const taken = takenBeside(gap, 'ring', [block, ring], [boreOnce])
    const honedAgain = [boreOnce, passOf(bore(1), 'block', 2), taken]
    expect(countedPass(gap, measurementsOf([block, ring], honedAgain), features)).toMatchObject({
      kind: 'not-measured',
      reasons: ['Top ring 1 end gap: Bore 1 was measured anew, or is of another part, since. Measure it again.'],
    })
    const otherBore = [boreOnce, passOf(bore(2), 'block', 2), taken]
    expect(countedPass(gap, measurementsOf([block, ring], otherBore), features).kind).toBe('counted')
  })

  it('a ring that is put to another bore is measured there', () => {
    const taken = takenBeside(gap, 'ring', [block, ring], [boreOnce])
    const moved: PlacedPart = { place: endGap('top-ring', 2).place, partId: 'ring' }
    const measurements = measurementsOf([block, moved], [boreOnce, passOf(bore(2), 'block'), taken])
    expect(countedPass(endGap('top-ring', 2), measurements, features).kind).toBe('not-measured')
  })

  it('a bearing is of the housing that it was torqued in', () => {
    const shells: PlacedPart = { place: mainBearing(2).place, partId: 'shells' }
    const housing = passOf(mainHousing(2), 'block')
    const taken = takenBeside(mainBearing(2), 'shells', [block, shells], [housing])
    expect(countedPass(mainBearing(2), measurementsOf([block, shells], [housing, taken]), features).kind).toBe('counted')
    const lineHoned = measurementsOf([block, shells], [housing, passOf(mainHousing(2), 'block', 2), taken])
    expect(countedPass(mainBearing(2), lineHoned, features).kind).toBe('not-measured')
  })

  it('a ring’s side clearance goes with its piston to another cylinder, and not without it', () => {
    const side = ringSideClearance('top-ring', 1)
    const other = ringSideClearance('top-ring', 2)
    const before = [ring, { place: 'piston/1', partId: 'piston' }]
    const taken = takenBeside(side, 'ring', before, [])
    const together = [{ place: other.place, partId: 'ring' }, { place: 'piston/2', partId: 'piston' }]
    expect(countedPass(other, measurementsOf(together, [taken]), features).kind).toBe('counted')
    const alone = [{ place: other.place, partId: 'ring' }, { place: 'piston/2', partId: 'another' }]
    expect(countedPass(other, measurementsOf(alone, [taken]), features)).toMatchObject({
      reasons: ['Top ring 2 side clearance: it was measured with another part as piston 2. Measure it again.'],
    })
  })

  it('piston below deck is read again after any of crank, rod and piston was replaced', () => {
    const reference = deckClearanceAt(1)
    const placed = ['crankshaft', 'rod/1', 'piston/1', 'block', 'assembly'].map((place) => ({ place, partId: place }))
    const taken = takenBeside(reference, 'assembly', placed, [])
    expect(countedPass(reference, measurementsOf(placed, [taken]), features).kind).toBe('counted')
    for (const place of ['crankshaft', 'rod/1', 'piston/1', 'block']) {
      const replaced = placed.map((one) => (one.place === place ? { place, partId: 'new' } : one))
      expect(countedPass(reference, measurementsOf(replaced, [taken]), features).kind, place).toBe('not-measured')
    }
  })

  it('counts where nobody recorded what it was beside', () => {
    const unrecorded = passOf(gap, 'ring')
    const measurements = measurementsOf([block, ring], [boreOnce, passOf(bore(1), 'block', 2), unrecorded])
    expect(countedPass(gap, measurements, features).kind).toBe('counted')
  })
})
