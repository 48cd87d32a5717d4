/**
 * Proof: what blocks, what is owed in its order, and one test at a time.
 *
 * @module
 */

import { useEffect, useId, useRef, useState } from 'react'
import type { Gate, Owed, OwedTest } from '../../proof/owed.js'
import { proofTestOf, proofTests } from '../../proof/tests.js'
import { useSaid } from '../data/region.js'
import type { OfSet } from '../of-set.js'
import { Button, Lead, Link, Passage, Preparing, Say, Tag } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words as linkWords } from '../words/links.js'
import { words } from '../words/proof.js'
import { lowerFirst, sayDate } from '../words/say.js'
import { type OfProof, useProof } from './of-proof.js'
import { OpenLines } from './proof-lines.js'
import { LockOutSteps } from './proof-lock-out.js'
import { OneTest } from './proof-test.js'
import '../look/proof.css'

/** A test that is open on the page. */
interface Chosen {
  readonly test: string
  readonly part?: string | undefined
}

export function ProofScreen(of: OfSet) {
  const proof = useProof(of)
  const [chosen, choose] = useState<Chosen>()
  const top = useRef<HTMLDivElement>(null)
  const opened = chosen === undefined ? '' : `${chosen.test} ${chosen.part ?? ''}`
  const before = useRef(opened)
  useEffect(() => {
    if (before.current === opened) return
    before.current = opened
    window.scrollTo(0, 0)
    top.current?.querySelector('h1')?.focus({ preventScroll: true })
  }, [opened])
  if (proof === undefined) return <Preparing title={words.title} words={words.waiting} />
  const test = chosen === undefined ? undefined : proofTestOf(chosen.test)
  return (
    <div ref={top} className="proof">
      {test === undefined ? (
        <Overview of={of} proof={proof} onChoose={choose} />
      ) : (
        <OneTest
          key={opened}
          of={of}
          proof={proof}
          test={test}
          part={chosen?.part}
          onDone={() => choose(undefined)}
        />
      )}
    </div>
  )
}

interface OverviewProps {
  readonly of: OfSet
  readonly proof: OfProof
  readonly onChoose: (chosen: Chosen) => void
}

function Overview({ of, proof, onChoose }: OverviewProps) {
  const { owed, catalogue } = proof
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <Answer owed={owed} />
        <p className="gap-small">{words.first}</p>
        <p className="gap-small">
          <Link to={pathTo({ page: 'proof-report', ...of })}>{words.report}</Link>
          {' · '}
          <Link to={pathTo({ page: 'shop-sheet', ...of })}>{words.shopSheet}</Link>
        </p>
        <p className="gap-small screen-only">
          <Link to={pathTo({ page: 'links', ...of })}>{linkWords.link}</Link>
        </p>
      </Passage>
      <OpenLines of={of} proof={proof} onChoose={onChoose} />
      {owed.gates.map((gate) => (
        <Stage key={gate.stage} gate={gate} owed={owed} onChoose={onChoose} />
      ))}
      <AnyTest onChoose={onChoose} />
      <Passage title={words.lockOut} says={words.lockOutSays}>
        <LockOutSteps of={of} steps={catalogue.owed.lockOut} />
      </Passage>
      <Passage title={words.handOver} says={words.handOverSays}>
        <Sentences of={catalogue.owed.handOver} />
      </Passage>
    </>
  )
}

function Sentences({ of }: { readonly of: readonly string[] }) {
  const said = useSaid()
  return (
    <ul className="sentences small">
      {of.map((line) => (
        <li key={line}>{said(line)}</li>
      ))}
    </ul>
  )
}

/** A stop line speaks first, then the first step that is shut. */
function Answer({ owed }: { readonly owed: Owed }) {
  const said = useSaid()
  const shut = owed.gates.find(({ open }) => !open)
  const { answer } = words
  if (shut === undefined) {
    return (
      <>
        <Say>
          {answer.clear.before}
          <b>{answer.clear.bold}.</b>
        </Say>
        {owed.tests.length === 0 && <Lead>{answer.silent}</Lead>}
      </>
    )
  }
  const barring = owed.lines.find(({ passedOver }) => passedOver === undefined)
  const next = owed.tests.find(
    ({ is, waitsFor }) => is !== 'passed' && is !== 'passed over' && waitsFor.length === 0,
  )
  const upTo = owed.gates.slice(0, owed.gates.indexOf(shut) + 1).map(({ stage }) => stage)
  const left = owed.tests.filter(
    ({ is, stage }) => is !== 'passed' && is !== 'passed over' && upTo.includes(stage),
  ).length
  return (
    <>
      <Say>
        {barring === undefined ? (
          <>
            {answer.before}
            <b>{shut.opens}</b>
            {answer.owed(left)}
          </>
        ) : (
          <>
            {answer.stop}
            <b>{owed.gates.find(({ stage }) => stage === barring.bars)?.opens ?? shut.opens}</b>:{' '}
            {said(lowerFirst(barring.hazard))}.
          </>
        )}
      </Say>
      {next !== undefined && (
        <Lead>
          {answer.next}
          {said(lowerFirst(next.name))}.
        </Lead>
      )}
    </>
  )
}

function Stage({
  gate,
  owed,
  onChoose,
}: {
  readonly gate: Gate
  readonly owed: Owed
  readonly onChoose: (chosen: Chosen) => void
}) {
  const tests = owed.tests.filter(({ stage }) => stage === gate.stage)
  if (tests.length === 0) return null
  return (
    <Passage title={gate.name} says={gate.open ? words.gateOpen : undefined}>
      <ul className="owed">
        {tests.map((one) => (
          <OwedRow key={`${one.test} ${one.part ?? ''}`} one={one} onChoose={onChoose} />
        ))}
      </ul>
    </Passage>
  )
}

function OwedRow({ one, onChoose }: { readonly one: OwedTest; readonly onChoose: (chosen: Chosen) => void }) {
  const said = useSaid()
  const { test, part, is, because, waitsFor, results, passedOver } = one
  const waits = waitsFor.length > 0 && is !== 'passed' && is !== 'passed over'
  const name = part === undefined ? said(one.name) : `${said(one.name)}, ${part.replaceAll('-', ' ')}`
  const last = results.at(-1)
  return (
    <li className={waits ? 'waits' : ''}>
      <p>
        <b>{name}</b> <State is={is} waits={waits} />
      </p>
      <p className="fine">
        {last === undefined
          ? because.map((one) => sayReason(one, said)).join(' ')
          : `${sayDate(last.date)}: ${said(last.judgement.says)}`}{' '}
        {passedOver?.because} {waits && words.waitsFor(said(waitsFor[0]!), waitsFor.length - 1)}
      </p>
      <Button look={waits || is === 'passed' ? 'light' : 'outlined'} onClick={() => onChoose({ test, part })}>
        {results.length > 0 ? words.again : words.make}
        <span className="unseen">{words.toTest(name)}</span>
      </Button>
    </li>
  )
}

/** The work after which it is owed; without work, why. */
function sayReason({ part, date, why }: OwedTest['because'][number], said: (text: string) => string): string {
  return part === undefined
    ? `${sayDate(date)}: ${said(why)}`
    : `${words.after}${part.replaceAll('-', ' ')}, ${sayDate(date)}.`
}

function State({ is, waits }: { readonly is: OwedTest['is']; readonly waits: boolean }) {
  if (is === 'failed') return <Tag look="solid">{words.is.failed}</Tag>
  if (is === 'cannot tell') return <Tag look="dashed">{words.is['cannot tell']}</Tag>
  if (is === 'owed' && waits) return <Tag look="outline">{words.waits}</Tag>
  return <span className="small">{words.is[is]}</span>
}

function AnyTest({ onChoose }: { readonly onChoose: (chosen: Chosen) => void }) {
  const said = useSaid()
  const id = useId()
  const [test, setTest] = useState(proofTests[0]!.id)
  return (
    <Passage title={words.any} says={words.anySays}>
      <div className="entry-field wide">
        <label htmlFor={id}>{words.anyLabel}</label>
        <select id={id} className="input wide" value={test} onChange={({ target }) => setTest(target.value)}>
          {proofTests.map(({ id: value, name }) => (
            <option key={value} value={value}>
              {said(name)}
            </option>
          ))}
        </select>
      </div>
      <div className="acts">
        <Button onClick={() => onChoose({ test, part: proofTestOf(test)?.parts?.[0] })}>
          {words.choose}
        </Button>
      </div>
    </Passage>
  )
}
