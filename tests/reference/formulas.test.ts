import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fits } from '../../packages/domain/src/index.ts'

const root = join(import.meta.dirname, '../..')
const source = join(root, 'packages/domain/src')
const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts'))
  .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(source, path), 'utf8') }))

/** A tag and the export that its docstring stands before. */
const tagged = /@formula ([\w-]+)\s*\*\/\s*export (?:function|const) (\w+)/g
/** An export with a number, a length or a form figure for an answer. */
const numeric = /export function (\w+)\s*\((?:(?!\n\}\n)[^])*?\): (?:number|Nanometres|FormFigure \| null) \{/g

const tags = files.flatMap(({ text }) => [...text.matchAll(tagged)].map(([, formula = '', name = '']) => ({ formula, name })))

const entries = readFileSync(join(root, 'docs/formulas.md'), 'utf8').split('\n')
  .filter((line) => line.startsWith('| `'))
  .map((line) => line.split('|').slice(1, -1).map((cell) => cell.trim()))
  .map(([name = '', formula = '', symbols = '', range = '', from = '', tests = '', ...more]) => ({
    name: name.replaceAll('`', ''), formula, symbols, range, from, more,
    tests: [...tests.matchAll(/`([^`]+)`/g)].map(([, path = '']) => path),
  }))

/** Folders of arithmetic, in which every exported function that answers with a figure states a formula. */
const arithmetic = [
  'balance', 'bearings', 'compression', 'fasteners', 'geometry', 'kinematics', 'limits-and-fits', 'pins', 'rings',
  'selective-assembly', 'statistics', 'temperature',
]
/** Steps of another formula, which say nothing by themselves. */
const steps = ['sizeStepOf']

describe('docs/formulas.md', () => {
  it('has one row for every formula in the domain and every fit, and no other', () => {
    const wanted = new Set([...tags.map(({ formula }) => formula), ...fits.map(({ key }) => `fit/${key}`)])
    expect(entries.map(({ name }) => name).sort()).toEqual([...wanted].sort())
  })
  it.each(entries)('$name says symbols, units, range and source, and names tests that are there', (entry) => {
    for (const cell of [entry.formula, entry.symbols, entry.range, entry.from]) expect(cell).not.toBe('')
    expect(entry.more).toEqual([])
    expect(entry.tests.length).toBeGreaterThan(0)
    expect(entry.tests.filter((path) => !existsSync(join(root, path)))).toEqual([])
  })
  it('sees every tag: none stands where no export follows', () => {
    const all = files.reduce((count, { text }) => count + text.split('@formula ').length - 1, 0)
    expect(tags).toHaveLength(all)
  })
  it('is asked for by every function of the arithmetic that answers with a figure', () => {
    const names = new Set([...tags.map(({ name }) => name), ...steps])
    const untagged = files
      .filter(({ path }) => arithmetic.includes(path.split('/')[0] ?? ''))
      .flatMap(({ path, text }) => [...text.matchAll(numeric)].map(([, name = '']) => ({ path, name })))
      .filter(({ name }) => !names.has(name))
    expect(untagged).toEqual([])
  })
})
