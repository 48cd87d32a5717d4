/**
 * The next look: the stop before it, how it is done, and its outcomes.
 *
 * @module
 */

import { useId, useState } from 'react'
import type { FaultCheck } from '../../catalogue/fault-schema.js'
import { outcomeOfReading } from '../../faults/bands.js'
import type { Suggestion } from '../../faults/diagnose.js'
import { confirmWords } from '../../faults/stop-lines.js'
import { faultName, outcomeName, riskNames, sayChance, unitSign } from '../../faults/words.js'
import { limitsOf } from '../../proof/limits.js'
import { Button, Passage, Stop } from '../parts/index.js'
import { words } from '../words/faults.js'
import { lowerFirst, sayList } from '../words/say.js'
import { SeenSearch } from './faults-ask.js'
import { BackButton } from './faults-back.js'
import type { OfCase } from './of-case.js'

const { look } = words

/** The look that tells most, or another that was picked; what is barred stands below with what clears it. */
export function NextLook(of: OfCase) {
  const { suggestions, barred } = of.diagnosis
  const [picked, setPicked] = useState<string>()
  const now = suggestions.find(({ check }) => check.id === picked) ?? suggestions[0]
  return (
    <Passage
      title={look.title}
      says={now && look.says(minutesOf(now.check), riskNames[now.check.risk])}
      className="screen-only"
    >
      {now === undefined ? <p>{look.none}</p> : <Look key={now.check.id} of={of} now={now} />}
      <SeenSearch of={of} />
      {suggestions.length > 1 && (
        <>
          <p className="small gap">{look.rather}</p>
          <div className="acts listed">
            {suggestions
              .filter((one) => one !== now)
              .map(({ check }) => (
                <Button key={check.id} look="light" onClick={() => setPicked(check.id)}>
                  {`${check.name}, ${minutesOf(check)}`}
                </Button>
              ))}
          </div>
        </>
      )}
      <div className="acts">
        <BackButton {...of} />
      </div>
      {barred.map(({ check, open }) => (
        <p key={check.id} className="small gap-small">
          {look.barred(check.name, sayList(open.map(({ hazard }) => lowerFirst(hazard))))}
        </p>
      ))}
    </Passage>
  )
}

function Look({ of, now }: { readonly of: OfCase; readonly now: Suggestion }) {
  const { model, take, busy } = of
  const { check, ifs, confirm } = now
  const [stands, setStands] = useState(confirm.length === 0)
  const shut = !stands || busy
  return (
    <>
      {confirm.length > 0 && !stands && (
        <Stop
          title={look.gate}
          acts={
            <Button look="filled" onClick={() => setStands(true)}>
              {look.yes}
            </Button>
          }
        >
          <ul className="confirm">
            {confirm.map((line) => (
              <li key={line.id}>
                <b>{line.hazard}.</b> {confirmWords(line).join('. ')}
              </li>
            ))}
          </ul>
        </Stop>
      )}
      <div className={stands ? 'look' : 'look gated'}>
        <h3 className="question">{check.name}</h3>
        <p className="prose">{check.how}</p>
        {check.risk === 'energised' && <p className="prose">{look.live}</p>}
        {check.tools.length > 0 && <p className="small prose">{look.tools(sayList(check.tools))}</p>}
        <div className="acts">
          {check.outcomes.map(({ id, name }) => (
            <Button key={id} disabled={shut} onClick={() => take({ check: check.id, outcome: id })}>
              {name}
            </Button>
          ))}
          <Button look="light" disabled={busy} onClick={() => take({ check: check.id, couldNot: true })}>
            {look.couldNot}
          </Button>
        </div>
        {check.reading !== undefined && <ReadingTaken of={of} check={check} shut={shut} />}
        {!stands && <p className="fine gap-small">{look.opens}</p>}
      </div>
      <ul className="ifs small">
        {ifs.map((one) => (
          <li key={one.outcome}>
            {look.why({
              outcome: outcomeName(model, check.id, one.outcome),
              chance: sayChance(one.chance),
              leads: lowerFirst(faultName(model, one.leads)),
              leadsChance: sayChance(one.leadsChance),
            })}
          </li>
        ))}
      </ul>
    </>
  )
}

/** A number in the place of a word: it falls into its band. */
function ReadingTaken({
  of,
  check,
  shut,
}: {
  readonly of: OfCase
  readonly check: FaultCheck
  readonly shut: boolean
}) {
  const [typed, setTyped] = useState({ value: '', against: '', winding: '' })
  const [wrong, setWrong] = useState<string>()
  const reading = check.reading!
  const unit = unitSign(reading.unit)
  const submit = () => {
    const { volts, hertz } = of.register.setFacts
    const [value, against, windingC] = [typed.value, typed.against, typed.winding].map(numberIn)
    if (value === undefined) return setWrong(reading.what)
    const rated = { volts: volts === undefined ? undefined : Math.max(...volts), hertz }
    const by = { rated, limits: limitsOf(of.catalogue) }
    const banded = outcomeOfReading(check, { value, against, windingC }, by)
    if (!banded.ok) return setWrong(banded.problems.map(({ allowed }) => allowed).join('; '))
    of.take({
      check: check.id,
      outcome: banded.outcome,
      value,
      ...(against === undefined ? {} : { against }),
      ...(windingC === undefined ? {} : { windingC }),
    })
  }
  const field = (name: keyof typeof typed, label: string) => (
    <TypedNumber
      label={label}
      value={typed[name]}
      onChange={(text) => setTyped({ ...typed, [name]: text })}
      disabled={shut}
    />
  )
  return (
    <form
      className="reading gap"
      onSubmit={(event) => {
        event.preventDefault()
        submit()
      }}
    >
      {field('value', look.number(`${reading.what}, ${unit}`))}
      {reading.against !== undefined && field('against', look.against(`${reading.against}, ${unit}`))}
      {reading.corrected === 'winding' && field('winding', look.winding)}
      <Button type="submit" disabled={shut}>
        {look.take}
      </Button>
      <div aria-live="polite">{wrong !== undefined && <p className="problem">{wrong}</p>}</div>
    </form>
  )
}

function TypedNumber(of: {
  readonly label: string
  readonly value: string
  readonly onChange: (text: string) => void
  readonly disabled: boolean
}) {
  const id = useId()
  return (
    <div className="entry-field">
      <label htmlFor={id}>{of.label}</label>
      <input
        id={id}
        className="input number"
        inputMode="decimal"
        autoComplete="off"
        value={of.value}
        disabled={of.disabled}
        onChange={({ target }) => of.onChange(target.value)}
      />
    </div>
  )
}

function numberIn(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'))
  return text.trim() === '' || !Number.isFinite(value) ? undefined : value
}

function minutesOf({ minutes }: Pick<FaultCheck, 'minutes'>): string {
  return `${minutes} minutes`
}
