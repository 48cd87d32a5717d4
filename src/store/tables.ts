/**
 * The tables of a logbook, and the triggers that let nothing in them be changed.
 *
 * @module
 */

import Database from 'libsql'

/** Raised when the tables change; a file with a higher number was written by a newer program. */
export const tablesVersion = 1

const refusal = 'entries are never changed: write a correction'

const tables = `
CREATE TABLE entries (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  boat TEXT NOT NULL,
  device TEXT NOT NULL,
  n INTEGER NOT NULL,
  text TEXT NOT NULL,
  sha256 TEXT NOT NULL
) STRICT;
CREATE INDEX entries_of_boat ON entries (boat);
CREATE INDEX entries_of_device ON entries (boat, device, n);
CREATE TRIGGER entries_no_update BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, '${refusal}'); END;
CREATE TRIGGER entries_no_delete BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, '${refusal}'); END;
CREATE TRIGGER entries_no_replace BEFORE INSERT ON entries
  WHEN EXISTS (SELECT 1 FROM entries WHERE id = NEW.id OR seq = NEW.seq)
  BEGIN SELECT RAISE(ABORT, '${refusal}'); END;
CREATE TABLE seals (
  boat TEXT NOT NULL,
  through INTEGER NOT NULL,
  sha256 TEXT NOT NULL,
  PRIMARY KEY (boat, through)
) STRICT;
CREATE TRIGGER seals_no_update BEFORE UPDATE ON seals BEGIN SELECT RAISE(ABORT, '${refusal}'); END;
CREATE TRIGGER seals_no_delete BEFORE DELETE ON seals BEGIN SELECT RAISE(ABORT, '${refusal}'); END;
CREATE TABLE folder (device TEXT NOT NULL) STRICT;
`

/**
 * Opens the file of a logbook, laying out its tables where it is new.
 *
 * @throws if the file was written by a newer program, or is no file of ours.
 */
export function openTables(path: string, options: { readonly newDevice: () => string }): Database.Database {
  const database = new Database(path)
  try {
    // A program that has just ended may still be putting its last pages away.
    database.pragma('busy_timeout = 5000')
    database.pragma('journal_mode = WAL')
    database.pragma('synchronous = FULL')
    database.pragma('recursive_triggers = ON')
    const version = versionOf(database)
    requireKnown(path, version)
    if (version === 0) {
      database.transaction(() => {
        database.exec(tables)
        database.prepare('INSERT INTO folder (device) VALUES (?)').run(options.newDevice())
        database.pragma(`user_version = ${tablesVersion}`)
      })()
    }
    return database
  } catch (error) {
    database.close()
    throw error
  }
}

/**
 * Opens the file of a logbook for reading alone; nothing where its tables are not laid out yet.
 *
 * @throws if the file was written by a newer program, or is no file of ours.
 */
export function openTablesToRead(path: string): Database.Database | undefined {
  const database = new Database(path)
  try {
    database.pragma('busy_timeout = 5000')
    database.pragma('query_only = ON')
    const version = versionOf(database)
    requireKnown(path, version)
    if (version > 0) return database
    database.close()
    return undefined
  } catch (error) {
    database.close()
    throw error
  }
}

function requireKnown(path: string, version: number): void {
  if (version > tablesVersion) {
    throw new Error(`${path} must be of tables version ${tablesVersion} or older; found ${version}`)
  }
}

function versionOf(database: Database.Database): number {
  const rows = database.pragma('user_version') as readonly { readonly user_version: number }[]
  return rows[0]?.user_version ?? 0
}
