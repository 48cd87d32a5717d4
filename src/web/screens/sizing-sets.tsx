/**
 * The sets that were tried: what each carries, and what speaks against it.
 *
 * @module
 */

import type { LoadRules } from '../../catalogue/load-schema.js'
import type { JudgedSet } from '../../sizing/judged-set.js'
import {
  againstOf,
  checkNames,
  checkRows,
  inHundred,
  occasionName,
  occasionRows,
  sayFound,
  sayFuel,
  sayLeft,
  sayWhere,
  spoken,
  verdictWords,
} from '../../sizing/say-size.js'
import type { BoatSize } from '../../sizing/size-boat.js'
import { Behind, Link, Passage } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/sizing.js'
import type { OfSize } from './of-size.js'
import { SizingReplace } from './sizing-replace.js'
import { nameOfSet, SizingRows } from './sizing-rows.js'

const { sets: said } = words

export function SizingSets({
  sized,
  of,
  boat,
}: {
  readonly sized: BoatSize
  readonly of: OfSize
  readonly boat: string
}) {
  return (
    <Passage title={said.title} says={said.says.map((line) => <p key={line}>{line}</p>)}>
      <ul className="sized-sets">
        {sized.sets.map((judged) => (
          <OneSet key={judged.set.id} judged={judged} rules={of.question.book.loadRules} />
        ))}
      </ul>
      <Behind name={words.replace.title}>
        <SizingReplace of={of} boat={boat} />
      </Behind>
      <p className="gap">
        <Link to={pathTo({ page: 'alternatives', boat, set: of.question.set })}>{said.alternatives}</Link>
      </p>
    </Passage>
  )
}

function OneSet({ judged, rules }: { readonly judged: JudgedSet; readonly rules: LoadRules }) {
  const { set, verdict, place, fuel, lowShare, overloadsPerYear, overloadsUnshed } = judged
  const against = againstOf(judged)
  const { left, second } = sayLeft(judged)
  const name = nameOfSet(set)
  return (
    <li>
      <p>
        <b>{name}</b> {said.verdicts[verdict]}
        {place === 'fails' && `, ${said.place}`}.
      </p>
      <p className="small">
        {said.left(left, second)}{' '}
        {set.madeForHertz !== undefined && `${said.madeFor(String(set.madeForHertz))} `}
        {said.light(inHundred(lowShare))} {said.burns(sayFuel(fuel))} {said.starts(spoken(overloadsPerYear))}
        {overloadsUnshed !== undefined && ` ${said.unshed(spoken(overloadsUnshed))}`}
      </p>
      {against.length > 0 && (
        <Behind name={said.behind(name, against.length)}>
          <SizingRows
            name={name}
            heads={said.heads}
            rows={against.map(({ worst, also }) => [
              checkNames[worst.check],
              verdictWords[worst.verdict],
              sayFound(worst),
              [
                sayWhere(worst, rules),
                ...(also.length === 0
                  ? []
                  : [said.also(also.map((one) => occasionName(rules, one).toLowerCase()).join(', '))]),
              ]
                .filter((text) => text !== '')
                .join('; '),
            ])}
          />
        </Behind>
      )}
      <Behind name={said.whole(name)}>
        <h3>{said.byOccasion}</h3>
        <SizingRows
          name={`${name}, ${said.byOccasion.toLowerCase()}`}
          heads={said.occasionHeads}
          rows={occasionRows(judged, rules)}
        />
        <h3 className="gap">{said.ofTheYear}</h3>
        <SizingRows
          name={`${name}, ${said.ofTheYear.toLowerCase()}`}
          heads={said.heads}
          rows={checkRows(judged, rules)}
        />
      </Behind>
    </li>
  )
}
