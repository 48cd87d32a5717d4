/**
 * A worker that plays spans of histories of the model that it was started with.
 *
 * @module
 */

import { workerData } from 'piscina'
import { compile } from '../alternatives/program.js'
import { playSpan, type Sample, type Span } from '../alternatives/simulate.js'
import type { Played } from './play.js'

const { model, posterior, used } = workerData as Played
const program = compile(model, posterior, used)

/** What piscina calls. */
export function play(span: Span): Sample[] {
  return playSpan(program, span)
}
