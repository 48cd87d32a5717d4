/**
 * How long it takes to say what is worth finding out and what would change the answer, on histories that were played.
 *
 * @module
 */

import { whatChanges, worthFindingOut } from '../src/alternatives/bearing.js'
import { compile } from '../src/alternatives/program.js'
import type { Prepared } from '../src/alternatives/settle.js'
import { startStates } from '../src/alternatives/start-states.js'
import type { Alternative, LifeModel } from '../src/forecast/life-model.js'

type OpenPlayers = typeof import('../src/server/play.js').openPlayers

export interface BearingTimes {
  readonly findingOutMs: number
  /** Both, asked for at once. */
  readonly bothMs: number
}

/** Both parts, warm, on two workers; every alternative of the model may be chosen. */
export async function benchBearing(
  { posterior, used }: Prepared,
  model: LifeModel,
  how: { readonly seed: number; readonly histories: number; readonly openPlayers: OpenPlayers },
): Promise<BearingTimes> {
  const { seed, histories, openPlayers } = how
  const players = openPlayers(model, posterior, { used, workers: 2 })
  const historiesPerChunk = 100
  try {
    const span = { seed, from: 0, count: histories }
    const samples = await players.play(model.alternatives, span)
    let began = performance.now()
    const played = {
      model,
      samples,
      seed,
      states: startStates(compile(model, posterior, used), span),
      play: (list: readonly Alternative[], which: Parameters<typeof players.play>[1]) =>
        players.play(list, { ...which, historiesPerChunk }),
      playModel: (other: LifeModel, which: Parameters<typeof players.play>[1]) =>
        players.playModel(other, { ...which, historiesPerChunk }),
    }
    await worthFindingOut(played)
    const findingOutMs = performance.now() - began
    began = performance.now()
    await Promise.all([worthFindingOut(played), whatChanges(played)])
    return { findingOutMs, bothMs: performance.now() - began }
  } finally {
    await players.close()
  }
}
