/**
 * The worker that reads the log, learns, lays out what could be done, lets others play the histories, and reports.
 *
 * The page gets small values from it; histories and tables of starting states never come to the page.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { makeConductor } from './conduct.js'
import { makeCrew } from './crew.js'
import type { Conductor } from './messages.js'

/** One for each core. While figures are refined one of them rests, and leaves its core to the page. */
const crew = makeCrew(Math.max(1, Math.min(6, navigator.hardwareConcurrency || 2)))

Comlink.expose(makeConductor(crew) satisfies Conductor)
