/**
 * The record of taking apart as it is printed: what to answer first, the order of undoing, the same list reversed, the way out.
 *
 * @module
 */

import type { StopLine } from '../catalogue/stop-line-schema.js'
import type { SheetBlock, SheetPassage } from '../proof/shop-sheet-blocks.js'
import type { SetRegister } from '../register/register-types.js'
import type { Apart, ApartStep } from './apart.js'
import { leadAdvice } from './apart-leads.js'
import { liftingAdvice, measureOut, type WayOut } from './apart-out.js'
import { sayBag } from './apart-words.js'

export interface ApartSheetOf {
  readonly register: SetRegister
  readonly job: string
  readonly apart: Apart
  /** Those that its steps touch. */
  readonly stopLines: readonly StopLine[]
  /** Left out: the set stays where it is. */
  readonly wayOut?: WayOut
  readonly demonstration: boolean
  readonly program: string
}

export interface ApartSheet {
  readonly title: string
  readonly boatName: string
  readonly invented?: string
  readonly day: string
  readonly passages: readonly SheetPassage[]
  readonly colophon: string
}

export function apartSheetOf(of: ApartSheetOf): ApartSheet {
  const { register, job, apart, stopLines, wayOut, demonstration, program } = of
  return {
    title: `Taking apart: ${job.replaceAll('-', ' ')}`,
    boatName: register.boatFacts.name ?? register.boat,
    ...(demonstration ? { invented: 'Demonstration: boat and log are invented.' } : {}),
    day: register.asOf,
    passages: [
      {
        title: 'Before a hand goes in',
        says: 'Each time, on each day. A condition that is not met stops the work.',
        blocks: stopLines.map(stopBlock),
      },
      {
        title: 'Undoing',
        says: 'In this order. Pictures first, then labels, then the spanner.',
        blocks: [undoing(apart)],
      },
      { title: 'Leads', blocks: [{ is: 'list', items: leadAdvice }] },
      ...(wayOut === undefined ? [] : [outOfTheBoat(wayOut)]),
      {
        title: 'Putting back',
        says: 'The same list reversed. Hold each step against its picture from before.',
        blocks: [puttingBack(apart)],
      },
      {
        title: 'Cautions',
        blocks: [
          {
            is: 'text',
            text: 'Steps and pictures are practice; the manual of the set comes first, and every torque is from there. Fuel and electrical work, lifting and old lagging are for licensed people where local rules say so. What was opened is proved before it is turned, energised and left alone.',
          },
        ],
      },
    ],
    colophon: `Gensettle ${program}, as of ${register.asOf}. Licensed people and local rules come first.`,
  }
}

/** Stop lines that any step of a list touches, in the order of the fault model. */
export function linesOfAll(apart: Apart, stopLines: readonly StopLine[]): StopLine[] {
  const touched = new Set(apart.steps.flatMap(({ proposal }) => proposal?.lines ?? []))
  return stopLines.filter(({ id }) => touched.has(id))
}

function stopBlock({ hazard, when, act, clearWhen }: StopLine): SheetBlock {
  return { is: 'stop', text: `${hazard}. ${when} ${act} Clear when: ${clearWhen.join('; ')}.` }
}

/** Where its fasteners are tightened to; never invented. */
export function torqueOf({ entry }: Pick<ApartStep, 'entry'>): string {
  const torque = entry?.body.torque
  return torque === undefined ? 'from the set’s own manual: ____' : `${torque.nm} N·m (${torque.source})`
}

function undoing({ steps }: Apart): SheetBlock {
  return {
    is: 'table',
    heads: ['Undo', 'Pictures before it', 'Leads and bag', 'Done'],
    rows: steps.map((step, i) => [
      `${step.entry?.body.n ?? i + 1}. ${step.what}`,
      step.proposal?.pictures.join('; ') ?? '',
      [leadsSaid(step), bagSaid(step)].filter(Boolean).join('; '),
      step.entry === undefined ? '' : step.entry.body.notNeeded ? 'not needed' : step.entry.from,
    ]),
  }
}

function puttingBack({ steps }: Apart): SheetBlock {
  return {
    is: 'table',
    heads: ['Put back', 'Leads and bag', 'Tightened to', 'Done'],
    rows: steps
      .map((step, i) => ({ step, place: step.entry?.body.n ?? i + 1 }))
      .filter(({ step }) => step.entry?.body.notNeeded !== true)
      .toReversed()
      .map(({ step, place }) => [
        `${place}. ${step.what}`,
        [leadsSaid(step), bagSaid(step)].filter(Boolean).join('; '),
        hasFasteners(step) ? torqueOf(step) : '',
        step.refit === undefined ? '' : step.refit.from,
      ]),
  }
}

/** Whether anything of it is tightened. */
export function hasFasteners({ entry, proposal }: ApartStep): boolean {
  if (entry?.body.notNeeded) return false
  return entry?.body.bag !== undefined || entry?.body.torque !== undefined || proposal?.bag !== undefined
}

function leadsSaid({ entry, proposal }: ApartStep): string {
  const { leads = [], joined = [] } = entry?.body ?? {}
  if (leads.length > 0) {
    const list = leads.map(
      ({ lead, label, from }) => `${lead} “${label}”${from === undefined ? '' : ` at ${from}`}`,
    )
    return [list.join(', '), ...(joined.length === 0 ? [] : [`joined ${joined.join(', ')}`])].join('; ')
  }
  if (proposal?.leads === undefined) return ''
  return proposal.leads.length === 0 ? 'label each lead' : `label ${proposal.leads.join(', ')}`
}

function bagSaid({ entry, proposal }: ApartStep): string {
  if (entry?.body.bag !== undefined) return sayBag(entry.body.bag)
  return proposal?.bag === undefined ? '' : `bag “${proposal.bag}”`
}

/** What is known of the way out, in sentences. */
export function sayWayOut(way: WayOut): readonly string[] {
  const { edgesMm, weightKg, tightest, passage, liftKg, lift } = way
  const sizes =
    edgesMm === undefined
      ? 'The rating of the set is not in the log, so that neither size nor weight can be told: measure and read its plate.'
      : `Sets of this rating are usually about ${edgesMm.join(' × ')} mm, and weigh ${weightKg!.low} to ${weightKg!.high} kg (practice). Measure this one.`
  const narrow =
    tightest && (tightest.opening.name ?? `${tightest.opening.widthMm} × ${tightest.opening.heightMm} mm`)
  const through =
    tightest === undefined
      ? 'No opening on the way is in the log: measure every one from the set to the quay.'
      : passage === 'passes'
        ? `Of that size it passes the tightest opening (${narrow}) whole, end on, with ${-tightest.overMm} mm left; hoses, feet and lifting gear want room too.`
        : `Of that size it is ${tightest.overMm} mm too large for the tightest opening (${narrow}): engine and alternator go apart, and the largest rigid piece is then the engine. Measure it before the first bolt.`
  const carried =
    liftKg === undefined
      ? 'What can be lifted on the way is not in the log.'
      : lift === 'passes'
        ? `${liftKg} kg can be lifted on the way: enough for the heaviest that it may be, whole.`
        : lift === 'too-large'
          ? `${liftKg} kg can be lifted on the way: not enough for the heaviest that it may be, whole.`
          : `${liftKg} kg can be lifted on the way; what the set weighs is not known.`
  return [sizes, through, carried]
}

function outOfTheBoat(way: WayOut): SheetPassage {
  return {
    title: 'Out of the boat',
    says: 'Fuel shut, stored charge bled, stop lines answered: then the weight.',
    blocks: [
      { is: 'list', items: sayWayOut(way) },
      { is: 'blanks', names: measureOut },
      { is: 'list', items: liftingAdvice },
    ],
  }
}
