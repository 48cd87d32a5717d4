/**
 * Replace, and at what size: what each set that could be fitted costs over the years, beside whether it carries the loads.
 *
 * @module
 */

import { useMemo } from 'react'
import type { JudgedSet } from '../../sizing/judged-set.js'
import { inHundred } from '../../sizing/say-size.js'
import { type SizeQuestion, sizeBoat } from '../../sizing/size-boat.js'
import { sayMoney } from '../words/say.js'
import { words } from '../words/sizing.js'
import { useAnswer } from '../work/answers.js'
import { ninety } from './of-answer.js'
import type { OfSize } from './of-size.js'
import { SizingRows } from './sizing-rows.js'

const { replace: said, sets: ofSets } = words

/** Sizes of the sets that are always among the alternatives, as multiples of the present one's. */
const usualSizes: Readonly<Record<string, number>> = {
  'new-smaller': 0.7,
  'new-same': 1,
  'new-larger': 1.4,
  'used-same': 1,
}

/** Asked for when it is opened: the histories are played for it. */
export function SizingReplace({ of, boat }: { readonly of: OfSize; readonly boat: string }) {
  const { question } = of
  const { view, problem } = useAnswer(boat, question.set, {})
  const judged = useMemo(() => judgedById(question), [question])
  if (problem !== undefined) return <p className="lead">{problem}</p>
  if (view === undefined) return <p className="waiting second">{said.working}</p>
  const money = (amount: number) => sayMoney(view.currency, amount)
  const rows = view.rows.flatMap((row) => {
    const fitted = row.id.startsWith('replace-') ? judged.get(row.id.slice('replace-'.length)) : undefined
    const kept = row.id === 'leave' ? judged.get('present') : undefined
    const one = fitted ?? kept
    if (one === undefined) return []
    return [
      [
        row.barred === undefined ? row.name : `${row.name} (${said.barred})`,
        `${money(row.cost.mean)} ± ${money(ninety * row.cost.standardError)}`,
        said.between(money(row.costSpread.low), money(row.costSpread.high)),
        `${ofSets.verdicts[one.verdict]}${one.place === 'fails' ? `, ${ofSets.place}` : ''}`,
        inHundred(one.lowShare),
      ],
    ]
  })
  return (
    <>
      <SizingRows name={said.title} heads={said.heads} rows={rows} />
      <p className="fine gap-small">
        {said.says(view.histories.toLocaleString('en-GB'), String(view.horizonYears))}
      </p>
    </>
  )
}

/** Every set that is among the alternatives, judged: those offered by their ids, the usual sizes by theirs. */
function judgedById(question: SizeQuestion): ReadonlyMap<string, JudgedSet> {
  const rating = question.setFacts.ratingKw
  if (rating === undefined) return new Map()
  const sizes = [0.7 * rating, 1.4 * rating]
  const { sets } = sizeBoat({ ...question, sizes })
  const present = sets.find(({ set }) => set.kind === 'present')
  const atSize = (size: number) =>
    size === 1
      ? present
      : sets.find(({ set }) => set.kind === 'size' && Math.abs(set.ratingKW - size * rating) < 1e-6)
  return new Map(
    [
      ['present', present] as const,
      ...Object.entries(usualSizes).map(([id, size]) => [id, atSize(size)] as const),
      ...sets.filter(({ set }) => set.kind === 'offered').map((one) => [one.set.id, one] as const),
    ].flatMap(([id, one]) => (one === undefined ? [] : [[id, one] as const])),
  )
}
