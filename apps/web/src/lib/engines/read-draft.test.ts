import { describe, expect, it } from 'vitest'
import { readEngine, readParts } from './read-draft.ts'
import { emptyEngine, emptyParts, engineDraftOf, partsDraftOf } from './write-draft.ts'

describe('an engine that is typed', () => {
  const engine = {
    ...emptyEngine(),
    name: 'Kestrel V8',
    bore: '4.000',
    stroke: '3.48',
    deckHeight: '9.025',
    mains: { count: '', diameter: '2.4488', width: '1.1', fillet: '', housing: '2.6410' },
    rodJournals: { count: '', diameter: '2.1', width: '1.9', fillet: '0.110', housing: '2.2250' },
  }

  it('is read exactly, and what nobody knows stays unknown', () => {
    const { value } = readEngine(engine, 'inch')
    expect(value).toMatchObject({ bore: 101_600_000, mains: { count: 5, fillet: null }, rodJournals: { count: 4, fillet: 2_794_000 } })
  })

  it('is told everything that is wrong at once, each at its field', () => {
    const { problems } = readEngine({ ...engine, name: ' ', bore: 'four', stroke: '' }, 'inch')
    expect(Object.keys(problems ?? {}).sort()).toEqual(['engine.bore', 'engine.name', 'engine.stroke'])
  })

  it('says what its block is made of once somebody told', () => {
    expect(readEngine(engine, 'inch').value).not.toHaveProperty('block')
    const { value } = readEngine({ ...engine, block: 'iron' }, 'inch')
    expect(value).toMatchObject({ block: 'iron' })
    expect(value && engineDraftOf(value, 'inch').block).toBe('iron')
  })

  it('has no banks when it stands in line', () => {
    const { value } = readEngine({ ...engine, arrangement: 'inline', cylinders: '4' }, 'inch')
    expect(value).toMatchObject({ bankAngle: 0, firstBank: null, pinSharing: 'one-rod', mains: { count: 5 }, rodJournals: { count: 4 } })
  })

  it('comes back the same when it is shown again in the other unit', () => {
    const { value } = readEngine(engine, 'inch')
    expect(value && readEngine(engineDraftOf(value, 'millimetre'), 'millimetre').value).toEqual(value)
  })

  it('has pushrods and two valves a cylinder unless it says otherwise, and heads of which nothing need be known', () => {
    expect(readEngine(engine, 'inch').value).toMatchObject({
      valveTrain: { camshaft: 'in-block', intakeValves: 1, exhaustValves: 1 },
    })
    expect(readEngine(engine, 'inch').value).not.toHaveProperty('head')
    const overhead = {
      ...engine,
      valveTrain: { camshaft: 'overhead' as const, intakeValves: '2', exhaustValves: '2' },
      head: { ...engine.head, material: 'aluminium' as const, bolts: '10' },
    }
    const { value } = readEngine(overhead, 'inch')
    expect(value).toMatchObject({ valveTrain: { camshaft: 'overhead', intakeValves: 2 }, head: { material: 'aluminium', bolts: 10 } })
    expect(value && readEngine(engineDraftOf(value, 'inch'), 'inch').value).toEqual(value)
    const { problems } = readEngine({ ...overhead, head: { ...engine.head, bolts: 'ten' } }, 'inch')
    expect(Object.keys(problems ?? {})).toEqual(['engine.head.bolts'])
  })

  it('says what its crankshaft weighs and is balanced by, once somebody told, and keeps both when shown in either unit', () => {
    expect(readEngine(engine, 'inch').value).not.toHaveProperty('crank')
    const told = { ...engine, crank: { mass: '54.7', balanceFactor: '36.6' } }
    const { value } = readEngine(told, 'inch')
    expect(value?.crank).toEqual({ mass: 24_811_503, balanceFactor: 366 })
    for (const unit of ['inch', 'millimetre'] as const) {
      expect(value && readEngine(engineDraftOf(value, unit), unit).value?.crank).toEqual(value?.crank)
    }
    expect(readEngine({ ...engine, crank: { mass: '24.8 kg', balanceFactor: '' } }, 'inch').value?.crank).toEqual({ mass: 24_800_000 })
    const { problems } = readEngine({ ...engine, crank: { mass: 'heavy', balanceFactor: '110' } }, 'inch')
    expect(Object.keys(problems ?? {}).sort()).toEqual(['engine.crank.balanceFactor', 'engine.crank.mass'])
  })

  it('says what its bores are, how it works and how fast it turns, each once somebody told', () => {
    const untold = readEngine(engine, 'inch').value
    for (const field of ['boreSurface', 'cycle', 'ignition', 'greatestSpeed']) expect(untold).not.toHaveProperty(field)
    const typed = {
      ...engine, boreSurface: 'plated' as const, cycle: 'two-stroke' as const, ignition: 'diesel' as const, greatestSpeed: '8,200',
      head: { ...engine.head, chamber: 'open' as const },
    }
    const { value } = readEngine(typed, 'inch')
    expect(value).toMatchObject({
      boreSurface: 'plated', cycle: 'two-stroke', ignition: 'diesel', greatestSpeed: 8_200, head: { chamber: 'open' },
    })
    expect(value && readEngine(engineDraftOf(value, 'inch'), 'inch').value).toEqual(value)
  })

  it.each([['7500', 7_500], ['7,500', 7_500], ['10 500', 10_500], ['800', 800]])('turns at %s as it is written', (text, speed) => {
    expect(readEngine({ ...engine, greatestSpeed: text }, 'inch').value?.greatestSpeed).toBe(speed)
  })

  it.each(['7.5', 'fast', '75', '7,50'])('is asked again for a speed of %s', (greatestSpeed) => {
    expect(Object.keys(readEngine({ ...engine, greatestSpeed }, 'inch').problems ?? {})).toEqual(['engine.greatestSpeed'])
  })

  it('comes with parts that come back the same too, an unmeasured inset still unknown', () => {
    const shell = { width: '0.842', wall: '0.0615', cheekInset: '', edgeBevel: '0.030' }
    const typed = {
      ...emptyParts(),
      piston: {
        ...emptyParts().piston, diameter: '3.9955', compressionHeight: '1.125', pinBore: '0.9274', pinBoreMouth: '',
        grooves: [{ ring: 'top' as const, upperFlank: '0.25', width: '0.0625' }],
      },
      pin: { fit: 'floating' as const, diameter: '0.927', length: '2.5' },
      rod: { material: 'steel' as const, length: '6', bigEndWidth: '0.94', smallEndBore: '0.9275' },
      retainers: { perSide: '2' as const, thickness: '0.042', outerFlanks: '2.672' },
      gasketThickness: '0.041',
      rodShell: shell,
      mainShell: shell,
    }
    const { value } = readParts(typed, 'inch')
    expect(value).toMatchObject({ retainers: { perSide: 2, thickness: 1_066_800, outerFlanks: 67_868_800 }, gasketThickness: 1_041_400, rodShell: { cheekInset: null } })
    expect(value && readParts(partsDraftOf(value, 'millimetre'), 'millimetre').value).toEqual(value)
    expect(value?.piston).not.toHaveProperty('crown')
    const dished = readParts({ ...typed, piston: { ...typed.piston, crown: 'dished' } }, 'inch').value
    expect(dished?.piston.crown).toBe('dished')
    expect(dished && partsDraftOf(dished, 'inch').piston.crown).toBe('dished')
    const unknown = readParts({ ...typed, gasketThickness: '', retainers: { ...typed.retainers, outerFlanks: ' ' } }, 'inch').value
    expect(unknown).not.toHaveProperty('gasketThickness')
    expect(unknown?.retainers).toEqual({ perSide: 2, thickness: 1_066_800 })
  })
})
