/**
 * One test: its dangers, every step, and only then its fields; the verdict, and the entry.
 *
 * @module
 */

import { useId, useState } from 'react'
import { linesBarring } from '../../proof/owed.js'
import { readingBodyOf, typedFor } from '../../proof/reading-body.js'
import { factOf } from '../../proof/results.js'
import type { Field, Judgement, NumberField, ProofTest, Readings } from '../../proof/test-type.js'
import { isMeterUnit, type MeterUnit } from '../../units/meter.js'
import { spokenUnit } from '../../units/spoken.js'
import { boatFactsOf } from '../data/facts.js'
import { useKeptPictures } from '../data/kept-pictures.js'
import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { PictureChoice } from '../entry/pictures.js'
import { saidProblem } from '../entry/problems.js'
import type { OfSet } from '../of-set.js'
import { Behind, Button, Cautions, Lead, Passage, Say, Stop } from '../parts/index.js'
import { words } from '../words/proof.js'
import type { OfProof } from './of-proof.js'
import { ProofFields, type TypedTest } from './proof-fields.js'
import { LockOutSteps } from './proof-lock-out.js'
import { PassOver } from './proof-pass-over.js'
import { Verdict } from './proof-verdict.js'

const { test: said } = words

export interface OneTestProps {
  readonly of: OfSet
  readonly proof: OfProof
  readonly test: ProofTest
  readonly part: string | undefined
  readonly onDone: () => void
}

interface Kept extends TypedTest {
  readonly part?: string
  readonly sure: readonly string[]
  readonly by: string
  readonly instrument: string
  readonly remark: string
}

const nothing: Kept = { texts: {}, units: {}, sure: [], by: '', instrument: '', remark: '' }

export function OneTest({ of, proof, test, part: partAsked, onDone }: OneTestProps) {
  const inRegion = useSaid()
  const { catalogue, owed, register, limits } = proof
  const { ratingKw } = register.setFacts
  const plan = ratingKw === undefined ? [] : (test.plan?.(ratingKw, limits) ?? [])
  const isDead = test.danger === 'locked out'
  const [clear, setClear] = useState(isDead)
  const one = owed.tests.find((other) => other.test === test.id && (other.part ?? partAsked) === partAsked)
  const barring = linesBarring(test.id, { lines: owed.lines, owed: catalogue.owed })
  const cautions = test.dangers.flatMap((id) => {
    const danger = catalogue.dangers.find((other) => other.id === id)
    return danger === undefined ? [] : [{ hazard: danger.name, says: danger.caution }]
  })
  return (
    <>
      <Passage title={inRegion(test.name)} says={said.taken[test.danger]} first>
        <Say>{inRegion(test.purpose)}</Say>
        <Lead>
          {said.with}
          {inRegion(test.instrument)}.
        </Lead>
        {one !== undefined && one.waitsFor.length > 0 && (
          <p className="gap-small">
            <b>{words.waitsFor(inRegion(one.waitsFor[0]!), one.waitsFor.length - 1)}</b>
          </p>
        )}
        <div className="acts">
          <Button look="light" onClick={onDone}>
            {said.back}
          </Button>
        </div>
      </Passage>
      {barring.length > 0 && (
        <Passage title={said.barred} className="stops">
          {barring.map(({ line, hazard, why, act }) => (
            <Stop key={line} title={`${hazard}: ${why}`}>
              <p>{inRegion(act)}</p>
            </Stop>
          ))}
        </Passage>
      )}
      <Passage title={said.cautions} says={words.first}>
        <Cautions list={cautions} />
        {isDead && (
          <Behind name={said.lockOut}>
            <LockOutSteps of={of} steps={catalogue.owed.lockOut} />
          </Behind>
        )}
      </Passage>
      <Passage title={said.steps} says={said.stepsSays}>
        <ol className="proof-steps">
          {test.steps.map((step) => (
            <li key={step}>{inRegion(step)}</li>
          ))}
        </ol>
        {plan.length > 0 && (
          <ul className="sentences small gap-small">
            {plan.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
        {!clear && (
          <div className="acts">
            <Button look="filled" onClick={() => setClear(true)}>
              {said.clear}
            </Button>
          </div>
        )}
        {!clear && <p className="fine gap-small">{said.clearSays}</p>}
      </Passage>
      {clear && <Taking of={of} proof={proof} test={test} partAsked={partAsked} onDone={onDone} />}
      {one !== undefined && !one.never && one.is !== 'passed' && !proof.log.readOnly && (
        <Passage title={words.is['passed over']}>
          <PassOver of={of} about={test.id} name={inRegion(test.name)} />
        </Passage>
      )}
    </>
  )
}

interface TakingProps {
  readonly of: OfSet
  readonly proof: OfProof
  readonly test: ProofTest
  readonly partAsked: string | undefined
  readonly onDone: () => void
}

function Taking({ of, proof, test, partAsked, onDone }: TakingProps) {
  const id = useId()
  const { log, register, limits } = proof
  const slot = `${of.boat}.${of.set}.proof.${test.id}.${partAsked ?? ''}`
  const [typed, setTyped] = useKept<Kept>(slot, nothing)
  const [files, setFiles] = useKeptPictures(slot)
  const [judgement, setJudgement] = useState<Judgement>()
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({})
  const [problem, setProblem] = useState<string>()
  const spoken = Object.values(boatFactsOf(log.entries).units ?? {})
  const unitOf = (field: NumberField): MeterUnit => {
    const unit = spokenUnit(field.unit, spoken)
    return isMeterUnit(unit) && field.units.includes(unit) ? unit : field.units[0]!
  }
  const told = (field: Field): string | undefined => {
    const value = field.kind === 'number' ? factOf(field.of, register.setFacts) : undefined
    return value === undefined ? undefined : String(value)
  }
  const part = typed.part ?? partAsked ?? test.parts?.[0]
  const change = (next: Partial<Kept>) => {
    setJudgement(undefined)
    setTyped({ ...typed, ...next })
  }
  const read = (sure: readonly string[]) => {
    const readings: Record<string, number | string> = {}
    const misread: Record<string, string> = {}
    for (const field of test.fields) {
      const text = typed.texts[field.id] ?? told(field) ?? ''
      if (text.trim() === '') continue
      const unit = field.kind === 'number' ? (typed.units[field.id] ?? unitOf(field)) : undefined
      const one = typedFor(field, text.replace(',', '.'), unit)
      if (one.ok) readings[field.id] = one.value
      else misread[field.id] = said.wrong(one.allowed)
    }
    for (const code of sure) readings[`sure-${code}`] = 'yes'
    return { readings: readings as Readings, misread }
  }
  const judge = (sure = typed.sure) => {
    const { readings, misread } = read(sure)
    setWrong(misread)
    setJudgement(Object.keys(misread).length > 0 ? undefined : test.judge(readings, limits))
  }
  const onSure = (code: string) => {
    const sure = [...typed.sure, code]
    setTyped({ ...typed, sure })
    judge(sure)
  }
  const keep = async () => {
    const { readings } = read(typed.sure)
    const { by, instrument, remark } = typed
    const body = readingBodyOf(test, readings, {
      ...(part === undefined ? {} : { part }),
      ...(by === '' ? {} : { testedBy: by }),
      ...(instrument === '' ? {} : { instrument }),
      ...(remark === '' ? {} : { remark }),
    })
    const written = await write([{ ...of, from: today(), kind: 'reading', body }], files)
    if (!written.ok) return setProblem(written.problems.map((one) => saidProblem(one)).join(' '))
    setTyped(undefined)
    setFiles([])
    onDone()
  }
  return (
    <>
      <Passage title={said.readings}>
        <form
          onSubmit={(event) => {
            event.preventDefault()
            judge()
          }}
          noValidate
        >
          {test.parts !== undefined && test.parts.length > 1 && (
            <fieldset className="proof-field picks">
              <legend>{said.part}</legend>
              {test.parts.map((name) => (
                <label key={name}>
                  <input
                    type="radio"
                    name={id}
                    checked={part === name}
                    onChange={() => change({ part: name })}
                  />
                  {name.replaceAll('-', ' ')}
                </label>
              ))}
            </fieldset>
          )}
          <ProofFields
            fields={test.fields}
            typed={typed}
            onChange={({ texts, units }) => change({ texts, units })}
            wrong={wrong}
            unitOf={unitOf}
            told={told}
          />
          <div className="proof-fields">
            {(['by', 'instrument', 'remark'] as const).map((name) => (
              <div className="proof-field" key={name}>
                <label htmlFor={`${id}-${name}`}>
                  {said[name]}
                  <span className="fine">, {said.leftOut}</span>
                </label>
                <input
                  id={`${id}-${name}`}
                  className="input wide"
                  autoComplete="off"
                  value={typed[name]}
                  onChange={({ target }) => change({ [name]: target.value })}
                />
              </div>
            ))}
            {!log.readOnly && <PictureChoice files={files} onChange={setFiles} />}
          </div>
          <div className="acts">
            <Button type="submit" look="filled">
              {said.verdict}
            </Button>
          </div>
        </form>
      </Passage>
      {judgement !== undefined && (
        <>
          <Verdict test={test} judgement={judgement} onSure={onSure} />
          <Passage title={said.write}>
            {problem !== undefined && <p className="problem">{problem}</p>}
            {log.readOnly ? (
              <p>{said.readOnly}</p>
            ) : (
              <div className="acts">
                <Button look="filled" onClick={() => void keep()}>
                  {said.write}
                </Button>
              </div>
            )}
          </Passage>
        </>
      )}
    </>
  )
}
