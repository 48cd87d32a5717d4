/**
 * What bears on an answer, at the prompt: what is worth finding out first, and what would change it.
 *
 * @module
 */

import {
  enoughHistories,
  type Played,
  type WhatChanges,
  type WorthFindingOut,
  whatChanges,
  worthFindingOut,
} from '../alternatives/bearing.js'
import { compile } from '../alternatives/program.js'
import { column } from '../alternatives/sample.js'
import { moneyIn } from '../alternatives/say.js'
import {
  sayBarred,
  sayFirst,
  sayInput,
  sayInputNow,
  sayInputValue,
  sayLook,
  sayQuantity,
  sayTurns,
  sayWhen,
} from '../alternatives/say-bearing.js'
import { startStates } from '../alternatives/start-states.js'
import type { MapRow, TwoWayMap } from '../alternatives/two-way-map.js'
import { type WhenToReplace, whenToReplace } from '../alternatives/when-to-replace.js'
import type { LifeModel } from '../forecast/life-model.js'
import { openPlayers } from '../server/play.js'
import type { Answer } from './answer.js'
import { progressOf } from './progress.js'
import { tableText } from './table.js'

export interface Bearing {
  readonly findingOut?: WorthFindingOut
  readonly changes?: WhatChanges | null
  readonly when?: WhenToReplace | null
}

/** Works out what was asked for, on the histories of an answer and as many more as it takes. */
export async function bearingOf(
  answer: Answer,
  asked: {
    readonly seed: number
    readonly findOut?: boolean
    readonly whatChanges?: boolean
    readonly when?: boolean
  },
): Promise<Bearing> {
  if (!asked.findOut && !asked.whatChanges && !asked.when) return {}
  const { model, posterior, used } = answer
  const { seed } = asked
  const players = openPlayers(model, posterior, { used })
  const bar = progressOf('what bears on it')
  let plays = 0
  const counted = <T>(result: Promise<T>): Promise<T> => {
    bar.show(Math.min(++plays, usualPlays), usualPlays)
    return result
  }
  const historiesPerChunk = 100
  const play: Played['play'] = (alternatives, which) =>
    counted(players.play(alternatives, { ...which, historiesPerChunk }))
  const playModel: Played['playModel'] = (other, which) =>
    counted(players.playModel(other, { ...which, historiesPerChunk }))
  try {
    const samples = await enoughHistories(model, answer.samples, { seed, play })
    const count = column(samples[0]!, 'cost').length
    const states = startStates(compile(model, posterior, used), { seed, from: 0, count })
    const played: Played = { model, samples, seed, states, play, playModel }
    const [findingOut, changes] = await Promise.all([
      asked.findOut ? worthFindingOut(played) : undefined,
      asked.whatChanges ? whatChanges(played) : undefined,
    ])
    return {
      ...(findingOut === undefined ? {} : { findingOut }),
      ...(asked.whatChanges ? { changes: changes ?? null } : {}),
      ...(asked.when ? { when: (await whenToReplace(played)) ?? null } : {}),
    }
  } finally {
    bar.end()
    await players.close()
  }
}

/** About so many times are more histories asked for. */
const usualPlays = 60

/** As JSON holds it. */
export function bearingValue({ findingOut, changes, when }: Bearing): Readonly<Record<string, unknown>> {
  return {
    ...(findingOut === undefined
      ? {}
      : {
          findingOut: {
            looks: findingOut.looks.map(({ look, ...worth }) => ({
              check: look.check,
              part: look.part,
              ...worth,
            })),
            tooSmall: findingOut.tooSmall,
            unvalued: findingOut.unvalued,
            quantities: findingOut.quantities,
          },
        }),
    ...(changes === undefined ? {} : { whatChanges: changes }),
    ...(when === undefined ? {} : { whenToReplace: when }),
  }
}

export function bearingText(model: LifeModel, { findingOut, changes, when }: Bearing): string[] {
  return [
    ...(findingOut === undefined ? [] : findingOutText(model, findingOut)),
    ...(changes === undefined ? [] : changesText(model, changes)),
    ...(when === undefined ? [] : whenText(model, when)),
  ]
}

function whenText(model: LifeModel, when: WhenToReplace | null): string[] {
  if (when === null) return ['', 'Nothing can be said of when to replace: no set is among the alternatives.']
  const money = (amount: number) => moneyIn(model.currency, amount)
  const right = (head: string) => ({ head, align: 'right' }) as const
  const rows = Array.from(
    { length: Math.max(when.planned.length, when.limitByYear?.length ?? 0) },
    (_, k) => {
      const adds = when.planned[k]?.adds
      const limit = when.limitByYear?.[k]
      return [
        String(k + 1),
        money(when.marginal[k]!),
        limit === undefined ? 'always' : money(limit),
        adds === undefined ? '' : `${money(adds.mean)} ± ${money(adds.standardError)}`,
      ]
    },
  )
  return [
    '',
    ...sayWhen(model, when),
    '',
    tableText(['year', 'the old set costs', 'jobs mended up to', 'replacing after it adds'].map(right), rows),
  ]
}

const wide = 40
/** Rows that are shown of what does not pay. */
const mostOthers = 5

function findingOutText(model: LifeModel, findingOut: WorthFindingOut): string[] {
  const money = (amount: number) => moneyIn(model.currency, amount)
  const paying = findingOut.looks.filter(({ pays }) => pays)
  const others = findingOut.looks.filter(({ pays }) => !pays).slice(0, mostOthers)
  const looks = [...paying, ...others].map((worth) => {
    const said = sayLook(model, worth)
    return [said.look, said.worth, said.takes.replace('about ', ''), worth.pays ? 'yes' : 'no', said.after]
  })
  const quantities = findingOut.quantities.slice(0, mostOthers).map(({ id, worth, error, pays }) => {
    const { what, how } = sayQuantity(id)
    return [what, `${money(worth)} ± ${money(error)}`, pays ? how : 'no']
  })
  return [
    '',
    sayFirst(model, findingOut),
    '',
    tableText(
      [
        { head: 'a look at the set', wrap: wide },
        { head: 'is worth', align: 'right' },
        { head: 'takes', align: 'right' },
        { head: 'pays' },
        { head: 'and then', wrap: 60 },
      ],
      looks,
    ),
    `${findingOut.tooSmall} other looks cannot be worth what they take. ± is one standard error.`,
    '',
    tableText(
      [
        { head: 'to know for certain', wrap: wide },
        { head: 'is worth at most', align: 'right' },
        { head: 'how', wrap: 50 },
      ],
      quantities,
    ),
  ]
}

function changesText(model: LifeModel, changes: WhatChanges | null): string[] {
  if (changes === null) return ['', 'Only one alternative is open: nothing can change the answer.']
  const { turning, maps } = changes
  const rows = turning.inputs.map((input) => [
    sayInput(input.id),
    sayInputNow(model, input) ?? '',
    moneyIn(model.currency, input.lead.low.value),
    moneyIn(model.currency, input.lead.high.value),
    sayTurns(model, input),
  ])
  return [
    '',
    `What would change the answer, one at a time. Now best: ${nameOf(model, turning.best)}.`,
    '',
    tableText(
      [
        { head: 'input', wrap: wide },
        { head: 'now', align: 'right' },
        { head: 'ahead at low', align: 'right' },
        { head: 'at high', align: 'right' },
        { head: 'where it changes hands', wrap: 60 },
      ],
      rows,
    ),
    ...sayBarred(model, turning),
    ...maps.flatMap((map) => mapText(model, map)),
  ]
}

function mapText(model: LifeModel, { across, down, rows }: TwoWayMap): string[] {
  const shown = rows.length > 9 ? rows.filter((_, i) => i % 4 === 0) : rows
  return [
    '',
    tableText(
      [
        { head: sayInput(down.id) },
        {
          head: `best, as ${sayInput(across.id)} goes from ${sayInputValue(model, across.id, across.low)} to ${sayInputValue(model, across.id, across.high)}`,
          wrap: 100,
        },
      ],
      shown.map((row) => [sayInputValue(model, down.id, row.down), rowText(model, across.id, row)]),
    ),
  ]
}

function rowText(model: LifeModel, across: TwoWayMap['across']['id'], { first, changes }: MapRow): string {
  const from = changes.map(({ at, to }) => `from ${sayInputValue(model, across, at)}: ${nameOf(model, to)}`)
  return [nameOf(model, first), ...from].join('; ')
}

function nameOf(model: LifeModel, id: string): string {
  return model.alternatives.find((one) => one.id === id)?.name ?? id
}
