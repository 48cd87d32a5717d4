/**
 * Hindsight as lines of text.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import type { Hindsight } from '../alternatives/hindsight.js'
import type { Afterwards, PastChoice } from '../alternatives/hindsight-choices.js'
import type { LeftOut } from '../alternatives/hindsight-outcomes.js'
import { moneyIn } from '../alternatives/say.js'
import { type Band, fewestExpected } from '../forecast/calibration.js'
import { chance, figure, tableText } from './table.js'

/** What was said, or would have been said, when a choice was made. */
export interface Said {
  /** The answer that was kept with the decision; else worked out now. */
  readonly kept: boolean
  readonly best: string
  readonly walkAway: number | null
  readonly verdict: string
  readonly walkAwaySaying: string | null
}

export interface LookedAtChoice extends Omit<PastChoice, 'kept'> {
  /** Null where no such set was known then. */
  readonly said: Said | null
  readonly after: Afterwards
}

export interface ToldHindsight extends Hindsight {
  readonly choices: readonly LookedAtChoice[]
  readonly notedLate: { readonly late: number; readonly of: number }
}

export function hindsightText(
  hindsight: ToldHindsight,
  names: { readonly name: string; readonly currency: string },
): string {
  return [
    `${names.name}: were past forecasts right?`,
    '',
    ...basisText(hindsight),
    ...(hindsight.dates.length === 0 ? [] : [...scoreText(hindsight), ...failedText(hindsight)]),
    ...choicesText(hindsight.choices, names.currency),
    '',
    shortCaution,
  ].join('\n')
}

function basisText({ by, dates, months, unknownThen, notedLate: { late, of } }: ToldHindsight): string[] {
  const first = dates[0]
  const spans =
    first === undefined
      ? 'There is no past date on which a forecast could have been made.'
      : `${dates.length} forecasts, from ${first.asOf} to ${dates.at(-1)!.asOf}, each of the ${months} months after it: the spans follow one another, so that no failure and no day is counted twice.`
  return [
    by === 'noted'
      ? 'As noted by then: entries typed in later are not used.'
      : 'By the day it happened, not as noted by then: what was typed in, corrected or remembered later is used too. Nobody could have been told this at the time.',
    spans,
    ...(unknownThen > 0
      ? [
          `On ${unknownThen} more ${unknownThen === 1 ? 'date' : 'dates'} ${by === 'noted' ? 'no such set was in the log yet' : 'there was no such set'}.`,
        ]
      : []),
    ...(by === 'noted' && late * 2 > of
      ? [
          `${late} of ${of} entries were noted more than two months after what they tell, as an old log that was typed in at once: as noted, little or nothing of it could be said then. --by-date looks back by the day each thing happened.`,
        ]
      : []),
  ]
}

const judgements: Readonly<Record<Band['judged'], string>> = {
  'too-few': 'too few events',
  'as-told': 'as told',
  'came-oftener': 'came oftener than told',
  'came-seldomer': 'came seldomer than told',
}

const right = (head: string) => ({ head, align: 'right' }) as const
const columns = [
  { head: 'chance of failing that was told' },
  right('times told'),
  right('expected'),
  right('failed'),
  right('likely count, 90 %'),
  right('share that failed, 90 %'),
  { head: 'held?' },
]

function scoreText(hindsight: ToldHindsight): string[] {
  const { bands, allBands, brier, wholeSet, notComplete } = hindsight
  if (brier === null || allBands === null) {
    return [
      '',
      'Nothing can be scored: no span is declared complete. Where the log is not said to hold everything, nothing in it says that a part did not fail. If it does hold everything: gensettle log add complete stops work --from 2019 --until 2024',
      ...openText(notComplete),
    ]
  }
  const percent = (share: number) => `${figure(100 * share)} %`
  const row = (name: string, band: Band) => [
    name,
    figure(band.told),
    figure(band.expected),
    String(band.came),
    `${band.expectedBounds.low} to ${band.expectedBounds.high}`,
    `${percent(band.shareBounds.low)} to ${percent(band.shareBounds.high)}`,
    judgements[band.judged],
  ]
  const skill =
    brier.skill === null
      ? 'Nothing failed, so skill cannot be told.'
      : `Skill against naming the share that failed every time: ${figure(100 * brier.skill)} in 100 (100: all foreseen; 0: no better).`
  return [
    '',
    tableText(columns, [
      ...bands.map((band) => row(`${percent(band.from)} to ${percent(band.to)}`, band)),
      row('ALL', allBands),
    ]),
    `A band with fewer than ${fewestExpected} failures expected is not judged. Counts are likely as the chances told have them, each part and span for itself (exact); they hang together through the set, so that true bounds are somewhat wider.`,
    `Brier score ${figure(brier.score)} (0: all foreseen) = reliability ${figure(brier.reliability)} − resolution ${figure(brier.resolution)} + uncertainty ${figure(brier.uncertainty)} + within bands ${figure(brier.withinBands)}. ${skill}`,
    `The set as a whole: it stopped in ${wholeSet.came} of ${wholeSet.spans} spans declared complete; ${figure(wholeSet.expected)} were expected.`,
    ...openText(notComplete),
    ...untoldText(hindsight),
    ...leftOutText(hindsight.leftOut),
  ]
}

function openText({ spans, expected, entered }: Hindsight['notComplete']): string[] {
  if (spans === 0) return []
  return [
    `${spans} ${spans === 1 ? 'span is' : 'spans are'} not declared complete, and not scored: nothing says what did not fail in them. Failures of ${entered} parts were entered there all the same; ${figure(expected)} were expected.`,
  ]
}

function untoldText({ dates, untold }: ToldHindsight): string[] {
  if (untold === 0) return []
  const parts = dates.flatMap(({ complete, failedUntold }) => (complete ? failedUntold : []))
  return [
    `Not in the score: ${[...new Set(parts)].join(', ')} failed, and no chance had been given, as the set of the time was not taken to have such a part.`,
  ]
}

const leftOutWords: Readonly<Record<Exclude<LeftOut, 'not-complete'>, string>> = {
  'stood-broken': 'stood failed already',
  'day-not-known': 'failed on a day that is not known well enough',
  'renewed-sound': 'renewed while sound, though no service asks for it',
  'taken-off': 'taken off',
  'set-gone': 'the set went',
}

function leftOutText(leftOut: Hindsight['leftOut']): string[] {
  const said = Object.entries(leftOutWords).flatMap(([why, words]) => {
    const count = leftOut[why as LeftOut]
    return count === 0 ? [] : [`${count} ${words}`]
  })
  return said.length === 0 ? [] : [`Parts left out of a span: ${said.join('; ')}.`]
}

function failedText({ dates }: ToldHindsight): string[] {
  const rows = dates.flatMap(({ asOf, complete, parts, failed }) =>
    failed.map(({ part, chance: told, stopped }) => {
      const place = parts.filter((other) => other.chance > told).length + 1
      return [
        asOf,
        part,
        chance(told),
        `${place} of ${parts.length}`,
        stopped ? 'stopped the set' : '',
        complete ? '' : 'not scored',
      ]
    }),
  )
  if (rows.length === 0) return ['', 'No failure of a part is entered in these spans.']
  const heads = ['in the span from', 'what failed', 'chance told', 'its place among the parts', '', '']
  return [
    '',
    tableText(
      heads.map((head) => ({ head })),
      rows,
    ),
  ]
}

function choicesText(choices: readonly LookedAtChoice[], currency: string): string[] {
  if (choices.length === 0) return []
  return [
    '',
    'Choices: what the log of the time made of each, what was done, and what came after',
    ...choices.flatMap((choice) => ['', ...choiceText(choice, currency)]),
  ]
}

function choiceText(choice: LookedAtChoice, currency: string): string[] {
  const { asOf, kind, what, quoted, alternative, said, after } = choice
  const money = (amount: number) => moneyIn(currency, amount)
  const offered = quoted === undefined ? '' : `, ${money(quoted)} quoted`
  const taken = alternative === undefined ? '' : `, ${alternative}`
  const done = after.done.map(({ day, parts, set, by }) =>
    set === undefined ? `${day} ${parts.join(', ')} (${by})` : `${day} the set "${set}" came or went`,
  )
  const failures = after.failures.length === 0 ? 'no failure' : `failures: ${after.failures.join(', ')}`
  return [
    `${asOf}  ${kind === 'decision' ? 'Decided' : 'Offered'}: ${what}${offered}${taken}`,
    said === null
      ? '  Nothing could have been said: no such set was in the log then.'
      : `  ${said.kept ? 'It said' : 'It would have said'}: ${[said.verdict, said.walkAwaySaying].filter(Boolean).join(' ')}`,
    `  Done: ${done.length === 0 ? 'nothing is entered' : done.join('; ')}.`,
    `  Up to ${after.until}: ${failures}; ${figure(after.stops)} ${after.stops === 1 ? 'stop' : 'stops'}, ${figure(after.daysWithoutPower)} days without power, ${money(after.paid)} paid.`,
  ]
}
