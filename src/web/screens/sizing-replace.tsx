/**
 * Replace, and at what size: what each set that could be fitted costs over the years, beside whether it carries the loads.
 *
 * @module
 */

import { useMemo } from 'react'
import { candidateRatings } from '../../forecast/build-replacement.js'
import type { JudgedSet } from '../../sizing/judged-set.js'
import { type LightShare, lightShareKnowing, lightShareOf } from '../../sizing/light-running.js'
import { yearOf } from '../../sizing/plan-use.js'
import { inHundred } from '../../sizing/say-size.js'
import { type SizeQuestion, sizeBoat } from '../../sizing/size-boat.js'
import { sayMoney } from '../words/say.js'
import { words } from '../words/sizing.js'
import { useAnswer } from '../work/answers.js'
import { ninety } from './of-answer.js'
import type { OfSize } from './of-size.js'
import { SizingRows } from './sizing-rows.js'

const { replace: said, sets: ofSets } = words

/** Asked for when it is opened: the histories are played for it. */
export function SizingReplace({ of, boat }: { readonly of: OfSize; readonly boat: string }) {
  const { question } = of
  const { view, problem } = useAnswer(boat, question.set, {})
  const judged = useMemo(() => judgedById(question), [question])
  const light = useMemo(() => lightAmongAlternatives(question), [question])
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
        inHundred(light?.(one.set.ratingKW) ?? one.lowShare),
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

/** Every set that is among the alternatives, judged, by the ids that they have there. */
function judgedById(question: SizeQuestion): ReadonlyMap<string, JudgedSet> {
  const { setFacts, facts } = question
  const { ratingKw } = setFacts
  if (ratingKw === undefined) return new Map()
  const ratings = candidateRatings(ratingKw, facts.candidates)
  const { sets } = sizeBoat({ ...question, sizes: [...new Set(ratings.values())] })
  const judged = (id: string, rating: number) =>
    sets.find(({ set }) => set.kind === 'offered' && set.id === id) ??
    sets.find(({ set }) => set.kind === 'size' && Math.abs(set.ratingKW - rating) < 1e-6)
  const present = sets.find(({ set }) => set.kind === 'present')
  return new Map(
    [
      ['present', present] as const,
      ...[...ratings].map(([id, rating]) => [id, judged(id, rating)] as const),
    ].flatMap(([id, one]) => (one === undefined ? [] : [[id, one] as const])),
  )
}

/** Light running as the alternatives have it: from what the log says of the present set. Undefined: as the loads have it. */
function lightAmongAlternatives({ basis: _, ...question }: SizeQuestion): LightShare | undefined {
  const { setFacts, use } = question
  const byLoads = lightShareOf(question)
  if (byLoads === undefined || use === undefined || setFacts.ratingKw === undefined) return undefined
  const { lowLoadShare } = yearOf(use)
  return lightShareKnowing(byLoads, { ratingKW: setFacts.ratingKw, lowLoadShare })
}
