/**
 * What `gensettle log add` takes for one kind of entry: its options are the fields of the kind.
 *
 * @module
 */

import { type Command, Option } from 'commander'
import type { Kind } from '../logbook/kind-names.js'
import { type BodyField, fieldsOf } from './body-fields.js'
import { bareFieldsOf, shortWays, type Typed } from './drafts.js'
import { meaningOf } from './field-meanings.js'
import { type AddOptions, addEntry } from './log.js'
import { answering, collect, usual } from './program-parts.js'

/** Options that every kind has. */
const common = new Set(['boat', 'set', 'from', 'until', 'body', 'photograph', 'json', 'data'])

export function layOutKind(
  made: Command,
  { kind, example }: { readonly kind: Kind; readonly example: string },
): void {
  usual(made, { example: `gensettle log add ${example}`, data: true })
  const bares = bareFieldsOf(kind)
  bares.forEach((field, i) => {
    made.argument(i === bares.length - 1 ? `[${field.flag}...]` : `[${field.flag}]`, toldOf(kind, field))
  })
  made
    .option('--boat <name>', 'the boat; left out: your only one')
    .option('--set <name>', 'the set; left out: her only one')
    .option('--from <date>', 'when it was or began: a day, a month or a year; left out: today')
    .option('--until <date>', 'when it ended; left out: the same')
    .option('--body <json>', 'fields as JSON, by the names in docs/schema/logbook.schema.json')
    .option('--photograph <file>', 'a photograph to keep with it; again for several', collect)
  const shorts = shortWays[kind] ?? []
  for (const way of shorts) {
    const takes = way.of !== undefined ? ' <text>' : way.also !== undefined ? ' [text]' : ''
    made.addOption(new Option(`--${way.flag}${takes}`, way.words).argParser(collect))
  }
  for (const field of fieldsOf(kind)) {
    if (shorts.some(({ flag }) => flag === field.flag) || common.has(field.flag)) continue
    const value = field.takes.form === 'yes-no' ? '[yes-no]' : '<value>'
    made.addOption(new Option(`--${field.flag} ${value}`, toldOf(kind, field)).argParser(collect))
  }
  made.action(
    answering((...args) => {
      const options = args.at(-1) as AddOptions & Record<string, unknown>
      const bare = args
        .slice(0, -1)
        .flat()
        .filter((word): word is string => typeof word === 'string')
      return addEntry({ kind, bare, flags: flagsOf(made) }, options)
    }),
  )
}

/** What a field means, and what may be typed for it. */
function toldOf(kind: Kind, { flag, words }: BodyField): string {
  return `${meaningOf(kind, flag) ?? flag} (${inShort(words)})`
}

/** The forms that every second field has, in fewer words than where one of them is refused. */
const shortForms: readonly (readonly [RegExp, string])[] = [
  [/small letters and digits, words joined by hyphens[^;]*/, 'words joined by hyphens'],
  [/text of 1 to \d+ characters, not only blanks, without control characters/, 'text'],
  [/(a date such as 2019, 2019-05 or 2019-05-12), of the years [^;]*/, '$1'],
  [/a ULID: [^;]*/, 'the id of an entry'],
  [/a number from 0 to 1000000000$/, 'an amount'],
]

function inShort(words: string): string {
  return shortForms.reduce((text, [form, short]) => text.replace(form, short), words)
}

/** The fields that were typed, by their flags. */
function flagsOf(made: Command): Typed['flags'] {
  const flags: Record<string, readonly (string | true)[]> = {}
  for (const option of made.options) {
    const flag = option.long?.slice(2) ?? ''
    const value: unknown = made.getOptionValue(option.attributeName())
    if (common.has(flag) || value === undefined) continue
    flags[flag] = Array.isArray(value) ? value : [value === true ? true : String(value)]
  }
  return flags
}
