import { accessSync, constants, existsSync } from 'node:fs'
import path from 'node:path'
import { run } from './run.mjs'

const USUAL_PLACES = {
  linux: ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
}

/** Documented in chromium.d.mts. */
export async function findChromium() {
  const named = process.env.CHROME_PATH
  if (named) {
    if (isProgram(named)) return named
    throw new Error(`CHROME_PATH names ${named}, which is not a program: correct it or unset it.`)
  }
  const found = search()
  if (found) return found
  if (process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' }
    try {
      await run('apt-get', ['update', '-q'], quiet)
      await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], quiet)
    } catch (error) {
      throw new Error(`Chromium could not be installed (${error.message.split('\n').at(-1)}): install it or set CHROME_PATH.`)
    }
    const installed = search()
    if (installed) return installed
  }
  throw new Error('No Chromium is found: install one, or set CHROME_PATH to a Chromium or Chrome.')
}

function search() {
  const folders = (process.env.PATH ?? '').split(path.delimiter)
  const places = USUAL_PLACES[process.platform] ?? USUAL_PLACES.linux
  return places
    .flatMap((place) => (path.isAbsolute(place) ? [place] : folders.map((folder) => path.join(folder, place))))
    .find(isProgram)
}

function isProgram(file) {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}
