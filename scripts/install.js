// Installs the packages of the lock file when they are missing or out of date; nothing else is needed to start.
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

export const root = join(import.meta.dirname, '..')

export function run(command, ...args) {
  execFileSync(command, args, { cwd: root, stdio: 'inherit' })
}

export function installIfNeeded() {
  const stamp = join(root, 'node_modules', '.gensettle-lock')
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return
  console.log('Installing what Gensettle needs (once) …')
  installAgainWhereTheNetworkFailed()
  writeFileSync(stamp, lock)
}

/** A registry that falls silent in the middle is common; what did arrive is in npm’s cache, so that a second try is short. */
function installAgainWhereTheNetworkFailed() {
  for (let left = 2; ; left -= 1) {
    try {
      run('npm', 'ci', '--no-audit', '--no-fund', '--loglevel=error', '--prefer-offline')
      return
    } catch (error) {
      if (left === 0) throw error
      console.log('That did not come to its end; once more …')
    }
  }
}
