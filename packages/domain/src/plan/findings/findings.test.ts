import { describe, expect, it } from 'vitest'
import type { PartsSpecification } from '../../engine/specification.ts'
import { inches, inlineFour, metricParts, planInput, v8, v8Parts } from '../../testing/engines.ts'
import { plan } from '../plan.ts'

const finding = (parts: PartsSpecification, key: string) =>
  plan(planInput(v8, parts)).findings.find((each) => each.key === key)

describe('before metal is cut the plan', () => {
  it('stops when a rod shell runs into its fillet, with the figures', () => {
    const rodShell = { ...v8Parts.rodShell, cheekInset: inches(0.04) }
    // 0.040 + 0.030 − 0.080 = −0.010 in
    expect(finding({ ...v8Parts, rodShell }, 'fillet/rod')).toMatchObject({
      severity: 'stops',
      sentence: 'The shell’s edge runs into the fillet by 0.0100 in (0.254 mm); side play does not help.',
    })
  })

  it('takes the whole end play off a main shell’s room', () => {
    const on = (inset: number) =>
      finding({ ...v8Parts, mainShell: { ...v8Parts.mainShell, cheekInset: inches(inset) } }, 'fillet/main')
    // 0.059 − 0.010 + 0.030 − 0.080 = −0.001 in; at 0.065 it is +0.005, at 0.070 the shop’s margin of 0.010.
    expect(on(0.059)?.severity).toBe('stops')
    expect(on(0.065)?.severity).toBe('look')
    expect(on(0.07)).toBeUndefined()
  })

  it('calls unmeasured fillets unknown and has them measured when parts are received', () => {
    const made = plan(planInput(inlineFour, metricParts))
    const titles = made.findings.filter(({ key }) => key.startsWith('fillet/')).map(({ title }) => title)
    expect(titles).toEqual(['Rod bearing against its fillet: unknown', 'Main bearing against its fillet: unknown'])
    const received = made.operations.find(({ key }) => key === 'receive-parts')
    expect(received?.observations.map(({ key }) => key)).toContain('shell-insets')
  })

  it('says that the oil groove is broken, near or unknown, and nothing when it is whole', () => {
    const title = (changes: Partial<PartsSpecification['piston']>) =>
      finding({ ...v8Parts, piston: { ...v8Parts.piston, ...changes } }, 'oil-groove')?.title
    expect(title({})).toBeUndefined()
    expect(title({ compressionHeight: inches(1.125) })).toBe('Oil groove at the pin bore: broken')
    expect(title({ compressionHeight: inches(1.215) })).toBe('Oil groove at the pin bore: whole by little')
    expect(title({ pinBoreMouth: null })).toBe('Oil groove at the pin bore: unknown')
  })

  it('stops when pin and retainers do not go together, either way', () => {
    const withPin = (length: number) =>
      finding({ ...v8Parts, pin: { ...v8Parts.pin, length: inches(length) } }, 'retainers')
    expect(withPin(2.5)).toBeUndefined()
    expect(withPin(2.505)).toMatchObject({ severity: 'stops', remedy: 'Thinner rings or a shorter pin.' })
    expect(withPin(2.49)).toMatchObject({ severity: 'stops', remedy: 'Thicker rings or a longer pin.' })
  })

  it('looks again at an unusual deck stack and an unusual rod', () => {
    const piston = { ...v8Parts.piston, compressionHeight: inches(1.5) }
    expect(finding({ ...v8Parts, piston }, 'deck-stack')?.worked).toEqual([
      '9.0250 in (229.235 mm) − (half of 3.5000 in (88.900 mm) + 5.7000 in (144.780 mm) + 1.5000 in (38.100 mm))'
        + ' = 0.0750 in (1.905 mm)',
    ])
    expect(finding({ ...v8Parts, rod: { ...v8Parts.rod, length: inches(4.5) } }, 'rod-ratio')?.severity).toBe('look')
  })
})
