/**
 * `gensettle leads`: finding out which unmarked lead is which.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { leadsByMark, windingMarked } from '../proof/links/patterns.js'
import { linksCaution } from '../proof/links/say-links.js'
import {
  findLeads,
  type LeadPair,
  readPairs,
  readReadings,
  type UnmarkedAnswer,
  unclearReadings,
} from '../proof/links/unmarked.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface LeadsOptions {
  readonly winding: string
  readonly marks?: string
  readonly pairs: string
  readonly readings?: string
  /** What each pair reads by itself, excited a little from outside. */
  readonly each?: number
}

export function findUnmarked({
  winding: id,
  marks,
  pairs: typedPairs,
  readings: typed = '',
  each = 1,
}: LeadsOptions): Result {
  const { links } = shippedCatalogue()
  const known = links.windings.find((one) => one.id === id)
  const problems: Problem[] = []
  if (known === undefined) {
    const allowed = `one of: ${links.windings.map((one) => one.id).join(', ')}`
    return refuse({ code: 'unknown-winding', path: '--winding', found: id, allowed })
  }
  if (marks !== undefined && !known.marks.some((one) => one.id === marks)) {
    const allowed = `one of: ${known.marks.map((one) => one.id).join(', ')}`
    problems.push({ code: 'unknown-marks', path: '--marks', found: marks, allowed })
  }
  const { coils } = windingMarked(known, marks)
  const read = readPairs(typedPairs, { path: '--pairs', count: coils.length })
  const measured = readReadings(typed, { path: '--readings', pairs: read.pairs })
  if (typed !== '' && each === 1) {
    const allowed = '--each: what one pair reads by itself in the same run, such as --each 20'
    problems.push({ code: 'missing', path: '--each', found: 'nothing', allowed })
  }
  problems.push(...read.problems, ...measured.problems)
  for (const { joined, volts } of problems.length > 0 ? [] : unclearReadings(measured.readings, each)) {
    const allowed = `about 0, ${each}, ${(Math.sqrt(3) * each).toFixed(1)} or ${2 * each} V: measure it again at the same speed and excitation`
    problems.push({ code: 'unclear', path: '--readings', found: `${joined.join('-')} ${volts}`, allowed })
  }
  if (problems.length > 0) return refuse(...problems)
  const answer = findLeads({ pairs: read.pairs, readings: measured.readings, emfV: each, coils })
  const order = [...leadsByMark(known, marks).values()]
  const sorted = [...answer.marks].sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark))
  return {
    ok: true,
    json: {
      type: 'gensettle/unmarked-leads',
      version: 1,
      winding: id,
      ...answer,
      marks: sorted,
      unequalPairs: unequal(read.pairs),
      caution: linksCaution,
    },
    text: [
      ...leadsText(
        { ...answer, marks: sorted },
        { pairs: read.pairs, each: typed === '' && each === 1 ? undefined : each },
      ),
      '',
      linksCaution,
    ].join('\n'),
  }
}

function leadsText(
  { left, marks, next, doubtful }: UnmarkedAnswer,
  { pairs, each }: { readonly pairs: readonly LeadPair[]; readonly each: number | undefined },
): string[] {
  const odd = unequal(pairs)
  const ohms =
    odd.length === 0
      ? []
      : [
          `Ohms differ by more than 5 in 100: ${odd.map(({ leads }) => leads.join('-')).join(', ')}. That may be another winding (excitation, auxiliary) or a bad joint: find out before going on.`,
        ]
  if (left === 0) {
    return [
      'The readings contradict one another: no winding of this kind reads so.',
      doubtful.length === 0
        ? 'No single one of them is the cause. Measure all again.'
        : `Without one of these the others would agree: ${doubtful.map(({ joined, volts }) => `${joined.join('-')} ${volts}`).join(', ')}. Measure these again.`,
      ...ohms,
    ]
  }
  if (next === null) {
    return [
      tableText(
        [{ head: 'lead' }, { head: 'is' }],
        marks.map(({ lead, mark }) => [lead, mark]),
      ),
      '',
      'Mark them now. Which phase comes first is not found so: a phase-sequence meter tells, and two lines changed over cure it.',
      ...ohms,
    ]
  }
  const size = (volts: number) =>
    each === undefined ? `${Number(volts.toFixed(2))} × what one pair reads` : `${volts.toFixed(1)} V`
  return [
    `${left.toLocaleString('en-GB')} ways are left. Next: join ${next.join.join(' and ')}, excite a little from outside, and measure between ${next.read.join(' and ')}.`,
    '',
    tableText(
      [{ head: 'it reads about', align: 'right' }, { head: 'then' }, { head: 'ways left', align: 'right' }],
      next.tells.map((one) => [size(one.volts), one.says, one.left.toLocaleString('en-GB')]),
    ),
    '',
    `Give it as --readings "${next.join.join('-')} VOLTS", with --each what one pair reads by itself in the same run.`,
    ...ohms,
  ]
}

/** Pairs whose ohms lie away from the middle one: coils of a main winding are alike. */
function unequal(pairs: readonly LeadPair[]): readonly LeadPair[] {
  const sizes = pairs.flatMap(({ ohms }) => ohms ?? []).sort((a, b) => a - b)
  const middle = sizes[Math.floor(sizes.length / 2)]
  if (middle === undefined) return []
  return pairs.filter(({ ohms }) => ohms !== undefined && Math.abs(ohms - middle) > 0.05 * middle)
}
