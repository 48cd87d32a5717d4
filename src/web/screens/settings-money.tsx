/**
 * Currency, price factor, and what the owner reckons with.
 *
 * @module
 */

import { useId } from 'react'
import type { Draft } from '../../logbook/draft.js'
import type { Terms } from '../../register/register-types.js'
import type { Boat } from '../data/boat.js'
import { boatFactsOf, termsOf } from '../data/facts.js'
import { type FuelMeasure, fuelMeasureOf, keptPrice, spokenPrice } from '../data/fuel.js'
import { today } from '../data/today.js'
import { Fields } from '../entry/field-inputs.js'
import { fieldsOf, keysOf } from '../entry/fields.js'
import { wrongOf } from '../entry/problems.js'
import { bodyOf, type Values, valuesOf } from '../entry/values.js'
import { words as alternatives } from '../words/alternatives.js'
import { currencies, settings } from '../words/settings.js'
import { SettingsForm, useSettings } from './settings-form.js'

const words = settings.money

/** What a place has to say of money. */
interface Typed {
  readonly currency: string
  readonly factor: Values
  readonly terms: Values
}

const factorFields = fieldsOf('boat').filter(({ key }) => key === 'priceFactor')
const termFields = fieldsOf('terms').filter(({ key }) => key !== 'remark')
const keys = keysOf([...factorFields, ...termFields])

export function SettingsMoney({ boat, set }: { readonly boat: Boat; readonly set: string }) {
  const id = useId()
  const facts = boatFactsOf(boat.entries)
  const terms = termsOf(boat.entries)
  const measure = fuelMeasureOf(facts)
  const now: Typed = {
    currency: facts.currency ?? '',
    factor: valuesOf(factorFields, facts),
    terms: valuesOf(termFields, spokenTerms(terms, measure)),
  }
  const of = useSettings<Typed>({
    key: `${boat.id}.${set}.settings`,
    now,
    keys,
    draftsOf: (typed) => draftsOf(typed, { boat, before: now, measure }),
  })
  const { typed, change } = of
  const shared = { wrong: of.wrong, catalogue: undefined, sign: typed.currency }
  return (
    <SettingsForm {...words} readOnly={boat.readOnly} of={of}>
      <div className="entry-fields">
        <div className="entry-field">
          <label htmlFor={id}>{words.currency}</label>
          <select
            id={id}
            className="input wide"
            value={typed.currency}
            onChange={({ target }) => change({ currency: target.value })}
          >
            <option value="">{settings.units.notSaid}</option>
            {[...new Set([...currencies, ...(typed.currency ? [typed.currency] : [])])].map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </div>
      </div>
      <p className="fine prose gap-small">{words.currencyHelp}</p>
      <Fields
        {...shared}
        kind="boat"
        fields={factorFields}
        values={typed.factor}
        onChange={(factor) => change({ factor })}
      />
      <p className="fine prose gap-small">{words.factorHelp}</p>
      <h3 className="gap">{words.terms}</h3>
      <p className="fine">{words.termsSay}</p>
      <Fields
        {...shared}
        kind="terms"
        names={{ fuelPerLitre: alternatives.tried.fuel(measure.name).name }}
        fields={termFields}
        values={typed.terms}
        onChange={(values) => change({ terms: values })}
      />
    </SettingsForm>
  )
}

/** Only what was changed is written: each field holds until it is given again. */
function draftsOf(
  typed: Typed,
  { boat, before, measure }: { readonly boat: Boat; readonly before: Typed; readonly measure: FuelMeasure },
) {
  const day = today()
  const factor = bodyOf(factorFields, typed.factor, { today: day })
  const terms = bodyOf(termFields, typed.terms, { today: day })
  const unread = wrongOf([], { ...factor.misread, ...terms.misread }, [])
  const boatBody = {
    ...(typed.currency !== '' && typed.currency !== before.currency ? { currency: typed.currency } : {}),
    ...changed(factor.body, bodyOf(factorFields, before.factor, { today: day }).body),
  }
  const termsBody = keptTerms(
    changed(terms.body, bodyOf(termFields, before.terms, { today: day }).body),
    measure,
  )
  const of = { boat: boat.id, set: null, from: day } as const
  const list: Draft[] = []
  if (Object.keys(boatBody).length > 0) list.push({ ...of, kind: 'boat', body: boatBody } as Draft)
  if (Object.keys(termsBody).length > 0) list.push({ ...of, kind: 'terms', body: termsBody } as Draft)
  return { list, unread }
}

function changed(now: object, before: object): object {
  const known = before as Readonly<Record<string, unknown>>
  const differs = ([key, value]: [string, unknown]) => JSON.stringify(value) !== JSON.stringify(known[key])
  return Object.fromEntries(Object.entries(now).filter(differs))
}

/** Fuel is bought by the measure that is spoken aboard, and its price kept by the litre. */
function spokenTerms(terms: Terms, measure: FuelMeasure): Terms {
  const { fuelPerLitre } = terms
  return fuelPerLitre === undefined ? terms : { ...terms, fuelPerLitre: spokenPrice(fuelPerLitre, measure) }
}

function keptTerms(body: Terms, measure: FuelMeasure): Terms {
  const { fuelPerLitre } = body
  return typeof fuelPerLitre === 'number' ? { ...body, fuelPerLitre: keptPrice(fuelPerLitre, measure) } : body
}
