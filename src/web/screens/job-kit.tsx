/**
 * The pieces of a job: what must be in hand, where each stands, what is to be settled, and what suppliers are told.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import type { Kits } from '../../catalogue/kit-schema.js'
import { kitOf } from '../../job/kit.js'
import { compareNumbers } from '../../job/kit-compare.js'
import { supplierLists } from '../../job/kit-message.js'
import { inSentence, sayCompared, sayLack, sayNeed, shortName } from '../../job/kit-words.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { useKits } from '../data/kits.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { moneySayer } from '../entry/say-entry.js'
import type { OfSet } from '../of-set.js'
import { Cautions, Lead, Passage, Preparing, Say, Stop } from '../parts/index.js'
import { words as jobWords } from '../words/job.js'
import { words } from '../words/job-kit.js'
import { sayChance, sayDate, sayList } from '../words/say.js'
import { JobFrame, type OfJob } from './job-frame.js'
import { KitLists } from './job-kit-lists.js'
import type { OfKit } from './job-kit-of.js'
import { KitPieces } from './job-kit-pieces.js'
import { KitSettle } from './job-kit-settle.js'
import { TextField } from './links-fields.js'
import '../look/links.css'
import '../look/job-kit.css'

export function JobKitScreen(of: OfSet) {
  const kits = useKits()
  return (
    <JobFrame of={of} page="job-kit">
      {(known) =>
        kits === undefined ? (
          <Preparing title={words.title} words={words.preparing} />
        ) : (
          <KitPage of={of} known={known} kits={kits} />
        )
      }
    </JobFrame>
  )
}

function KitPage({ of, known, kits }: { readonly of: OfSet; readonly known: OfJob; readonly kits: Kits }) {
  const { register, catalogue, log, job } = known
  const kit = useMemo(
    () =>
      kitOf({
        job,
        entries: log.entries,
        set: of.set,
        asOf: today(),
        kits,
        catalogue: setCatalogueOf(register, catalogue).catalogue,
        terms: register.terms,
      }),
    [job, log.entries, of.set, kits, register, catalogue],
  )
  const nameOf = useMemo(() => {
    const names = new Map(catalogue.parts.map(({ id, name }) => [id, shortName(name)]))
    return (part: string) => names.get(part) ?? part.replaceAll('-', ' ')
  }, [catalogue])
  const lists = useMemo(
    () => supplierLists(kit, { kits, nameOf, setFacts: register.setFacts }),
    [kit, kits, nameOf, register.setFacts],
  )
  const all: OfKit = { of, known, kits, kit, nameOf }
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <Answer {...all} />
      </Passage>
      {kit.needs.length > 0 && <KitPieces {...all} />}
      {kit.needs.length > 0 && <KitSettle {...all} />}
      <KitLists lists={lists} />
      <ToHaveReady {...all} />
      <DoesItFit kits={kits} />
      <Passage title={jobWords.cautionsTitle} className="caution">
        <Cautions list={jobWords.cautions} />
      </Passage>
    </>
  )
}

/** Begin, or do not and because of what; then the chance of a wrong part. */
function Answer({ kit, nameOf, known: { register } }: OfKit) {
  const [first, ...more] = kit.stops
  const money = moneySayer(register.boatFacts.currency ?? 'USD')
  const said = useSaid()
  const each = kit.wrong.parts.map(({ part, chance, days, piece, price }) =>
    words.wrongPart({
      part: inSentence(nameOf(part)),
      chance: sayChance(chance),
      days: words.days(days),
      piece: money(Math.round(piece)),
      price: price === undefined || price < 0.5 ? undefined : money(Math.round(price)),
    }),
  )
  const any = each.length < 2 ? undefined : sayChance(kit.wrong.anyChance)
  return (
    <>
      {first === undefined ? (
        <Say>
          <b>{kit.needs.length === 0 ? words.nothing : words.begin}</b>
        </Say>
      ) : (
        <Stop
          title={words.stop({ piece: inSentence(sayNeed(first, nameOf)), lack: sayLack(first, sayDate) })}
        >
          {more.length === 0 ? undefined : words.stopMore(more.length)}
        </Stop>
      )}
      {first === undefined && kit.needs.length > 0 && <Lead>{words.beginLead}</Lead>}
      {each.length > 0 && <Lead>{said(words.wrong({ each: each.join('; '), any }))}</Lead>}
      {kit.done.length > 0 && <p className="prose">{words.done(listed(kit.done, nameOf))}</p>}
      {kit.nothingFor.length > 0 && (
        <p className="prose">{words.nothingFor(listed(kit.nothingFor, nameOf))}</p>
      )}
    </>
  )
}

function listed(parts: readonly string[], nameOf: (part: string) => string): string {
  return sayList(parts.map((part) => inSentence(nameOf(part))))
}

function ToHaveReady({ kit, nameOf }: OfKit) {
  const said = useSaid()
  if (kit.ready.length === 0 && kit.heeds.length === 0) return null
  return (
    <Passage title={words.ready} says={words.readySays}>
      <ul className="kit-ready">
        {kit.ready.map(({ name, is, for: parts }) => (
          <li key={name}>
            {said(words.readyFor({ name, is: words.readyIs[is], parts: listed(parts, nameOf) }))}
          </li>
        ))}
        {kit.heeds.map(({ part, heed }) => (
          <li key={part}>
            <b>{nameOf(part)}.</b> {said(heed)}
          </li>
        ))}
      </ul>
    </Passage>
  )
}

function DoesItFit({ kits }: { readonly kits: Kits }) {
  const [old, setOld] = useState('')
  const [replacement, setReplacement] = useState('')
  const asked = old.trim() !== '' && replacement.trim() !== ''
  return (
    <Passage title={words.fitsTitle} says={words.fitsSays} className="screen-only">
      <div className="links-fields">
        <TextField name={words.fitsOld} hint={words.fitsOldHint} value={old} onChange={setOld} />
        <TextField
          name={words.fitsNew}
          hint={words.fitsNewHint}
          value={replacement}
          onChange={setReplacement}
        />
      </div>
      <p className="prose gap" aria-live="polite">
        {asked && sayCompared(compareNumbers({ old, replacement }, kits.sizes))}
      </p>
    </Passage>
  )
}
