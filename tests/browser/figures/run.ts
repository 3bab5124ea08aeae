import { isMet, print } from '../../../packages/domain/bench/figure.ts'
import { openBrowser } from '../support/browser.ts'
import { elsewhereFigures } from './elsewhere.ts'
import { enterFigures } from './enter.ts'
import { openHone } from './hone.ts'
import { scriptFigures } from './script.ts'

// One JSON line a figure; the exit code says whether all are met. Run `npm run build` first.
const hone = await openHone()
const browser = await openBrowser()
try {
  let areMet = true
  for (const measure of [scriptFigures, elsewhereFigures, enterFigures]) {
    for (const figure of await measure(browser, hone)) {
      print(figure)
      areMet &&= isMet(figure)
    }
  }
  process.exitCode = areMet ? 0 : 1
} finally {
  await browser.close()
  await hone.stop()
}
