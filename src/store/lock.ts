/**
 * One program at a time in a data folder.
 *
 * The lock is an open SQLite transaction on a file of its own. The system lets go of it when the program ends, however it ends,
 * so nothing has to be tidied up after a crash.
 *
 * @module
 */

import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'libsql'
import type { Problem } from '../logbook/problems.js'
import { writeDurably } from './durable.js'

/** A data folder that is ours for now. */
export interface Lock {
  /** Tells a program that comes second where the first one can be reached. */
  announce(address: string): void
  release(): void
}

export type Locked =
  | { readonly ok: true; readonly lock: Lock }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Takes the folder, or says who has it. */
export function lockFolder(folder: string): Locked {
  const addressFile = join(folder, 'in-use-at')
  const database = new Database(join(folder, 'in-use.db'))
  try {
    database.exec('BEGIN EXCLUSIVE')
  } catch (error) {
    database.close()
    if (!isBusy(error)) throw error
    const found = readAddress(addressFile) ?? 'another program that has told no address yet'
    const allowed = 'one program at a time that writes; enter it there, or stop that program first'
    return { ok: false, problems: [{ code: 'in-use', path: folder, found, allowed }] }
  }
  rmSync(addressFile, { force: true })
  return {
    ok: true,
    lock: {
      announce: (address) => writeDurably(addressFile, new TextEncoder().encode(address)),
      release: () => {
        rmSync(addressFile, { force: true })
        // Closing alone would leave the transaction, and with it the lock, to the garbage collector.
        database.exec('ROLLBACK')
        database.close()
      },
    },
  }
}

function readAddress(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8').slice(0, 500)
  } catch {
    return undefined
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY'
}
