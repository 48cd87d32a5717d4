/**
 * `gensettle set`: what a set is, as far as its log tells.
 *
 * @module
 */

import { moneyIn } from '../alternatives/say.js'
import { saySet } from '../alternatives/say-set.js'
import { dateOfDay } from '../logbook/dates.js'
import { registerOf } from '../register/register.js'
import type { PartRegister, SetRegister } from '../register/register-types.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import type { Result } from './result.js'
import { figure, tableText } from './table.js'

export function showSet(options: SetOptions): Promise<Result> {
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const register = registerOf({ entries, boat, set, asOf, catalogue: shippedCatalogue() })
    const { parts, ...rest } = register
    return {
      ok: true,
      json: { type: 'gensettle/set', version: 1, ...rest, parts: [...parts.values()] },
      text: setText(register),
    }
  })
}

function setText(register: SetRegister): string {
  const { boat, asOf, hours, spent, boatFacts } = register
  const rate = hours.perYear === undefined ? 'not known' : `${figure(hours.perYear)} h`
  const money = (amount: number) => moneyIn(boatFacts.currency ?? '', amount)
  const known = [...register.parts.values()].filter(
    ({ age, entries }) => age !== 'unknown' || entries.length > 0,
  )
  const unknown = register.parts.size - known.length
  return [
    `${boatFacts.name ?? boat}: ${saySet(register)}`,
    `As of ${asOf}; runs ${rate} a year.`,
    ...listed('Dangers found and not made safe', dangersOf(register)),
    ...listed(
      'Stands broken',
      register.broken.map(({ part, mode }) => [part, mode].filter(Boolean).join(', ')),
    ),
    ...listed('Defects seen and not mended', defectsOf(register)),
    ...listed(
      'Quotes in hand',
      register.openQuotes.map(
        (quote) => `${quote.job}: ${money(quote.withTax)}${quote.expired ? ', expired' : ''}`,
      ),
    ),
    ...listed('Protections', register.protections.map(protectionText)),
    '',
    known.length === 0
      ? 'No part is named in the log.'
      : tableText(
          [
            { head: 'part' },
            { head: 'years', align: 'right' },
            { head: 'hours', align: 'right' },
            { head: 'quality' },
            { head: 'entries', align: 'right' },
          ],
          known.map(partRow),
        ),
    ...(unknown > 0 ? [`${unknown} more parts are named nowhere: as old as the set, or younger.`] : []),
    '',
    `Spent so far: ${money(spent.total)}${
      Object.keys(spent.bySystem).length > 0
        ? ` (${Object.entries(spent.bySystem)
            .map(([system, amount]) => `${system} ${money(amount)}`)
            .join(', ')})`
        : ''
    }. What is spent never argues in a choice.`,
  ].join('\n')
}

function listed(head: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', `${head}:`, ...lines.map((line) => `  ${line}`)]
}

function dangersOf({ openDangers }: SetRegister): string[] {
  return openDangers
    .filter(({ madeSafeBy }) => madeSafeBy === undefined)
    .map(({ danger, part, mode }) => `${danger}, from ${part} (${mode})`)
}

function defectsOf({ openDefects }: SetRegister): string[] {
  return openDefects.map(({ about, day, seen }) => {
    const parts = about
      .map(({ part, mode }) => (mode === undefined ? part : `${part} (${mode})`))
      .join(' or ')
    return `${dateOfDay(day)}  ${parts}${seen === undefined ? '' : `: ${seen}`}`
  })
}

function protectionText({ part, fitted, lastTestedDay }: SetRegister['protections'][number]): string {
  if (fitted === 'not-fitted') return `${part}: not fitted`
  const tested =
    lastTestedDay === undefined
      ? 'never tested, as far as the log knows'
      : `last tested ${dateOfDay(lastTestedDay)}`
  return `${part}: ${fitted === 'not-known' ? 'nobody said whether it is fitted; ' : ''}${tested}`
}

function partRow({ part, age, quality, removed, entries }: PartRegister): string[] {
  const [years, hours] =
    age === 'unknown'
      ? ['unknown', '']
      : [figure(age.years), age.hours === undefined ? '' : figure(age.hours)]
  return [part, years, hours, removed ? 'removed' : (quality ?? ''), String(entries.length)]
}
