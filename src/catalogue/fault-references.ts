/**
 * Whether everything in the fault model that names another record names one that exists, chances of outcomes make a
 * whole, and bands of readings leave no hole.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'
import type { FaultCheck } from './fault-schema.js'
import type { Problem } from './problem.js'
import type { ReadFaultModel } from './read-fault-model.js'

/** The chances of a table are printed to five figures. */
const wholeWithin = 5e-4

type Known = Pick<Catalogue, 'parts' | 'checks' | 'sources'>

/** Ids used twice, names that lead nowhere, chances that make no whole, and bands with holes. */
export function faultReferenceProblems(
  { model, sources, origins }: ReadFaultModel,
  catalogue: Known,
): Problem[] {
  const { faults, symptoms, checks, stopLines } = model
  const problems: Problem[] = []
  const ids = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id))
  const known = {
    fault: ids(faults),
    symptom: ids(symptoms),
    check: ids(checks),
    'stop line': ids(stopLines),
    'look of the catalogue': ids(catalogue.checks),
    source: ids([...catalogue.sources, ...sources]),
  }
  const mustKnow = (kind: keyof typeof known, names: Iterable<string>, path: string) => {
    for (const found of names) {
      if (!known[kind].has(found)) {
        problems.push({ code: 'unknown-name', path, found, allowed: `a ${kind}` })
      }
    }
  }
  const mustKnowPart = (
    named: { readonly part: string; readonly mode?: string | undefined },
    path: string,
  ) => {
    const part = catalogue.parts.find(({ id }) => id === named.part)
    if (part === undefined || !(named.mode === undefined || part.modes.some(({ id }) => id === named.mode))) {
      const found = [named.part, named.mode].filter(Boolean).join('.')
      problems.push({
        code: 'unknown-name',
        path,
        found,
        allowed: 'a part of the catalogue and a mode of it',
      })
    }
  }

  for (const [list, records] of Object.entries({ faults, symptoms, checks, sources })) {
    const seen = new Set<string>()
    for (const { id } of records) {
      if (seen.has(id)) problems.push({ code: 'twice', path: list, found: id, allowed: 'each name once' })
      seen.add(id)
    }
  }
  for (const fault of faults) {
    const path = `faults.${fault.id}`
    mustKnow('symptom', Object.keys(fault.symptoms), `${path}.symptoms`)
    mustKnow('stop line', fault.stopLines, `${path}.stopLines`)
    mustKnow('fault', fault.dragsDown, `${path}.dragsDown`)
    for (const place of fault.parts) mustKnowPart(place, `${path}.parts`)
    for (const { part } of fault.afterWork) mustKnowPart({ part }, `${path}.afterWork`)
  }
  for (const check of checks) {
    const path = `checks.${check.id}`
    mustKnow('stop line', check.clearFirst, `${path}.clearFirst`)
    mustKnow('symptom', check.remeasures, `${path}.remeasures`)
    mustKnow('fault', Object.keys(check.given), `${path}.given`)
    if (check.by !== undefined) mustKnow('look of the catalogue', [check.by], `${path}.by`)
    for (const { finds } of check.outcomes) if (finds !== undefined) mustKnowPart(finds, `${path}.outcomes`)
    problems.push(...tableProblems(check, path), ...bandProblems(check, `${path}.reading`))
  }
  for (const line of stopLines) {
    const path = `stopLines.${line.id}`
    mustKnow('symptom', line.opensBySymptoms, `${path}.opensBySymptoms`)
    for (const { check, outcome } of line.opensByOutcomes) {
      const named = checks.find(({ id }) => id === check)
      if (!named?.outcomes.some(({ id }) => id === outcome)) {
        const found = `${check}.${outcome}`
        problems.push({ code: 'unknown-name', path, found, allowed: 'an outcome of a check' })
      }
    }
  }
  for (const [path, { source, held, alongside }] of origins) {
    for (const one of [{ source, held }, ...alongside]) {
      mustKnow('source', [one.source], `${path} (source)`)
      if ((one.source === 'practice') !== (one.held === 'practice')) {
        const found = `${one.source}, ${one.held}`
        problems.push({ code: 'contradiction', path, found, allowed: 'practice held as practice' })
      }
    }
  }
  return problems
}

/** Every table names each outcome once, and its chances make one. */
function tableProblems({ outcomes, usual, given }: FaultCheck, path: string): Problem[] {
  const wanted = outcomes.map(({ id }) => id).sort()
  return Object.entries({ usual, ...prefixed(given) }).flatMap(([name, table]): Problem[] => {
    const at = `${path}.${name}`
    const names = Object.keys(table).sort()
    if (names.join() !== wanted.join()) {
      return [{ code: 'outcomes', path: at, found: names.join(', '), allowed: wanted.join(', ') }]
    }
    const sum = Object.values(table).reduce((total, chance) => total + chance, 0)
    return Math.abs(sum - 1) > wholeWithin
      ? [{ code: 'no-whole', path: at, found: String(sum), allowed: 'chances that make 1' }]
      : []
  })
}

function prefixed<T>(given: Readonly<Record<string, T>>): Record<string, T> {
  return Object.fromEntries(Object.entries(given).map(([fault, table]) => [`given.${fault}`, table]))
}

/** Bands rise and the last has no end, so that every number falls into one. */
function bandProblems({ reading, outcomes }: FaultCheck, path: string): Problem[] {
  if (reading === undefined) return []
  const { bands, against, rated } = reading
  const wrong = (found: string, allowed: string): Problem => ({ code: 'bands', path, found, allowed })
  const names = new Set(outcomes.map(({ id }) => id))
  const problems = bands.flatMap(({ outcome, upTo, of }, i) => {
    const last = i === bands.length - 1
    if (!names.has(outcome)) return [wrong(outcome, 'an outcome of the check')]
    if (last !== (upTo === undefined))
      return [wrong(`${outcome} up to ${upTo}`, 'only the last without an end')]
    if (last !== (of === undefined))
      return [wrong(`${outcome} of ${of}`, 'an end with what it is counted in')]
    const before = bands[i - 1]
    const falls = before?.of === of && before?.upTo !== undefined && upTo !== undefined && upTo <= before.upTo
    return falls ? [wrong(`${before.upTo}, ${upTo}`, 'rising ends')] : []
  })
  const shares = bands.some(({ of }) => of === 'share')
  if (shares !== (against !== undefined || rated !== undefined)) {
    problems.push(wrong(`shares: ${shares}`, 'shares with what they are taken of, and only then'))
  }
  return problems
}
