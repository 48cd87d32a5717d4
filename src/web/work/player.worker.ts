/**
 * One worker that plays histories: it keeps the models it was given, compiled.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { compile, type Program } from '../../alternatives/program.js'
import type { Picked, Sample, Span } from '../../alternatives/sample.js'
import { playSpan } from '../../alternatives/simulate.js'
import type { Alternative, LifeModel } from '../../forecast/life-model.js'
import type { Posterior } from '../../forecast/posterior-type.js'
import { readyKernel } from './kernel-file.js'

export interface Played {
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
}

/** Alternatives to be played, of the model taken or of another of the same set; the id tells them from others. */
interface Asked {
  readonly id: string
  readonly list: readonly Alternative[]
  readonly model?: LifeModel
}

let taken: Program | undefined
/** The same set with the alternatives that were played last. */
let inHand: { readonly id: string; readonly program: Program } | undefined

const player = {
  /** Makes ready what every model needs. */
  warm: readyKernel,

  /** Takes a model to play; the one before is let go. */
  async take({ model, posterior, used }: Played): Promise<void> {
    await readyKernel()
    taken = compile(model, posterior, used)
    inHand = undefined
  },

  /** Plays histories of some alternatives of the model that was taken. */
  play(of: Asked, which: Span | Picked): Sample[] {
    if (taken === undefined) throw new Error('a model must be taken before it is played')
    const { id, list, model } = of
    if (inHand?.id !== id) {
      const program = model === undefined ? taken : compile(model, taken.posterior, taken.used)
      inHand = { id, program: { ...program, alternatives: list } }
    }
    const samples = playSpan(inHand.program, which)
    return Comlink.transfer(samples, samples.flatMap(buffersOf))
  },
}
export type Player = typeof player

function buffersOf({ columns, failuresOfMode, failuresOfDanger, years }: Sample): ArrayBuffer[] {
  const all = [...columns, failuresOfMode, failuresOfDanger, ...(years === undefined ? [] : [years])]
  return all.map(({ buffer }) => buffer as ArrayBuffer)
}

Comlink.expose(player)
