/**
 * The trial's figures as tables.
 *
 * @module
 */

import { closedOf, dearerThan, difference, measured, over, partings } from './compare.js'
import { rules } from './rules.js'
import { type BoatResult, type Outcome, type PolicyId, policies, type Trial } from './trial.js'

export function tell(all: readonly BoatResult[], trial: Trial): void {
  const lives = trial.advised
  const groups: readonly (readonly [string, readonly BoatResult[]])[] = [
    ['all boats', all],
    ['the world that it models', all.filter(({ isModelled }) => isModelled)],
    ['lognormal, lives × 0.6', all.filter(({ level }) => level < 1)],
    ['lognormal, lives × 1.6', all.filter(({ level }) => level > 1)],
    ['log from the first day', all.filter(({ isLogWhole }) => isLogWhole)],
    ['log from when she was bought', all.filter(({ isLogWhole }) => !isLogWhole)],
  ]
  for (const [name, boats] of groups) {
    if (boats.length < 2 || lives === 0) continue
    console.log(`\n${name}: ${boats.length} boats, the ${lives} lives that all lead`)
    console.table(
      policies.map((policy) => {
        const cost = over(boats, policy, { lives, read: (outcome) => outcome.cost })
        const days = over(boats, policy, { lives, read: (outcome) => outcome.daysWithout })
        const replaced = over(boats, policy, { lives, read: (outcome) => outcome.replaced })
        const more = difference(boats, lives, [policy, 'gensettle'])
        return {
          policy,
          'mean cost': said({ mean: cost.mean, error: cost.error }, 0),
          'less Gensettle': said(more, 0),
          'days without': said(days, 1),
          'sets fitted': said(replaced, 2),
        }
      }),
    )
    const closed = closedOf(boats, { lives, rules: rules.map(({ id }) => id), seed: trial.seed })
    console.log(
      `best rule ${closed.rule}; gap ${closed.gap.toFixed(0)}; share closed ${closed.share.toFixed(2)} ` +
        `(90 %: ${closed.low.toFixed(2)} to ${closed.high.toFixed(2)}; no gap in ${(100 * closed.withoutGap).toFixed(1)} % of draws)`,
    )
    for (const who of ['gensettle', 'knowing'] as const) {
      const foretold = boats.flatMap((boat) => boat.foretold[who])
      if (foretold.length < 2) continue
      const off = measured(foretold.map(({ expected, came }) => came - expected))
      const expected = measured(foretold.map((one) => one.expected))
      console.log(
        `${who}: expected ${said(expected, 0)} at its first question; came out dearer by ${said(off, 0)}`,
      )
    }
  }
  if (lives > 0) tellWhereItLost(all, trial)
  if (trial.lives > lives) {
    console.log(`\nThe rules over all their ${trial.lives} lives`)
    console.table(
      rules.map(({ id }) => ({
        rule: id,
        'mean cost': said(over(all, id, { lives: trial.lives, read: ({ cost }) => cost }), 0),
        'days without': said(
          over(all, id, { lives: trial.lives, read: ({ daysWithout }) => daysWithout }),
          1,
        ),
      })),
    )
  }
}

/** How many of the boats for which it came out dearest are told. */
const worstTold = 15

function tellWhereItLost(all: readonly BoatResult[], trial: Trial): void {
  const lives = trial.advised
  const { rule } = closedOf(all, { lives, rules: rules.map(({ id }) => id), seed: trial.seed })
  const sum = (boat: BoatResult, policy: PolicyId, read: (outcome: Outcome) => number) =>
    over([boat], policy, { lives, read }).mean
  for (const other of [...rules.map(({ id }) => id), 'knowing'] as const) {
    console.log(`\nHow Gensettle and ${other} part`)
    console.table(
      partings(all, lives, other).map(({ kind, saved, share, ...counts }) => ({
        kind,
        ...counts,
        'Gensettle saves': saved.toFixed(0),
        'of the mean saving': share.toFixed(0),
      })),
    )
  }
  console.log(`\nWhere Gensettle came out dearest against ${rule}`)
  console.table(
    dearerThan(all, lives, rule)
      .slice(0, worstTold)
      .map((boat) => ({
        boat: boat.boat,
        level: boat.level,
        'log whole': boat.isLogWhole,
        'age, years kept': `${boat.ageYears.toFixed(0)}, ${boat.horizonYears}`,
        ...Object.fromEntries(
          (['gensettle', rule, 'knowing'] as const).map((policy) => [
            policy,
            `${sum(boat, policy, ({ cost }) => cost).toFixed(0)}, ${sum(boat, policy, ({ replaced }) => replaced).toFixed(1)} new`,
          ]),
        ),
      })),
  )
}

function said({ mean, error }: { readonly mean: number; readonly error: number }, digits: number): string {
  return `${mean.toFixed(digits)} ± ${error.toFixed(digits)}`
}
