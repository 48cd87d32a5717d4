// A Chromium for the tests of the pages: the one that is there, else Debian's where this may be installed, else one line of what to do.
import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const places = [
  process.env.GENSETTLE_CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/** The path of a Chromium. Throws where there is none and none can be installed. */
export function findChromium() {
  const found = places.find((path) => path !== undefined && existsSync(path))
  if (found !== undefined) return found
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium from Debian’s packages (once) …')
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'] }
    execFileSync('apt-get', ['update', '-qq'], quiet)
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet)
    if (existsSync('/usr/bin/chromium')) return '/usr/bin/chromium'
  }
  throw new Error(
    'The tests of the pages need Chromium: install it (Debian: apt-get install chromium), or set GENSETTLE_CHROMIUM to its path.',
  )
}
