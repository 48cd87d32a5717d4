/**
 * Pieces, tools and days of a job sheet, as the kit and the calendar have them.
 *
 * @module
 */

import type { SheetBlock, SheetPassage } from '../proof/shop-sheet-blocks.js'
import type { Calendar } from './calendar.js'
import type { Kit } from './kit.js'
import { sayCount, sayHold, sayLack, sayNeed } from './kit-words.js'

/** How parts are called in a sentence. */
type NameOf = (part: string) => string

/** What holds the job up before it is begun; none where every piece is ready. */
export function heldByKit(kit: Kit, nameOf: NameOf): SheetBlock[] {
  return kit.stops.length === 0 ? [] : [{ is: 'stop', text: sayHold(kit, nameOf) }]
}

export function piecesOf(kit: Kit, nameOf: NameOf): SheetPassage {
  const rows = kit.needs.map((need) => [
    sayNeed(need, nameOf),
    sayCount(need),
    need.lacks !== undefined
      ? sayLack(need)
      : need.sentAway
        ? 'goes to the shop once it is out'
        : 'here, like the old',
    '',
  ])
  const blocks: SheetBlock[] = [
    rows.length === 0
      ? { is: 'text', text: 'Nothing has to be in hand for it.' }
      : { is: 'table', heads: ['Piece', 'How many', 'Stands', 'Here'], rows },
  ]
  for (const { part, heed } of kit.heeds) blocks.push({ is: 'text', bold: `${nameOf(part)}:`, text: heed })
  return {
    title: 'Pieces',
    says: 'All of it in hand, and held against the old, before anything is undone.',
    blocks,
  }
}

const kinds = { tool: 'Tools', stuff: 'Used up', arrange: 'To be arranged' } as const

export function toolsOf({ ready }: Kit): SheetPassage[] {
  const named = Object.entries(kinds).flatMap(([is, bold]) => {
    const names = ready.filter((one) => one.is === is).map(({ name }) => name)
    return names.length === 0 ? [] : [{ is: 'text' as const, bold: `${bold}:`, text: `${names.join('; ')}.` }]
  })
  return named.length === 0 ? [] : [{ title: 'Tools', says: 'Count them before and after.', blocks: named }]
}

/** "8 in 10 by 14 Dec": when it can be ready, and what is to be ordered today. */
export function sayDays({ isDone, ready, orders }: Calendar): SheetBlock[] {
  if (isDone) return []
  const due = orders.filter(({ isDue }) => isDue).map(({ what }) => what)
  return [
    {
      is: 'text',
      bold:
        ready.likely === null ? 'Not ready within three years.' : `Ready 8 times in 10 by ${ready.likely}.`,
      text: `Even chance: ${ready.middle ?? 'no day'}; with usual days alone ${ready.plan}.${due.length === 0 ? '' : ` To be ordered today: ${due.join('; ')}.`}`,
    },
  ]
}
