/**
 * How the boat is used: the months in which she is, and what a usual year of the set comes to.
 *
 * @module
 */

import type { Draft } from '../../logbook/draft.js'
import { isKind } from '../../logbook/kinds.js'
import type { Boat } from '../data/boat.js'
import { boatFactsOf } from '../data/facts.js'
import { today } from '../data/today.js'
import { Fields } from '../entry/field-inputs.js'
import { fieldsOf, keysOf } from '../entry/fields.js'
import { wrongOf } from '../entry/problems.js'
import { bodyOf, type Values, valuesOf } from '../entry/values.js'
import { settings } from '../words/settings.js'
import { SettingsForm, useSettings } from './settings-form.js'

const words = settings.use

interface Typed {
  readonly months: Values
  readonly year: Values
}

const monthFields = fieldsOf('boat').filter(({ key }) => key === 'monthsInUse')
const yearFields = fieldsOf('use').filter(({ key }) => key !== 'remark')
const keys = keysOf([...monthFields, ...yearFields])

export function SettingsUse({ boat, set }: { readonly boat: Boat; readonly set: string }) {
  const latest = boat.entries.findLast((entry) => entry.set === set && isKind(entry, 'use'))
  const now: Typed = {
    months: valuesOf(monthFields, boatFactsOf(boat.entries)),
    year: valuesOf(yearFields, latest?.body ?? {}),
  }
  const of = useSettings<Typed>({
    key: `${boat.id}.${set}.use`,
    now,
    keys,
    draftsOf: (typed) => draftsOf(typed, { now, boat: boat.id, set }),
  })
  const { typed, change } = of
  const shared = { wrong: of.wrong, catalogue: undefined, sign: '' }
  return (
    <SettingsForm {...words} readOnly={boat.readOnly} of={of}>
      <Fields
        {...shared}
        kind="boat"
        fields={monthFields}
        values={typed.months}
        onChange={(months) => change({ months })}
      />
      <Fields
        {...shared}
        kind="use"
        fields={yearFields}
        values={typed.year}
        onChange={(year) => change({ year })}
      />
    </SettingsForm>
  )
}

function draftsOf(
  typed: Typed,
  { now, boat, set }: { readonly now: Typed; readonly boat: string; readonly set: string },
) {
  const day = today()
  const months = bodyOf(monthFields, typed.months, { today: day })
  const year = bodyOf(yearFields, typed.year, { today: day })
  const of = { boat, from: day }
  const list = [
    differ(typed.months, now.months) && { ...of, set: null, kind: 'boat', body: months.body },
    differ(typed.year, now.year) && { ...of, set, kind: 'use', body: year.body },
  ].filter((draft) => draft !== false) as Draft[]
  return { list, unread: wrongOf([], year.misread, []) }
}

function differ(now: Values, before: Values): boolean {
  const text = (values: Values) =>
    JSON.stringify(
      Object.entries(values)
        .filter(([key, value]) => value !== '' && !key.endsWith('#'))
        .sort(),
    )
  return text(now) !== text(before)
}
