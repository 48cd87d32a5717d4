/**
 * What a long run comes to in kilowatts, and the hours that others run a set before they accept it.
 *
 * @module
 */

import type { Limits } from './limits.js'
import { sayFigure } from './say-figure.js'
import { loadSteps } from './supply.js'

/** Minutes at each share of the rating. Practice, made of the two programmes below for a small boat. */
const ownRun = [
  { share: 25, minutes: '15' },
  { share: 50, minutes: '30' },
  { share: 75, minutes: '60' },
  { share: 100, minutes: '60 to 120' },
] as const

const programmes = {
  /** After an overhaul, by an army manual. */
  army: ['warm', 'half', 'full', 'over', 'idle'],
  /** Of a set that runs daily, by a guide specification. */
  prime: ['three-quarters', 'full', 'over', 'steady'],
} as const

/** Hours of a programme, one part of it and all together. */
export function programmeHours(
  of: keyof typeof programmes,
  limits: Limits,
): { readonly all: number; readonly part: (id: string) => number } {
  const part = (id: string) => limits(`${of}-run-${id}`).value
  return { all: programmes[of].reduce((sum, id) => sum + part(id), 0), part }
}

/** The steps of a long run for a rating, and what is run before others accept a set. */
export function loadPlan(ratingKw: number, limits: Limits): readonly string[] {
  const loads = loadSteps({ ratingKw, shares: ownRun.map(({ share }) => share) })
  const army = programmeHours('army', limits)
  const prime = programmeHours('prime', limits)
  const source = (id: string) => `${limits(id).source}; ${limits(id).held}`
  return [
    ...ownRun.map(
      ({ share, minutes }, at) =>
        `${sayFigure(share, '%')}: ${sayFigure(loads[at]!.kW, 'kW')} for ${minutes} min.`,
    ),
    `After an overhaul others run ${army.all} h: ${army.part('half')} h at half load, ${army.part('full')} h at full load, ${army.part('over')} h at 125\u00a0%, the rest unloaded (${source('army-run-full')}).`,
    `A set that runs daily is accepted after ${prime.all} h: ${prime.part('three-quarters')} h at 75\u00a0%, ${prime.part('full')} h and ${prime.part('steady')} h at full load, ${prime.part('over')} h at 110\u00a0% (${source('prime-run-full')}). Above 100\u00a0% only where the engine is rated for it.`,
  ]
}
