/**
 * What the browser and the server say to one another. Types only: all that the pages take from this folder.
 *
 * | request | answer |
 * |---|---|
 * | `GET /enter/CODE` | lets this browser in, once, and goes to `/` |
 * | `POST /api/code` | `CodeAnswer`: a link that lets one more browser in |
 * | `GET /api/health` | `HealthAnswer` |
 * | `GET /api/boats` | `BoatsAnswer` |
 * | `GET /api/boats/BOAT/entries?after=N&last=ID` | entries as JSON lines, in the order in which they were written |
 * | `POST /api/boats/BOAT/entries` | `AppendAsked` in, `AppendAnswer` out; each entry for itself |
 * | `GET /api/boats/BOAT/file` | the boat file |
 * | `POST /api/boat-file` | a boat file in, `ImportAnswer` out; whole or not at all |
 * | `POST /api/photographs` | a picture in, `PhotographAnswer` out |
 * | `GET /api/photographs/SHA256` | the picture |
 * | `GET /api/boats/BOAT/sets/SET/jobs/JOB/calendar.ics?asOf=DAY&readyBy=DAY` | the days of a job as iCalendar |
 * | `GET /api/catalogue` | `CatalogueAnswer` |
 * | `GET /api/lessons`, `POST /api/lessons` `{ heard }` | `LessonsAnswer` |
 * | `GET /api/faults` | `FaultsAnswer` |
 * | `GET /api/kits` | `KitsAnswer` |
 *
 * Whatever is refused answers with `Refusal`.
 *
 * @module
 */

import type { CatalogueJson } from '../catalogue/catalogue-json.js'
import type { Kits } from '../catalogue/kit-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { Photograph } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'

/** Everything that is wrong with a request. */
export interface Refusal {
  readonly problems: readonly Problem[]
}

export interface HealthAnswer {
  readonly program: 'gensettle'
  /** Another one after each start. */
  readonly run: string
}

/** A place on this machine that lets one browser in, once. */
export interface CodeAnswer {
  readonly address: string
}

export interface BoatsAnswer {
  readonly boats: readonly { readonly boat: string; readonly demonstration: boolean }[]
}

/** Entries as JSON texts, in the order in which they are to be written. */
export interface AppendAsked {
  readonly entries: readonly string[]
}

/** What became of each entry, in the order asked. */
export interface AppendAnswer {
  readonly results: readonly EntryResult[]
}

export type EntryResult =
  | { readonly result: 'written' | 'already-there' }
  | { readonly result: 'refused'; readonly problems: readonly Problem[] }

/** The media type of a boat file. */
export type BoatFileType = 'application/x-gensettle'

export interface ImportAnswer {
  readonly boat: string
  readonly added: number
  readonly alreadyHeld: number
  readonly photographs: number
}

export interface PhotographAnswer {
  readonly photograph: Photograph
}

/** Whether the owner's boats hear one another; `entries`: how many there are in all their logs, 0 where they do not. */
export interface LessonsAnswer {
  readonly heard: boolean
  readonly entries: number
}

/** The catalogue, judged before it is served. */
export type CatalogueAnswer = CatalogueJson

/** The fault model, judged before it is served. */
export type FaultsAnswer = FaultModel

/** What goes with each part, judged before it is served. */
export type KitsAnswer = Kits
