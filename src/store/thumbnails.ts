/**
 * Small pictures made from photographs, kept beside them in a folder of their own until the photograph goes.
 *
 * Nothing here is of worth in itself: whatever is missing or damaged is made again, and exports and backups leave it out.
 *
 * @module
 */

import { readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { ThumbnailWidth } from '../logbook/photographs.js'
import { type Computed, computedIn } from './computed.js'

const folderName = 'thumbnails'
/** Changes when they are made otherwise, so that old ones are made anew. */
const making = 1
/** About five thousand photographs in all widths. */
const bounds = { files: 15_000, bytes: 600e6 }

/** The small pictures that are kept in a data folder. */
export function thumbnailsIn(dataFolder: string): Computed {
  return computedIn(join(dataFolder, folderName), bounds)
}

/** Under which name one is kept. */
export function thumbnailKey(sha256: string, width: ThumbnailWidth): string {
  return `${sha256}-${width}-${making}`
}

/** Takes away what was made from a photograph. */
export function dropThumbnails(dataFolder: string, sha256: string): void {
  const folder = join(dataFolder, folderName, 'computed')
  for (const name of namesIn(folder)) {
    if (name.startsWith(sha256)) rmSync(join(folder, name), { force: true })
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}
