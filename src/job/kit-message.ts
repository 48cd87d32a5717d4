/**
 * What is sent to a supplier: a line for each piece with what must be told, and what is asked back.
 *
 * @module
 */

import type { Kits } from '../catalogue/kit-schema.js'
import type { SetFacts } from '../register/register-types.js'
import type { Asked, Kit, Need } from './kit.js'
import { inSentence, sayCount } from './kit-words.js'

/** One line of a list: the piece, and what is known of it. */
export interface SupplierLine {
  readonly key: string
  readonly name: string
  readonly count: number
  readonly spares: number
  readonly told: readonly { readonly tell: string; readonly answer: string }[]
  /** Told as soon as it is known. */
  readonly open: readonly string[]
}

/** All that is bought of one kind of supplier. */
export interface SupplierList {
  readonly supplier: string
  readonly name: string
  readonly lines: readonly SupplierLine[]
  /** Stuff that is used up, from the same counter. */
  readonly stuff: readonly string[]
  /** The list as a message, ready to be sent. */
  readonly message: string
}

export interface MessageAbout {
  readonly kits: Kits
  readonly nameOf: (part: string) => string
  readonly setFacts: Pick<SetFacts, 'ratingKw' | 'volts' | 'hertz' | 'rpm'>
}

/** Lists of what is still to be ordered or settled, by kind of supplier, in the order in which the kits name these. */
export function supplierLists(kit: Kit, about: MessageAbout): SupplierList[] {
  const wanted = kit.needs.filter(
    ({ lacks, sentAway }) =>
      sentAway || lacks === 'to-order' || lacks === 'settle' || lacks === 'does-not-match',
  )
  return about.kits.suppliers.flatMap(({ id, name }) => {
    const lines = wanted.filter(({ supplier }) => supplier === id).map((need) => lineOf(need, about))
    const stuff = kit.ready.filter((one) => one.is === 'stuff' && one.supplier === id).map((one) => one.name)
    if (lines.length === 0 && stuff.length === 0) return []
    const list = { supplier: id, name, lines, stuff }
    return [{ ...list, message: messageOf(list, { setFacts: about.setFacts, asks: asksOf(wanted, id) }) }]
  })
}

function lineOf(need: Need, { nameOf }: MessageAbout): SupplierLine {
  const { key, name, count, spares, piece, part, asks, oldNumber } = need
  const told = asks.flatMap(({ question, known }) =>
    known === undefined || (question.id === 'part-number' && oldNumber !== undefined)
      ? []
      : [{ tell: question.tell, answer: known.answer }],
  )
  return {
    key,
    name: piece === undefined ? nameOf(part) : `${name}, for ${inSentence(nameOf(part))}`,
    count,
    spares,
    told: [
      ...(oldNumber === undefined ? [] : [{ tell: 'number on the old one', answer: oldNumber }]),
      ...told,
    ],
    open: asks
      .filter(({ question, known }) => known === undefined && !(question.id === 'part-number' && oldNumber))
      .map(({ question }) => question.tell),
  }
}

/** Questions still open on what this supplier sends, each once. */
function asksOf(wanted: readonly Need[], supplier: string): Asked[] {
  const open = new Map<string, Asked>()
  for (const need of wanted.filter((one) => one.supplier === supplier)) {
    for (const asked of need.asks) if (asked.known === undefined) open.set(asked.question.id, asked)
  }
  return [...open.values()]
}

function messageOf(
  { supplier, lines, stuff }: Omit<SupplierList, 'message'>,
  { setFacts, asks }: { readonly setFacts: MessageAbout['setFacts']; readonly asks: readonly Asked[] },
): string {
  const setWords = saySet(setFacts)
  const isShop = supplier === 'winding'
  const what = isShop
    ? 'I ask for the following work. Nothing is taken out before your answer is here'
    : 'I want to order the following. Nothing is taken apart before all of it is here and matches what it replaces'
  const rows = [
    ...lines.map(({ name, count, spares, told, open }, at) =>
      [
        `${at + 1}. ${name}${isShop ? '' : `: ${sayCount({ count, spares })}`}`,
        ...told.map(({ tell, answer }) => `   ${tell}: ${answer}`),
        ...(open.length === 0 ? [] : [`   still to be told: ${open.join('; ')}`]),
      ].join('\n'),
    ),
    ...stuff.map((name, at) => `${lines.length + at + 1}. ${name}`),
  ]
  return [
    `Good day,`,
    '',
    `for a diesel generating set on a boat${setWords === '' ? '' : ` (${setWords})`} ${what}.`,
    '',
    ...rows,
    '',
    isShop
      ? 'Please say how many days it takes, what it costs with tax and carriage both ways, from which sum on you ask first, and what comes back with it (test record, old parts).'
      : 'Of each: is it on the shelf, or how many days does it take; what does it cost with tax and carriage; and is it taken back unused where it does not match?',
    ...(asks.some(({ question }) => question.seen === 'open')
      ? ['What shows only once the set is open I tell as soon as I know it; say if you must know it before.']
      : []),
    '',
    'Thank you.',
  ].join('\n')
}

/** "7 kW, 230 V, 50 Hz, 1500 rpm"; empty where nothing is known. */
function saySet({ ratingKw, volts, hertz, rpm }: MessageAbout['setFacts']): string {
  return [
    ...(ratingKw === undefined ? [] : [`${ratingKw} kW`]),
    ...(volts === undefined ? [] : [`${volts.join('/')} V`]),
    ...(hertz === undefined ? [] : [`${hertz} Hz`]),
    ...(rpm === undefined ? [] : [`${rpm} rpm`]),
  ].join(', ')
}
