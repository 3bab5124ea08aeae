import { isMet, print } from '../../../packages/domain/bench/figure.ts'
import { openBrowser } from '../support/browser.ts'
import { elsewhereFigures } from './elsewhere.ts'
import { enterFigures, gaugeFigures } from './enter.ts'
import { openHone } from './hone.ts'
import { scriptFigures } from './script.ts'

// One JSON line a figure; the exit code says whether all are met. Run `npm run build` first.
let areMet = true
for (const measure of [scriptFigures, enterFigures, gaugeFigures, elsewhereFigures]) {
  // Bores that nobody has measured, for each.
  const hone = await openHone()
  const browser = await openBrowser()
  try {
    for (const figure of await measure(browser, hone)) {
      print(figure)
      areMet &&= isMet(figure)
    }
  } finally {
    await browser.close()
    await hone.stop()
  }
}
process.exitCode = areMet ? 0 : 1
