/**
 * A recording of a meter, read in pieces: which column holds what is shown and can be changed, then it is written in.
 *
 * @module
 */

import { useEffect, useId, useState } from 'react'
import type { DateOrder } from '../../logbook/paper-log-dates.js'
import type { DemandBasis } from '../../sizing/demand-basis.js'
import { readAnyRecording } from '../../sizing/measured-any.js'
import type { MeasuredField, MeasuredUnit } from '../../sizing/measured-columns.js'
import type { SignalKOptions } from '../../sizing/measured-signalk.js'
import {
  chancesWhileOn,
  curveOf,
  loadAt,
  type MeasuredBody,
  measuredBody,
} from '../../sizing/measured-summary.js'
import type { BadRow, Measured, MeasuredOptions } from '../../sizing/measured-table.js'
import type { BoatPlan } from '../../sizing/plan-whole.js'
import { spoken } from '../../sizing/say-size.js'
import { sha256 } from '../../units/sha-256.js'
import type { Boat } from '../data/boat.js'
import { today } from '../data/today.js'
import { Duration } from '../marks/duration.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { words as said } from '../words/measured.js'
import { words as planWords } from '../words/plan.js'
import { BasisChoice } from './basis-choice.js'
import { MeasuredSays } from './measured-says.js'
import { Picked, Typed } from './plan-fields.js'

export interface MeasuredInProps {
  readonly boat: Boat
  readonly set: string
  readonly plan: BoatPlan | undefined
  readonly recording: MeasuredBody | undefined
  readonly onBasis: (basis: DemandBasis) => void
}

/** What a person says of the table. */
interface Asked {
  readonly time: string
  readonly power: string
  readonly as: '' | 'power W' | 'power kW' | 'current A' | 'apparent VA' | 'energy kWh'
  readonly volts: string
  readonly dates: '' | DateOrder
  /** Of several Signal K sources the one. */
  readonly path: string
}

const unasked: Asked = { time: '', power: '', as: '', volts: '', dates: '', path: '' }

export function MeasuredIn({ boat, set, plan, recording, onBasis }: MeasuredInProps) {
  const id = useId()
  const [file, setFile] = useState<File>()
  const [asked, setAsked] = useState<Asked>(unasked)
  const [written, setWritten] = useState(false)
  const { read, share, sha256: digest } = useRecording(file, asked)
  const put = (field: keyof Asked) => (value: string) => setAsked({ ...asked, [field]: value })
  const write = async () => {
    if (!read?.ok || file === undefined || digest === undefined) return
    const body = measuredBody(read.folded, read.read, {
      of: 'set',
      file: { name: file.name.slice(0, 200), sha256: digest, bytes: Math.max(1, file.size) },
    })
    const dated = read.read.times !== 'elapsed-seconds'
    const dates = dated
      ? { from: dayOf(read.folded.firstTime), until: dayOf(read.folded.lastTime) }
      : { from: today() }
    const done = await boat.append([{ boat: boat.id, set, kind: 'measured', body, ...dates }])
    setWritten(done.ok)
    if (done.ok) setFile(undefined)
  }
  return (
    <Passage title={said.title} says={said.says}>
      {recording && plan && <BasisChoice chosen={plan.basis} onChoose={onBasis} />}
      {recording && <Recorded recording={recording} plan={plan} />}
      {boat.readOnly ? (
        <p className="small gap">{planWords.ask.readOnly}</p>
      ) : (
        <>
          <div className="entry-fields">
            <div className="entry-field wide">
              <label htmlFor={id}>{said.choose}</label>
              <input
                id={id}
                className="file"
                type="file"
                accept=".csv,.tsv,.txt,.log,.json,.jsonl,.ndjson,text/csv,text/plain,application/json"
                onChange={({ target }) => {
                  setWritten(false)
                  setAsked(unasked)
                  setFile(target.files?.[0])
                }}
              />
            </div>
            {file && <Mapping asked={asked} put={put} read={read} />}
          </div>
          <div className="measured-read" aria-live="polite">
            {written && <p className="written">{said.written}</p>}
            {file && read === undefined && <p className="second">{said.reading(Math.round(100 * share))}</p>}
            {read && !read.ok && <Wrong read={read} />}
            {read?.ok && <Found read={read} onWrite={() => void write()} />}
          </div>
        </>
      )}
    </Passage>
  )
}

/** What a table can be told of its columns; of a recorded stream, which of its sources is meant. */
function Mapping({
  asked,
  put,
  read,
}: {
  readonly asked: Asked
  readonly put: (field: keyof Asked) => (value: string) => void
  readonly read: Measured | undefined
}) {
  const known = useHeadings(read)
  const sources = useSources(read)
  if (sources.length > 0) {
    return (
      <Picked name={said.signalPath} value={asked.path} onChange={put('path')}>
        {[['', '–'] as const, ...sources.map((source) => [source, source] as const)]}
      </Picked>
    )
  }
  const columns = [['', said.asRead] as const, ...known.map((heading) => [heading, heading] as const)]
  return (
    <>
      <Picked name={said.column.time} value={asked.time} onChange={put('time')}>
        {columns}
      </Picked>
      <Picked name={said.column.power} value={asked.power} onChange={put('power')}>
        {columns}
      </Picked>
      <Picked name={said.unit} value={asked.as} onChange={put('as')}>
        {[
          ['', said.asRead],
          ['power W', 'W'],
          ['power kW', 'kW'],
          ['apparent VA', 'VA'],
          ['current A', 'A'],
          ['energy kWh', 'kWh'],
        ]}
      </Picked>
      <Picked name={said.dates} value={asked.dates} onChange={put('dates')}>
        {[
          ['', said.asRead],
          ['day-first', said.dayFirst],
          ['month-first', said.monthFirst],
        ]}
      </Picked>
      <Typed name={said.volts} value={asked.volts} onChange={put('volts')} />
    </>
  )
}

/** Sources of a recorded stream as last seen. */
function useSources(read: Measured | undefined): readonly string[] {
  const [known, setKnown] = useState<readonly string[]>([])
  useEffect(() => {
    const problem = read?.ok === false ? read.problems[0] : undefined
    if (problem?.code === 'several-sources') setKnown(problem.found.split(', '))
    else if (problem !== undefined) setKnown([])
  }, [read])
  return known
}

/** Headings as last seen, so that the choice stays while a table is read anew. */
function useHeadings(read: Measured | undefined): readonly string[] {
  const [known, setKnown] = useState<readonly string[]>([])
  useEffect(() => {
    if (read?.ok) setKnown([...read.read.columns.map(({ heading }) => heading), ...read.read.otherColumns])
    else if (read?.problems[0]?.code === 'no-headings') {
      const line = read.problems[0].found.replace(/^"|"$/g, '')
      setKnown(line.split(/[,;\t|]/).filter((heading) => heading !== ''))
    }
  }, [read])
  return known
}

function Wrong({ read }: { readonly read: Extract<Measured, { ok: false }> }) {
  return (
    <>
      <p className="problem">{said.wrong}</p>
      <ul className="small">
        {read.problems.map(({ code, found, allowed }) => (
          <li key={code}>
            {found}; {allowed}
          </li>
        ))}
      </ul>
      <BadRows bad={read.bad} count={read.bad.length} />
    </>
  )
}

function Found({
  read: { folded, read },
  onWrite,
}: {
  readonly read: Extract<Measured, { ok: true }>
  readonly onWrite: () => void
}) {
  const whole = (value: number) => Math.round(value).toLocaleString('en-GB')
  return (
    <>
      <p>
        <b>
          {said.found(
            whole(read.rows),
            spoken(folded.coveredS / 3600),
            spoken(folded.kWh),
            spoken(folded.mostKW),
          )}
        </b>
      </p>
      <p className="small prose">
        {said.how}{' '}
        {read.columns
          .map(({ field, heading, unit }) => `${field}: “${heading}”${unit === '' ? '' : `, ${unit}`}`)
          .join('; ')}
        . {read.assumed.map((one) => `${one}.`).join(' ')}
      </p>
      <BadRows bad={read.bad} count={read.badRows} />
      <div className="acts">
        <Button look="filled" onClick={onWrite}>
          {said.write}
        </Button>
      </div>
    </>
  )
}

function BadRows({ bad, count }: { readonly bad: readonly BadRow[]; readonly count: number }) {
  if (count === 0) return null
  return (
    <Behind name={said.bad(count.toLocaleString('en-GB'))}>
      <ul className="small">
        {bad.slice(0, 100).map(({ line, found }) => (
          <li key={line}>
            {said.line(line)}: {found}
          </li>
        ))}
      </ul>
    </Behind>
  )
}

/** What was recorded and what the list tells, as load-duration curves over each other. */
function Recorded({ recording, plan }: Pick<MeasuredInProps, 'plan'> & { readonly recording: MeasuredBody }) {
  const curve = curveOf(chancesWhileOn(recording), recording.stepKw)
  const at = (share: number) => spoken(loadAt(curve, share))
  const measured = plan?.measured
  const listed = measured?.listed ?? []
  return (
    <>
      {measured && <MeasuredSays measured={measured} basis={plan.basis} />}
      <Duration
        curve={curve}
        {...(listed.length === 0
          ? {}
          : {
              beside: { curve: listed, names: { curve: said.curves.recorded, beside: said.curves.listed } },
            })}
        ratings={
          plan === undefined
            ? []
            : [{ name: `${spoken(plan.ratingKW)} kW`, kW: plan.ratingKW, present: true }]
        }
        words={{ drawing: said.curve(at(0.5), at(0.05), at(0.01)), axis: said.axis }}
      />
    </>
  )
}

function dayOf(seconds: number): string {
  return new Date(1000 * seconds).toISOString().slice(0, 10)
}

function optionsOf({ time, power, as, volts, dates, path }: Asked): MeasuredOptions & SignalKOptions {
  const [field, unit] = as === '' ? ['power', ''] : as.split(' ')
  const columns: Partial<Record<MeasuredField, string>> = {
    ...(time === '' ? {} : { time }),
    ...(power === '' ? {} : { [field!]: power }),
  }
  const number = Number(volts.replace(',', '.'))
  return {
    columns,
    ...(unit === '' ? {} : { units: { [field!]: unit as MeasuredUnit } }),
    ...(number > 0 ? { volts: number } : {}),
    ...(dates === '' ? {} : { dateOrder: dates }),
    ...(path === '' ? {} : { path }),
  }
}

interface Reading {
  readonly read: Measured | undefined
  /** Of the file, so far. */
  readonly share: number
  readonly sha256?: string
}

/** Reads a file in pieces, giving the page its turn between them, and takes its digest meanwhile. */
function useRecording(file: File | undefined, asked: Asked): Reading {
  const [state, setState] = useState<Reading>({ read: undefined, share: 0 })
  useEffect(() => {
    setState({ read: undefined, share: 0 })
    if (file === undefined) return
    let isWanted = true
    void (async () => {
      const reader = readAnyRecording(optionsOf(asked))
      const digest = sha256()
      const stream = file.stream().getReader()
      let decoder = new TextDecoder('utf-8')
      let done = 0
      for (;;) {
        const piece = await stream.read()
        if (!isWanted) return void stream.cancel()
        if (piece.done) break
        if (done === 0 && piece.value[0] === 0xff && piece.value[1] === 0xfe) {
          decoder = new TextDecoder('utf-16le')
        }
        digest.take(piece.value)
        reader.take(decoder.decode(piece.value, { stream: true }))
        done += piece.value.length
        setState({ read: undefined, share: Math.min(1, done / Math.max(1, file.size)) })
      }
      setState({ read: reader.end(), share: 1, sha256: digest.end() })
    })()
    return () => {
      isWanted = false
    }
  }, [file, asked])
  return state
}
