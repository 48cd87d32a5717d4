/**
 * One worker that plays histories: it keeps the models it was given, compiled.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { compile, type Program } from '../../alternatives/program.js'
import { type Picked, playSpan, type Sample, type Span } from '../../alternatives/simulate.js'
import type { Alternative, LifeModel } from '../../forecast/life-model.js'
import type { Posterior } from '../../forecast/posterior-type.js'

export interface Played {
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
}

let given: { readonly id: string; readonly of: Played } | undefined
let compiled: { readonly id: string; readonly program: Program } | undefined

const player = {
  /** Takes a model to play; the one before is let go. */
  take(id: string, of: Played): void {
    given = { id, of }
    compiled = undefined
  },

  /** Plays histories of some alternatives of the model that was taken. */
  play(of: { readonly id: string; readonly list: readonly Alternative[] }, which: Span | Picked): Sample[] {
    if (given === undefined) throw new Error('a model must be taken before it is played')
    if (compiled?.id !== of.id) {
      const { model, posterior, used } = given.of
      compiled = { id: of.id, program: compile({ ...model, alternatives: [...of.list] }, posterior, used) }
    }
    const samples = playSpan(compiled.program, which)
    return Comlink.transfer(samples, samples.flatMap(buffersOf))
  },
}
export type Player = typeof player

function buffersOf({ columns, failuresOfMode, failuresOfDanger }: Sample): ArrayBuffer[] {
  return [...columns, failuresOfMode, failuresOfDanger].map(({ buffer }) => buffer as ArrayBuffer)
}

Comlink.expose(player)
