/**
 * Lists in a form: months as words to tick, and the points of a price that grows with days.
 *
 * @module
 */

import { useId } from 'react'
import { PlainButton } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { monthName } from '../words/say.js'
import { monthsTyped, type Point, pointsText, pointsTyped } from './lists.js'

interface ListProps {
  readonly name: string
  readonly text: string
  readonly set: (text: string) => void
  readonly invalid: boolean
}

/** Months by their names; each is a word that is ticked or not. */
export function MonthsInput({ text, set }: ListProps) {
  const chosen = monthsTyped(text)
  return (
    <div className="picks months">
      {Array.from({ length: 12 }, (_, at) => at + 1).map((month) => (
        <label key={month}>
          <input
            type="checkbox"
            checked={chosen.includes(month)}
            onChange={({ target }) =>
              set(
                [...chosen.filter((one) => one !== month), ...(target.checked ? [month] : [])]
                  .sort((a, b) => a - b)
                  .join(' '),
              )
            }
          />
          {monthName(month - 1)}
        </label>
      ))}
    </div>
  )
}

/** Rows of so many days and what they cost in all. One empty row stands below for the next. */
export function PointsInput({ name, text, set, invalid, sign }: ListProps & { readonly sign: string }) {
  const id = useId()
  const points = pointsTyped(text)
  const shown: readonly Point[] = points.length === 0 ? [{ days: '', price: '' }] : points
  const change = (at: number, next: Partial<Point>) =>
    set(pointsText(shown.map((point, index) => (index === at ? { ...point, ...next } : point))))
  const field = (at: number, key: keyof Point, says: string) => (
    <div className="entry-field">
      <label htmlFor={`${id}-${at}-${key}`}>
        {says}
        <span className="unseen">
          , {name} {at + 1}
        </span>
      </label>
      <input
        id={`${id}-${at}-${key}`}
        className="input number"
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={invalid || undefined}
        value={shown[at]![key]}
        onChange={({ target }) => change(at, { [key]: target.value })}
      />
    </div>
  )
  return (
    <>
      {shown.map((_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place alone
        <div className="entry-point" key={at}>
          {field(at, 'days', form.pointDays)}
          {field(at, 'price', `${form.pointPrice}${form.typedIn(sign)}`)}
          {shown.length > 1 && (
            <PlainButton className="row-drop" onClick={() => set(pointsText(shown.toSpliced(at, 1)))}>
              {form.dropRow}
              <span className="unseen">
                , {name} {at + 1}
              </span>
            </PlainButton>
          )}
        </div>
      ))}
      <PlainButton onClick={() => set(pointsText([...shown, { days: '', price: '' }]))}>
        {form.addPoint}
      </PlainButton>
    </>
  )
}
