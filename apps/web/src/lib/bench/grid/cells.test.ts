import type { FeatureDefinition } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { cellsInHandOrder, cellTitle, nextEmptyCell } from './cells.ts'
import { cellBeside } from './move.ts'
import { readingTables } from './tables.ts'

function bore(number: number): FeatureDefinition {
  const points = ['top/thrust', 'middle/thrust', 'bottom/thrust', 'bottom/pin', 'middle/pin', 'top/pin']
  return {
    place: 'block', feature: `bore-${number}`, title: `Bore ${number}`, shape: 'hole', quantity: 'length', nominal: 102_362_000,
    points: points.map((key) => ({ key, station: key.split('/')[0] ?? '', axis: key.split('/')[1] ?? '' })),
    state: ['torque-plate-on'],
  }
}

const gap: FeatureDefinition = {
  place: 'top-ring/1', feature: 'end-gap', title: 'Top ring 1 end gap', shape: 'gap', quantity: 'length', nominal: null,
  points: [{ key: 'square-in-bore/gap', station: 'square-in-bore', axis: 'gap' }], state: [],
}

describe('the order in which cells are filled', () => {
  const cells = cellsInHandOrder([bore(1), bore(2)])

  it('goes down one axis and up the other, then to the next bore', () => {
    expect(cells.slice(0, 7).map(cellTitle)).toEqual([
      'Bore 1, top, thrust axis', 'Bore 1, middle, thrust axis', 'Bore 1, bottom, thrust axis',
      'Bore 1, bottom, pin axis', 'Bore 1, middle, pin axis', 'Bore 1, top, pin axis', 'Bore 2, top, thrust axis',
    ])
  })

  it('visits every cell once when each value leads to the next', () => {
    const filled = new Set<string>()
    let at = cells[0]
    const visited: string[] = []
    while (at) {
      visited.push(at.key)
      filled.add(at.key)
      at = nextEmptyCell(cells, at.key, (key) => filled.has(key)) ?? undefined
    }
    expect(visited).toEqual(cells.map(({ key }) => key))
  })

  it('comes back to a cell that was left out', () => {
    const leftOut = cells[2]!.key
    expect(nextEmptyCell(cells, cells.at(-1)!.key, (key) => key !== leftOut)?.key).toBe(leftOut)
  })

  it('names a feature of one point without its point', () => {
    expect(cellTitle(cellsInHandOrder([gap])[0]!)).toBe('Top ring 1 end gap')
  })
})

describe('a table of readings', () => {
  const [bores, gaps] = readingTables([bore(1), bore(2), gap])

  it('gathers features of one kind, and keeps another kind apart', () => {
    expect(bores?.rows.map(({ feature }) => feature.title)).toEqual(['Bore 1', 'Bore 2'])
    expect(bores?.title).toBe('Bore')
    expect(gaps?.rows).toHaveLength(1)
  })

  it('is named by the words that its features share', () => {
    const decks = ['right', 'left'].map((side) => ({
      ...bore(1), feature: `deck-height-viewer-${side}`, title: `Deck height, bank on the viewer’s ${side}`,
    }))
    expect(readingTables(decks).map(({ title }) => title)).toEqual(['Deck height'])
  })

  it('is named by what it holds too where another one would be named alike', () => {
    const bearing = (number: number, station: string): FeatureDefinition => ({
      ...gap, place: `rod-bearing/${number}`, feature: 'inside', title: `Rod bearing ${number}`,
      points: [{ key: `${station}/vertical`, station, axis: 'vertical' }],
    })
    const rods = [bearing(1, 'front-inner'), bearing(2, 'front-inner'), bearing(5, 'rear-inner'), bearing(6, 'rear-inner')]
    expect(readingTables(rods).map(({ title }) => title)).toEqual(['Rod bearing 1, 2', 'Rod bearing 5, 6'])
  })

  it('shows depth from the top on every axis, whichever way the hand came', () => {
    expect(bores?.columns).toEqual([
      { axis: 'thrust', stations: ['top', 'middle', 'bottom'] }, { axis: 'pin', stations: ['top', 'middle', 'bottom'] },
    ])
    expect(bores?.rows[0]?.cells.map(({ point }) => point.key)).toEqual([
      'top/thrust', 'middle/thrust', 'bottom/thrust', 'top/pin', 'middle/pin', 'bottom/pin',
    ])
  })

  it('is walked with the arrows as it is drawn, and ends at its edges', () => {
    const drawn = bores!.rows.map(({ cells }) => cells.map(({ key }) => key))
    expect(cellBeside(drawn, drawn[0]![2]!, 'right')).toBe(drawn[0]![3])
    expect(cellBeside(drawn, drawn[0]![2]!, 'down')).toBe(drawn[1]![2])
    expect(cellBeside(drawn, drawn[0]![0]!, 'left')).toBeNull()
    expect(cellBeside(drawn, drawn[1]![0]!, 'down')).toBeNull()
  })

  it('steps over a hole in the drawing', () => {
    expect(cellBeside([['a', null, 'c']], 'a', 'right')).toBe('c')
  })
})
