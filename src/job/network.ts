/**
 * What follows what: an order in which all can be done, circles by their members, and the earliest and latest times of each.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'

/** Something that begins when all that it follows is over. */
export interface Step {
  readonly name: string
  readonly after: readonly string[]
}

/** Steps in an order in which each stands behind all that it follows, which are given by their places. */
export interface Network<S extends Step> {
  readonly steps: readonly S[]
  readonly after: readonly (readonly number[])[]
  readonly before: readonly (readonly number[])[]
}

export type NetworkResult<S extends Step> =
  | { readonly ok: true; readonly network: Network<S> }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The steps in order; or everything that is wrong: names given twice, names that are none, and each circle. */
export function networkOf<S extends Step>(steps: readonly S[]): NetworkResult<S> {
  const problems = [...namedTwice(steps), ...unknownNames(steps)]
  const at = new Map(steps.map(({ name }, i) => [name, i]))
  const known = steps.map(({ after }) => after.flatMap((name) => at.get(name) ?? []))
  const groups = hangingTogether(known)
  for (const group of groups) {
    const isCircle = group.length > 1 || known[group[0]!]!.includes(group[0]!)
    if (isCircle) problems.push(circleProblem(roundOf(group, known).map((i) => steps[i]!.name)))
  }
  if (problems.length > 0) return { ok: false, problems }
  const order = groups.flat()
  const placeOf = new Map(order.map((i, place) => [i, place]))
  const after = order.map((i) => [...new Set(known[i])].map((one) => placeOf.get(one)!))
  const before = order.map((_, place) =>
    order.flatMap((__, other) => (after[other]!.includes(place) ? [other] : [])),
  )
  return { ok: true, network: { steps: order.map((i) => steps[i]!), after, before } }
}

/** When each step begins and is over, by its place in the network. */
export interface Times {
  readonly starts: Float64Array
  readonly ends: Float64Array
}

export function emptyTimes(count: number): Times {
  return { starts: new Float64Array(count), ends: new Float64Array(count) }
}

/**
 * The forward pass of the critical path method: each step begins at the latest end of what it follows, not before `from`,
 * and is over when `endOf` says. Kelley and Walker, "Critical-path planning and scheduling", Eastern Joint Computer
 * Conference (1959); recalled.
 */
export function earliestTimes(
  { after }: Pick<Network<Step>, 'after'>,
  {
    from,
    endOf,
    into,
  }: {
    readonly from: number
    readonly endOf: (place: number, start: number) => number
    readonly into: Times
  },
): number {
  let finish = from
  for (let i = 0; i < after.length; i++) {
    let start = from
    for (const one of after[i]!) start = Math.max(start, into.ends[one]!)
    into.starts[i] = start
    into.ends[i] = endOf(i, start)
    finish = Math.max(finish, into.ends[i]!)
  }
  return finish
}

/** The backward pass: each step must be over when the first of those behind it must begin, and the last ones by `until`. */
export function latestTimes(
  { before }: Pick<Network<Step>, 'before'>,
  {
    until,
    startOf,
    into,
  }: {
    readonly until: number
    readonly startOf: (place: number, end: number) => number
    readonly into: Times
  },
): void {
  for (let i = before.length - 1; i >= 0; i--) {
    let end = until
    for (const one of before[i]!) end = Math.min(end, into.starts[one]!)
    into.ends[i] = end
    into.starts[i] = startOf(i, end)
  }
}

/** Two times that differ by less than this are one. [d] */
const same = 1e-9

/** Places on a longest way to the finish: from the last to end back through whatever each waited for longest. */
export function longestWay(
  { after, before }: Pick<Network<Step>, 'after' | 'before'>,
  { starts, ends }: Times,
): boolean[] {
  const count = after.length
  const finish = ends.reduce((most, end) => Math.max(most, end), Number.NEGATIVE_INFINITY)
  const on = new Array<boolean>(count).fill(false)
  for (let i = count - 1; i >= 0; i--) {
    if (before[i]!.length === 0 && ends[i]! >= finish - same) on[i] = true
    if (!on[i]) continue
    for (const one of after[i]!) if (ends[one]! >= starts[i]! - same) on[one] = true
  }
  return on
}

function namedTwice(steps: readonly Step[]): Problem[] {
  const names = steps.map(({ name }) => name)
  const twice = new Set(names.filter((name, i) => names.indexOf(name) < i))
  return [...twice].map((name) => ({
    code: 'named-twice',
    path: name,
    found: name,
    allowed: 'each name once',
  }))
}

function unknownNames(steps: readonly Step[]): Problem[] {
  const names = new Set(steps.map(({ name }) => name))
  return steps.flatMap(({ name, after }) =>
    after
      .filter((one) => !names.has(one))
      .map((one) => ({
        code: 'unknown-activity',
        path: `${name}.after`,
        found: one,
        allowed: `one of: ${[...names].filter((other) => other !== name).join(', ') || 'none: it is the only one'}`,
      })),
  )
}

function circleProblem(members: readonly string[]): Problem {
  return {
    code: 'activities-in-a-circle',
    path: members[0]!,
    found: [...members, members[0]!].join(' after '),
    allowed: 'an order that does not come back to where it began',
  }
}

/**
 * Groups of places each of which follows the other by some way, a group behind all that it follows.
 *
 * Tarjan, "Depth-first search and linear graph algorithms", SIAM Journal on Computing 1 (1972); recalled.
 */
function hangingTogether(after: readonly (readonly number[])[]): number[][] {
  const met = new Map<number, number>()
  const lowest = new Map<number, number>()
  const open: number[] = []
  const groups: number[][] = []
  const visit = (i: number) => {
    met.set(i, met.size)
    lowest.set(i, met.get(i)!)
    open.push(i)
    for (const one of after[i]!) {
      if (!met.has(one)) visit(one)
      if (open.includes(one)) lowest.set(i, Math.min(lowest.get(i)!, lowest.get(one)!))
    }
    if (lowest.get(i) === met.get(i)) groups.push(open.splice(open.indexOf(i)))
  }
  for (let i = 0; i < after.length; i++) if (!met.has(i)) visit(i)
  return groups
}

/** One way round through a group that hangs together, from its first member on. */
function roundOf(group: readonly number[], after: readonly (readonly number[])[]): number[] {
  const inside = new Set(group)
  const round = [group[0]!]
  for (;;) {
    const next = after[round.at(-1)!]!.find((one) => inside.has(one))!
    const at = round.indexOf(next)
    if (at >= 0) return round.slice(at)
    round.push(next)
  }
}
