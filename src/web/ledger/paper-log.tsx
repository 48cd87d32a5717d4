/**
 * An old paper log, typed into a table: read, judged, looked through, and then written in; all of it or nothing.
 *
 * @module
 */

import { type ReactNode, useId, useState } from 'react'
import { type HowRead, type PaperLog, type PaperLogOptions, readPaperLog } from '../../logbook/paper-log.js'
import { partNamesOf } from '../../logbook/part-names.js'
import type { Problem } from '../../logbook/problems.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import { Behind, Button, Heads, Passage, WideTable } from '../parts/index.js'
import { logbook } from '../words/logbook.js'
import { plural } from '../words/say.js'
import type { RowOf } from './entry-row.js'

const words = logbook.paper

type Order = '' | NonNullable<PaperLogOptions['dateOrder']>
type Mark = '' | NonNullable<PaperLogOptions['decimal']>

export function PaperLogIn({ of }: { readonly of: RowOf }) {
  const [text, setText] = useState<string>()
  const [order, setOrder] = useState<Order>('')
  const [mark, setMark] = useState<Mark>('')
  const [said, setSaid] = useState('')
  const [refused, setRefused] = useState<readonly Problem[]>([])
  const id = useId()
  const read = text === undefined ? undefined : readTable(text, { of, order, mark })
  const enter = async () => {
    if (read === undefined || !read.ok) return
    const written = await write(read.drafts)
    if (!written.ok) return setRefused(written.problems)
    setSaid(words.written(plural(written.ids.length, ...logbook.entry)))
    setText(undefined)
    setRefused([])
  }
  const choose = async (file: File | undefined) => {
    setSaid('')
    setRefused([])
    setText(await file?.text())
  }
  const problems = read !== undefined && !read.ok ? read.problems : refused
  return (
    <Passage title={words.title} says={words.says}>
      <div className="entry-fields">
        <div className="entry-field wide">
          <label htmlFor={id}>{words.choose}</label>
          <input
            id={id}
            className="file"
            type="file"
            accept=".csv,text/csv,text/plain"
            onChange={({ target }) => void choose(target.files?.[0])}
          />
        </div>
        {text !== undefined && (
          <>
            <Picked name={words.dateOrder} value={order} onChange={(next) => setOrder(next as Order)}>
              <option value="">{words.asShown}</option>
              <option value="day-first">{words.dayFirst}</option>
              <option value="month-first">{words.monthFirst}</option>
            </Picked>
            <Picked name={words.decimal} value={mark} onChange={(next) => setMark(next as Mark)}>
              <option value="">{words.asNumbersShow}</option>
              <option value="point">{words.point}</option>
              <option value="comma">{words.comma}</option>
            </Picked>
          </>
        )}
      </div>
      <div aria-live="polite">
        {said && <p className="written">{said}</p>}
        {problems.length > 0 && <Problems list={problems} />}
        {read?.ok && problems.length === 0 && <Found read={read} onWrite={() => void enter()} />}
      </div>
    </Passage>
  )
}

function readTable(
  text: string,
  { of, order, mark }: { readonly of: RowOf; readonly order: Order; readonly mark: Mark },
): PaperLog {
  return readPaperLog(text, {
    boat: of.boat,
    set: of.set,
    ...(order === '' ? {} : { dateOrder: order }),
    ...(mark === '' ? {} : { decimal: mark }),
    ...(of.catalogue === undefined ? {} : { parts: partNamesOf(of.catalogue.parts) }),
  })
}

function Picked({
  name,
  value,
  onChange,
  children,
}: {
  readonly name: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly children: ReactNode
}) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{name}</label>
      <select id={id} className="input wide" value={value} onChange={({ target }) => onChange(target.value)}>
        {children}
      </select>
    </div>
  )
}

/** Every problem by its line. */
function Problems({ list }: { readonly list: readonly Problem[] }) {
  return (
    <>
      <p className="problem">{words.wrong(list.length)}</p>
      <WideTable name={words.problem}>
        <table className="table">
          <Heads list={[words.line, words.problem]} />
          <tbody>
            {list.slice(0, 200).map((problem) => (
              <tr key={`${problem.code} ${problem.path} ${problem.found}`}>
                <td className="whole">{problem.path}</td>
                <td>{saidProblem(problem, '')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </>
  )
}

/** How the table was understood, to be looked through before it is written. */
function Found({
  read: { drafts, read },
  onWrite,
}: {
  readonly read: Extract<PaperLog, { ok: true }>
  readonly onWrite: () => void
}) {
  return (
    <>
      <p>
        <b>{words.found(plural(drafts.length, ...logbook.entry), plural(read.rows, 'row'))}</b>
      </p>
      <p className="small prose">{sayRead(read)}</p>
      {read.guessed.length > 0 && (
        <Behind name={`${words.guessed}, ${read.guessed.length}`}>
          <ul className="small">
            {read.guessed.map(({ row, as }) => (
              <li key={row}>
                {words.row(row)}: {as}
              </li>
            ))}
          </ul>
        </Behind>
      )}
      {read.unknownParts.length > 0 && (
        <Behind name={`${words.unknown}, ${read.unknownParts.length}`}>
          <ul className="small">
            {read.unknownParts.map(({ row, found }) => (
              <li key={row}>
                {words.row(row)}: {found}
              </li>
            ))}
          </ul>
        </Behind>
      )}
      <div className="acts">
        <Button look="filled" onClick={onWrite}>
          {words.write}
        </Button>
      </div>
    </>
  )
}

function sayRead({ columns, otherColumns }: HowRead): string {
  const pairs = Object.entries(columns).map(([field, heading]) => words.column(field, heading))
  return [
    words.columns(pairs.join(', ')),
    otherColumns.length === 0 ? '' : words.remarks(otherColumns.join(', ')),
  ]
    .filter(Boolean)
    .join(' ')
}
