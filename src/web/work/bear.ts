/**
 * What bears on an answer that stands: worked out piece by piece, each shown as soon as it is there, and kept.
 *
 * @module
 */

import { enoughHistories, type Played, whatChanges, worthFindingOut } from '../../alternatives/bearing.js'
import type { Play } from '../../alternatives/policy.js'
import { compile } from '../../alternatives/program.js'
import { type PriceChange, reweigh } from '../../alternatives/reweigh.js'
import type { Picked, Sample, Span } from '../../alternatives/sample.js'
import type { Prepared } from '../../alternatives/settle.js'
import { startStates } from '../../alternatives/start-states.js'
import type { PlayModel } from '../../alternatives/turning-points.js'
import { whenToReplace } from '../../alternatives/when-to-replace.js'
import type { Alternative, LifeModel } from '../../forecast/life-model.js'
import type { Crew } from './crew.js'
import { keepAnswer, readAnswer } from './kept-answers.js'
import type { BearingState } from './messages.js'
import { type Run, Stopped } from './run.js'

export interface Bearer {
  readonly bear: (run: Run, change: PriceChange, tell: (state: BearingState) => void) => Promise<void>
  /** Ends what is under way, as its reader asked. */
  readonly stop: () => void
}

/** The page is told how far it is no oftener than this. [ms] */
const tellEveryMs = 500

/** About so many times are further histories asked for. */
const usualPlays = 75

/** Only what was asked for last is worked out: a price moved meanwhile, or another page, ends what is under way. */
export function makeBearer(crew: Crew, prepare: (run: Run) => Promise<Prepared>): Bearer {
  let latest = 0
  let halted = () => {}
  const bear: Bearer['bear'] = async (run, change, tell) => {
    const mine = ++latest
    const stopped = () => mine !== latest || run.stopped === 'left'
    const { figures, histories } = run
    if (figures === undefined) return tell({ stage: 'waiting' })
    const key = `bearing ${run.key} ${histories} ${JSON.stringify(change)}`
    const kept = (await readAnswer(key)) as BearingState | undefined
    if (kept !== undefined) return tell(kept)
    let state: BearingState = { stage: 'working', share: 0 }
    let plays = 0
    let toldAt = 0
    halted = () => tell({ ...state, stage: 'stopped' })
    const add = (more: Partial<BearingState>) => {
      if (stopped()) throw new Stopped()
      state = { ...state, ...more }
      toldAt = performance.now()
      tell(state)
    }
    const onPlay = () => {
      plays++
      if (performance.now() - toldAt > tellEveryMs) add({ share: Math.min(1, plays / usualPlays) })
    }
    try {
      add({})
      run.prepared ??= await prepare(run)
      const played = await playedBy(crew, run, {
        ...reweigh(figures.basis.model, figures.samples, change),
        change,
        stopped,
        onPlay,
      })
      const looking = worthFindingOut(played)
      // asked for at once, so that whoever plays has something to play while looks are valued here
      const changing = whatChanges(played)
      changing.catch(() => {})
      add({ findingOut: await looking })
      add({ changes: (await changing) ?? null })
      add({ when: (await whenToReplace(played)) ?? null })
      add({ stage: 'done', share: 1 })
      await keepAnswer(key, state)
    } catch (cause) {
      if (cause instanceof Stopped) return
      tell({ ...state, stage: 'failed', problem: cause instanceof Error ? cause.message : String(cause) })
    }
  }
  return {
    bear,
    stop: () => {
      latest++
      halted()
    },
  }
}

async function playedBy(
  crew: Crew,
  run: Run,
  of: {
    readonly model: LifeModel
    readonly samples: readonly Sample[]
    readonly change: PriceChange
    readonly stopped: () => boolean
    readonly onPlay: () => void
  },
): Promise<Played> {
  const { model, stopped, onPlay } = of
  const { posterior, used, model: taken } = run.prepared!
  const { seed } = run.asked
  const isMoved = Object.keys(of.change).length > 0
  const playedIn = async (
    other: LifeModel | undefined,
    alternatives: readonly Alternative[],
    which: Span | Picked,
  ): Promise<readonly Sample[]> => {
    const job = { id: run.key, of: { model: taken, posterior, used }, alternatives }
    const answer = await crew.play(other === undefined ? job : { ...job, model: other }, which, { stopped })
    if (answer === undefined) throw new Stopped()
    onPlay()
    return answer
  }
  const play: Play = (alternatives, which) => playedIn(isMoved ? model : undefined, alternatives, which)
  const playModel: PlayModel = (other, which) => playedIn(other, other.alternatives, which)
  // With other rates a repair limit mends other jobs: weighed histories would not be what is played beside them.
  const { ownPerHour, paidPerHour, perTrip } = of.change
  const mendsOtherwise = [ownPerHour, paidPerHour, perTrip].some((rate) => rate !== undefined)
  const begun = mendsOtherwise ? await play(model.alternatives, { seed, from: 0, count: 1_000 }) : of.samples
  const samples = await enoughHistories(model, begun, { seed, play })
  const count = samples[0]!.columns[0]!.length
  const states = startStates(compile(model, posterior, used), { seed, from: 0, count })
  return { model, samples, seed, states, play, playModel }
}
