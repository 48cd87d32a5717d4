/**
 * The page on sizing: what is drawn together, which size carries it, and what a smaller one would ask.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { DemandBasis } from '../../sizing/demand-basis.js'
import { limitOrigins } from '../../sizing/limit-origins.js'
import { checkNames, occasionName, sayConnected, saySize, seasonName, spoken } from '../../sizing/say-size.js'
import { type BoatSize, sizeBoat } from '../../sizing/size-boat.js'
import { useBoat, useCatalogue } from '../data/boat.js'
import { Duration, type DurationProps } from '../marks/duration.js'
import type { OfSet } from '../of-set.js'
import { Behind, Cautions, Lead, Passage, Preparing, Say } from '../parts/index.js'
import { words as measuredWords } from '../words/measured.js'
import { shell } from '../words/shell.js'
import { words } from '../words/sizing.js'
import { BasisChoice } from './basis-choice.js'
import { MeasuredSays } from './measured-says.js'
import { type OfSize, ofSize } from './of-size.js'
import { SizingLoads } from './sizing-loads.js'
import { SizingRows } from './sizing-rows.js'
import { SizingSets } from './sizing-sets.js'
import { SizingTrades } from './sizing-trades.js'
import '../look/marks.css'
import '../look/sizing.css'

export function SizingScreen({ boat: id, set }: OfSet) {
  const boat = useBoat(id)
  const catalogue = useCatalogue()
  const { entries, status } = boat
  const [basis, setBasis] = useState<DemandBasis>()
  const of = useMemo(
    () =>
      catalogue && status === 'ready' ? ofSize(catalogue, { entries, boat: id, set, basis }) : undefined,
    [catalogue, status, entries, id, set, basis],
  )
  const sized = useMemo(() => (of === undefined ? undefined : sizeBoat(of.question)), [of])
  if (of === undefined || sized === undefined) {
    return <Preparing title={words.title} words={words.preparing} />
  }
  const none = sized.loads.length === 0 && sized.basis === 'list'
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        {none ? <Nothing /> : <Answer sized={sized} />}
      </Passage>
      {!none && <Drawn sized={sized} of={of} onBasis={setBasis} />}
      {!none && <SizingSets sized={sized} of={of} boat={id} />}
      {sized.loads.length > 0 && <SizingTrades sized={sized} of={of} boat={boat} />}
      <SizingLoads sized={sized} of={of} boat={boat} />
      <Rests sized={sized} catalogue={catalogue} />
      <Passage title={words.cautionsTitle}>
        <Cautions list={words.cautions} />
      </Passage>
    </>
  )
}

function Nothing() {
  return (
    <>
      <Say>
        {words.nothing.before}
        <b>{words.nothing.bold}</b>
      </Say>
      <Lead>{words.nothing.lead}</Lead>
    </>
  )
}

/** The first sentence is the answer, what follows the present set. */
function Answer({ sized }: { readonly sized: BoatSize }) {
  const said = saySize(sized)
  const end = said.indexOf('. ')
  const [first, rest] = end < 0 ? [said, ''] : [said.slice(0, end + 1), said.slice(end + 2)]
  return (
    <>
      <Say>{first}</Say>
      {rest !== '' && <Lead>{rest}</Lead>}
    </>
  )
}

interface DrawnProps {
  readonly sized: BoatSize
  readonly of: OfSize
  readonly onBasis: (basis: DemandBasis) => void
}

function Drawn({ sized, of, onBasis }: DrawnProps) {
  const { curve: said } = words
  const { loadRules } = of.question.book
  const [chosen, setChosen] = useState<string>('year')
  const shown = sized.curves.find(({ occasion }) => occasion === chosen) ?? sized.curves.at(-1)
  if (shown === undefined) return null
  const name = occasionName(loadRules, shown.occasion)
  const ratings = sized.sets.map(({ set, engineKW }) => ({
    name: set.kind === 'present' ? `${spoken(set.ratingKW)} kW, present` : set.name,
    kW: engineKW,
    present: set.kind === 'present',
  }))
  return (
    <Passage title={said.title} says={said.says.map((line) => <p key={line}>{line}</p>)}>
      {sized.measured && (
        <>
          <BasisChoice chosen={sized.basis} onChoose={onBasis} />
          <MeasuredSays measured={sized.measured} basis={sized.basis} />
        </>
      )}
      <fieldset className="kinds">
        <legend className="unseen">{said.which}</legend>
        {[...sized.curves.slice(-1), ...sized.curves.slice(0, -1)].map(({ occasion }) => (
          <label key={occasion}>
            <input
              type="radio"
              name="occasion"
              checked={occasion === shown.occasion}
              onChange={() => setChosen(occasion)}
            />
            {occasionName(loadRules, occasion)}
          </label>
        ))}
      </fieldset>
      <p className="small gap-small">
        {[said.hours(spoken(shown.hours)), ...sayConnected(sized)].join('. ')}
      </p>
      <Duration
        curve={shown.curve}
        {...(shown.occasion === 'year' ? besideOf(sized) : {})}
        ratings={ratings}
        words={{
          drawing: said.drawing(
            name.toLowerCase(),
            spoken(shown.kW.p50),
            spoken(shown.kW.p99),
            spoken(shown.kW.most),
          ),
          axis: said.axis,
        }}
      />
      <Behind name={said.table}>
        <SizingRows
          name={said.table}
          heads={said.heads}
          rows={sized.figures.map(({ occasion, season, hours, meanKW, kW }) => [
            `${occasionName(loadRules, occasion)}, ${seasonName(loadRules, season).toLowerCase()}`,
            spoken(hours),
            ...[meanKW, kW.p50, kW.p95, kW.p99, kW.most].map((value) => `${spoken(value)} kW`),
          ])}
        />
      </Behind>
    </Passage>
  )
}

/** Over the whole year: the recording beside the list, or the list beside the recording. */
function besideOf({ measured, basis }: BoatSize): Pick<DurationProps, 'beside'> {
  const { curves } = measuredWords
  if (measured === undefined || measured.listed.length === 0) return {}
  return basis === 'recording'
    ? { beside: { curve: measured.listed, names: { curve: curves.recorded, beside: curves.listed } } }
    : {
        beside: {
          curve: measured.recorded,
          names: {
            curve: basis === 'corrected' ? curves.corrected : curves.listed,
            beside: curves.recorded,
          },
        },
      }
}

function Rests({
  sized,
  catalogue,
}: {
  readonly sized: BoatSize
  readonly catalogue: Catalogue | undefined
}) {
  const { rests } = words
  return (
    <Passage title={rests.title} says={rests.says}>
      {sized.assumed.length === 0 ? (
        <p className="prose">{rests.nothing}</p>
      ) : (
        <ul className="prose">
          {sized.assumed.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <p className="fine gap-small">{rests.sources}</p>
      {catalogue && (
        <Behind name={rests.limits}>
          <SizingRows
            name={rests.limits}
            heads={rests.limitHeads}
            rows={limitOrigins(catalogue, sized.sets).map(({ check, title, place, held }) => [
              checkNames[check],
              `${title}: ${place}`,
              shell.held[held],
            ])}
          />
        </Behind>
      )}
    </Passage>
  )
}
