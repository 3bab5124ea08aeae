import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { findChromium } from './chromium.mjs'
import { generateClient, generateKept, KEPT } from './generate.mjs'
import { build, install, refuseOldNode } from './prepare.mjs'
import { npm, root, run } from './run.mjs'

const reports = mkdtempSync(path.join(tmpdir(), 'tenths-reports-'))
const inRoot = (file) => path.join(root, file)
const sum = { passed: 0, failed: 0 }
/** A check that either holds or does not: what it says is shown only when it does not. */
const check = async (running) => void (await running)
const node = (...parameters) => check(run(process.execPath, parameters))

/** Runs one step and counts it; shows what it said when it failed, and goes on in any case. */
async function step(name, work) {
  const start = performance.now()
  let counted = { passed: 0, failed: 1 }
  let said = ''
  try {
    counted = (await work()) ?? { passed: 1, failed: 0 }
    said = counted.said ?? ''
  } catch (error) {
    said = error.message
  }
  sum.passed += counted.passed
  sum.failed += counted.failed
  const seconds = ((performance.now() - start) / 1000).toFixed(1)
  process.stdout.write(`${counted.failed > 0 ? '✕' : '●'} ${name}: ${counted.passed} passed, ${counted.failed} failed (${seconds} s)\n`)
  if (counted.failed > 0) process.stdout.write(`${said}\n`)
}

/** One project of vitest. No test run at all counts as a failure, as does an error outside of any test. */
async function tests(project, environment = {}) {
  const report = path.join(reports, `${project}.json`)
  const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--project', project, '--reporter=default', '--reporter=json']
  let said = ''
  let clean = true
  try {
    said = await run(process.execPath, [...vitest, `--outputFile.json=${report}`], { NO_COLOR: '1', ...environment })
  } catch (error) {
    said = error.message
    clean = false
  }
  const counted = countsOf(report)
  if (counted.passed === 0 && counted.failed === 0) return { passed: 0, failed: 1, said: said || 'No test was run.' }
  return { ...counted, failed: counted.failed || (clean ? 0 : 1), said }
}

function countsOf(report) {
  try {
    const { numPassedTests, numTotalTests, testResults } = JSON.parse(readFileSync(report, 'utf8'))
    // A file that cannot even be loaded has no tests to count; a skipped test does not count as passed.
    const broken = testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length
    return { passed: numPassedTests, failed: numTotalTests - numPassedTests + broken }
  } catch {
    return { passed: 0, failed: 0 }
  }
}

/** Writes them again and compares; one that is not kept yet counts as out of date. */
async function generatedFilesAreCurrent() {
  await generateClient()
  const read = () => KEPT.map((file) => (existsSync(inRoot(file)) ? readFileSync(inRoot(file), 'utf8') : ''))
  const kept = read()
  await generateKept()
  const stale = KEPT.filter((_, index) => read()[index] !== kept[index])
  if (stale.length > 0) throw new Error(`Out of date, now written again: ${stale.join(', ')}. Keep the new version.`)
}

refuseOldNode()
try {
  await install()
} catch (error) {
  process.stdout.write(`${error.message}\n0 passed, 1 failed\n`)
  process.exit(1)
}

await step('generated files', generatedFilesAreCurrent)
await step('build', build)
await Promise.all([
  (async () => {
    await step('types', () => node('node_modules/typescript/bin/tsc', '-p', 'tsconfig.json'))
    await step('types of the pages', () => check(npm(['run', 'check', '--workspace=@tenths/web'])))
  })(),
  (async () => {
    await step('lint', () => node('node_modules/eslint/bin/eslint.js', '.', '--max-warnings', '0'))
    await step('unit', () => tests('unit'))
    await step('reference', () => tests('reference'))
  })(),
])
await step('api', () => tests('api'))
await step('browser', async () => tests('browser', { CHROME_PATH: await findChromium() }))

rmSync(reports, { recursive: true })
process.stdout.write(`\n${sum.passed} passed, ${sum.failed} failed\n`)
process.exitCode = sum.failed > 0 ? 1 : 0
