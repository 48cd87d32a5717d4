/**
 * What figures come from: entries by their numbers, figures of the catalogue with their source, and fields to set them.
 *
 * @module
 */

import { type ReactNode, useEffect, useState } from 'react'
import type { Basis } from '../../alternatives/figures.js'
import type { Draft } from '../../logbook/draft.js'
import type { Entry } from '../../logbook/kinds.js'
import type { Boat } from '../data/boat.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { Overrule } from '../parts/index.js'
import { figures as words } from '../words/figures.js'
import { words as forecastWords } from '../words/forecast.js'
import { sayDate, sayList, sayMoney, sayNumber } from '../words/say.js'
import { shell } from '../words/shell.js'
import { describeFigure } from '../work/answers.js'
import type { FigureSource } from '../work/messages.js'
import { draftOfTerms, type TermsTried, whatWasWrong } from './terms-tried.js'

/** What an answer or a forecast starts from, with its log. */
export interface OfBasis {
  readonly basis: Basis
  readonly log: Boat
  readonly keyOfAnswer: string
}

const numbersOf = new WeakMap<readonly Entry[], ReadonlyMap<string, number>>()

/** The number of an entry, as it stands in the logbook. */
function numberIn(log: Boat, id: string): number | undefined {
  let numbers = numbersOf.get(log.kept)
  if (numbers === undefined) {
    numbers = new Map(log.kept.map((entry, at) => [entry.id, at + 1]))
    numbersOf.set(log.kept, numbers)
  }
  return numbers.get(id)
}

/** So many numbers are told; of the rest how many there are. */
const mostTold = 12

/** "entries 12, 40 and 51 of the log": the latest of many. */
export function sayEntries(log: Boat, ids: readonly string[]): string {
  const numbers = [...new Set(ids)].flatMap((id) => numberIn(log, id) ?? []).sort((a, b) => b - a)
  if (numbers.length === 0) return words.entryUnsent
  const said = (number: number) => number.toLocaleString('en-GB')
  if (numbers.length === 1) return words.entry(said(numbers[0]!))
  const told = numbers.slice(0, mostTold).toReversed().map(said)
  const more = numbers.length - told.length
  return words.entries(more > 0 ? told.join(', ') : sayList(told), more)
}

/** One entry with its day. */
export function sayEntry(log: Boat, id: string): string {
  const entry = log.entries.find((each) => each.id === id)
  const said = sayEntries(log, [id])
  return entry === undefined ? said : words.givenOn(said, sayDate(entry.from))
}

/** What figures of a part rest on. */
export function sayRestsOn(log: Boat, ids: readonly string[]): string {
  return ids.length === 0 ? words.catalogueOnly : words.andCatalogue(sayEntries(log, ids))
}

/** A figure of the catalogue by its path, and what it is called. */
export interface NamedPath {
  readonly path: string
  readonly name: string
}

/** Figures of the catalogue, each with its source and a field to set it oneself. */
function CatalogueFigures({ of, list }: { readonly of: OfBasis; readonly list: readonly NamedPath[] }) {
  return (
    <>
      {list.map((named) => (
        <CatalogueFigure key={named.path} {...named} of={of} />
      ))}
    </>
  )
}

function CatalogueFigure({ path, name, of }: NamedPath & { readonly of: OfBasis }) {
  const { log, basis, keyOfAnswer } = of
  const [figure, setFigure] = useState<FigureSource | 'looking' | undefined>('looking')
  // biome-ignore lint/correctness/useExhaustiveDependencies: with another basis the figure may be another
  useEffect(() => {
    let here = true
    void describeFigure(keyOfAnswer, path).then((found) => here && setFigure(found))
    return () => {
      here = false
    }
  }, [keyOfAnswer, path, basis])
  if (figure === 'looking') return <span className="set-by-you second">{words.looking}</span>
  if (figure === undefined) return null
  const unit = sayUnit(figure.unit)
  const write = async (value: number) => {
    const { boat, set } = basis.register
    const draft = { kind: 'overrule', boat, set, from: today(), body: { path, value } } as Draft
    const written = await log.append([draft])
    return written.ok ? undefined : whatWasWrong(written.problems)
  }
  return (
    <SetByYou
      name={name}
      value={`${sayNumber(figure.value)} ${unit}`.trim()}
      from={
        <>
          {figure.catalogueValue !== figure.value &&
            `${words.inCatalogue(sayNumber(figure.catalogueValue))}; `}
          {figure.sourceTitle}, {figure.place}; {shell.held[figure.held]}
        </>
      }
      unit={unit}
      placeholder={Number(figure.value.toPrecision(3))}
      readOnly={log.readOnly}
      onWrite={write}
    />
  )
}

function sayUnit(unit: string): string {
  const [head = '', ...rest] = unit.split('/')
  const named = forecastWords.units[head] ?? head
  return rest.length === 0 ? named : `${named} / ${rest.join(' / ')}`
}

/** A term that the owner reckons with. */
export interface NamedTerm {
  readonly field: Exclude<keyof TermsTried, 'powerFactor'> | 'perDay'
  readonly name: string
  readonly value: number | undefined
  readonly unit: string
  readonly isMoney: boolean
  /** From what is typed to what is kept, where they differ. */
  readonly kept?: (spoken: number) => number
}

/** The chance that a failure with a danger becomes the event itself. */
export function dangerPath({ basis }: Pick<OfBasis, 'basis'>, danger: string): NamedPath {
  return {
    path: `dangers.${danger}.becomesEventChance`,
    name: words.becomes(basis.names.dangers[danger]?.name ?? danger),
  }
}

const same = (value: number) => value

/** Terms of the owner, each with the entry that gave it and a field to set it anew. */
function TermFigures({ of, list }: { readonly of: OfBasis; readonly list: readonly NamedTerm[] }) {
  const { basis, log } = of
  const { currency } = basis.model
  const sign = sayMoney(currency, 1).replace('1', '').trim()
  return (
    <>
      {list.map(({ field, name, value, unit, isMoney, kept = same }) => {
        const given = basis.register.given[`terms.${field === 'perDay' ? 'withoutPower' : field}`]
        const tried = (next: number): TermsTried =>
          field === 'perDay' ? { powerFactor: value ? next / value : 1 } : { [field]: kept(next) }
        return (
          <SetByYou
            key={field}
            name={name}
            value={
              value === undefined
                ? '–'
                : `${isMoney ? sayMoney(currency, value) : sayNumber(value)} ${unit}`.trim()
            }
            from={given === undefined ? words.assumed : sayEntry(log, given)}
            sign={isMoney ? sign : undefined}
            unit={unit}
            placeholder={value === undefined ? 0 : Number(value.toPrecision(3))}
            readOnly={log.readOnly}
            onWrite={async (next) => {
              const written = await log.append([draftOfTerms(basis, tried(next), today())])
              return written.ok ? undefined : whatWasWrong(written.problems)
            }}
          />
        )
      })}
    </>
  )
}

/** The fields that set what a figure is made of; to a demonstration boat nothing is written, and that is said. */
export function Overruling({
  of,
  terms = [],
  paths = [],
}: {
  readonly of: OfBasis
  readonly terms?: readonly NamedTerm[]
  readonly paths?: readonly NamedPath[]
}) {
  return (
    <>
      <TermFigures of={of} list={terms} />
      <CatalogueFigures of={of} list={paths} />
      {of.log.readOnly && <span className="second">{shell.figure.readOnly}</span>}
    </>
  )
}

function SetByYou(of: {
  readonly name: string
  readonly value: string
  readonly from: ReactNode
  readonly sign?: string | undefined
  readonly unit: string
  readonly placeholder: number
  readonly readOnly: boolean
  readonly onWrite: (value: number) => Promise<string | undefined>
}) {
  const said = useSaid()
  const name = said(of.name)
  return (
    <span className="set-by-you">
      <span>
        {name}: <b>{said(of.value)}</b> <span className="second">{of.from}</span>
      </span>
      {!of.readOnly && (
        <Overrule
          name={of.name}
          sign={of.sign}
          unit={said(of.unit)}
          value={of.placeholder}
          onWrite={of.onWrite}
        />
      )}
    </span>
  )
}
