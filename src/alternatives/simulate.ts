/**
 * Many histories of every alternative, on common random numbers, and what they come to.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { kept } from './kept.js'
import { doublesAt, kernelOf, playHistory } from './kernel.js'
import { compile, type Program } from './program.js'
import { countOf, type Picked, type Sample, type Span, yearsOf } from './sample.js'

/** Plays histories for every alternative of a compiled model. */
export function playSpan(program: Program, which: Span | Picked): Sample[] {
  const { seed } = which
  const count = countOf(which)
  const doors = kernelOf(program)
  const columns = program.alternatives.map(() => kept.map(() => new Float64Array(count)))
  const yearCount = which.withYears ? yearsOf(program.model) : 0
  const years = columns.map(() => new Float64Array(count * yearCount))
  let sums = doublesAt(doors, doors.sums(), kept.length)
  // History by history, so that the start that all alternatives share is drawn, and fetched from memory, once.
  for (let i = 0; i < count; i++) {
    const history = 'histories' in which ? which.histories[i]! : which.from + i
    for (let alternative = 0; alternative < columns.length; alternative++) {
      playHistory(program, doors, { seed, history, alternative })
      if (sums.length === 0) sums = doublesAt(doors, doors.sums(), kept.length)
      const into = columns[alternative]!
      for (let k = 0; k < into.length; k++) into[k]![i] = sums[k]!
      if (yearCount > 0) years[alternative]!.set(doublesAt(doors, doors.years(), yearCount), i * yearCount)
    }
  }
  const modes = program.modes.count
  const dangers = program.dangerKinds.length
  const byMode = doublesAt(doors, doors.failuresByMode(), modes * columns.length)
  const byDanger = doublesAt(doors, doors.failuresByDanger(), dangers * columns.length)
  return program.alternatives.map(({ id }, a) => ({
    alternative: id,
    columns: columns[a]!,
    failuresOfMode: byMode.slice(a * modes, (a + 1) * modes),
    failuresOfDanger: byDanger.slice(a * dangers, (a + 1) * dangers),
    ...(yearCount > 0 ? { years: years[a]! } : {}),
  }))
}

/** Compiles and plays in one go. */
export function simulate(
  model: LifeModel,
  posterior: Posterior,
  which: (Span | Picked) & { readonly used?: ReadonlyMap<number, Posterior> },
): Sample[] {
  return playSpan(compile(model, posterior, which.used), which)
}
