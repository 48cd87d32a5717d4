/**
 * Files that are there after the power fails.
 *
 * @module
 */

import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

/** Writes a file so that either all of it is there under its name or nothing: beside it, forced to disk, then renamed. */
export function writeDurably(path: string, bytes: Uint8Array): void {
  const beside = `${path}.part`
  const file = openSync(beside, 'w', 0o600)
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at)
    fsyncSync(file)
  } catch (error) {
    rmSync(beside, { force: true })
    throw error
  } finally {
    closeSync(file)
  }
  renameDurably(beside, path)
}

/** Renames a file whose bytes are on disk, and forces the new name to disk. */
export function renameDurably(from: string, to: string): void {
  renameSync(from, to)
  syncFolder(dirname(to))
}

/** Forces the names in a folder to disk. Windows does that by itself and lets no folder be opened. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') syncFile(folder)
}

/** Forces what was written to a file or a folder to disk. */
export function syncFile(path: string): void {
  const handle = openSync(path, 'r')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

/**
 * Makes a folder and those above it that are missing, one after another: asked for all at once, Node never comes back
 * where one of them cannot be.
 *
 * @throws the system's error where one of them cannot be made.
 */
export function makeFolder(path: string): void {
  if (existsSync(path)) return
  const above = dirname(path)
  if (above !== path) makeFolder(above)
  try {
    mkdirSync(path, { mode: 0o700 })
  } catch (error) {
    // Another program may have made it in between.
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error
  }
}
