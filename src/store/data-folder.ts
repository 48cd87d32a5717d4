/**
 * Where the owner's logbook lies on this machine.
 *
 * @module
 */

import { homedir } from 'node:os'
import { isAbsolute, join, resolve } from 'node:path'

/** What the place depends on; left out: as this machine and this run have it. */
export interface Machine {
  readonly platform?: NodeJS.Platform
  readonly env?: Readonly<Record<string, string | undefined>>
  readonly home?: string
}

/** The folder that was asked for with `--data`, else the user's own data folder by the custom of the system. */
export function dataFolder(asked?: string, machine: Machine = {}): string {
  if (asked !== undefined) return resolve(asked)
  const { platform = process.platform, env = process.env, home = homedir() } = machine
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'Gensettle')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Gensettle')
  // XDG Base Directory Specification: a path that is not absolute is to be ignored. Held: recalled.
  const custom = env.XDG_DATA_HOME
  return join(
    custom !== undefined && isAbsolute(custom) ? custom : join(home, '.local', 'share'),
    'gensettle',
  )
}
