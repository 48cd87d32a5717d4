/**
 * Whether everything in the catalogue that names another record names one that exists.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'
import type { Mode, Part } from './part-schema.js'
import { valueAt } from './path.js'
import type { Problem } from './problem.js'

const lists = ['parts', 'access', 'checks', 'dangers', 'loads', 'sources', 'limits', 'stopLines'] as const

/** Ids used twice, names that lead nowhere, and claims that contradict each other. */
export function referenceProblems(catalogue: Catalogue): Problem[] {
  const parts = new Map(catalogue.parts.map((part) => [part.id, part]))
  const ids = {
    access: new Set(catalogue.access.map((way) => way.id)),
    check: new Set(catalogue.checks.map((check) => check.id)),
    danger: new Set(catalogue.dangers.map((danger) => danger.id)),
    limit: new Set(catalogue.limits.map(({ id }) => id)),
    source: new Set(catalogue.sources.map((source) => source.id)),
    winding: new Set(catalogue.links.windings.map(({ id }) => id)),
  }
  const problems: Problem[] = []

  function mustKnow(kind: keyof typeof ids, name: string, path: string): void {
    if (!ids[kind].has(name)) {
      problems.push({ code: 'unknown-name', path, found: name, allowed: `a ${kind} of the catalogue` })
    }
  }

  function mustKnowMode(partId: string, modeId: string | undefined, path: string): void {
    const part = parts.get(partId)
    if (part === undefined) {
      problems.push({ code: 'unknown-name', path, found: partId, allowed: 'a part of the catalogue' })
    } else if (modeId !== undefined && !part.modes.some((mode) => mode.id === modeId)) {
      const allowed = part.modes.map((mode) => mode.id).join(', ')
      problems.push({ code: 'unknown-name', path, found: `${partId}.${modeId}`, allowed })
    }
  }

  function checkMode(part: Part, mode: Mode): void {
    const path = `parts.${part.id}.modes.${mode.id}`
    for (const name of mode.dangers) mustKnow('danger', name, `${path}.dangers`)
    for (const { check } of mode.checks) mustKnow('check', check, `${path}.checks`)
    for (const link of mode.links) {
      mustKnowMode(link.to, link.brings, `${path}.links.${link.to}`)
      if (link.trip !== undefined) mustKnowMode(link.trip, undefined, `${path}.links.${link.to}.trip`)
      if ((link.trip === undefined) !== (link.tripSaves === undefined)) {
        const found = `trip ${link.trip}, tripSaves ${link.tripSaves}`
        problems.push({ code: 'contradiction', path, found, allowed: 'trip and tripSaves together' })
      }
      if (link.brings === undefined && link.effect === 'starts-defect') {
        problems.push({
          code: 'contradiction',
          path,
          found: 'no mode',
          allowed: 'the mode whose defect starts',
        })
      }
    }
    for (const link of mode.wearLinks) mustKnowMode(link.to, link.mode, `${path}.wearLinks.${link.to}`)
    for (const remedy of [mode.remedy, ...mode.otherRemedies]) {
      if (
        remedy.wholeSetPrice !== undefined &&
        valueAt(catalogue.wholeSet, remedy.wholeSetPrice) === undefined
      ) {
        const found = remedy.wholeSetPrice
        problems.push({ code: 'unknown-name', path, found, allowed: 'a price of the whole set' })
      }
      if ((remedy.outcome === 'reconditioned') !== (remedy.takesAway !== undefined)) {
        const found = `${remedy.outcome}, takesAway ${remedy.takesAway}`
        problems.push({ code: 'contradiction', path, found, allowed: 'takesAway with reconditioned only' })
      }
      if (remedy.supply === 'made' && part.price.made === undefined) {
        problems.push({
          code: 'contradiction',
          path,
          found: 'supply made',
          allowed: 'a part with a third price',
        })
      }
    }
    if (mode.stops + mode.derates > 1) {
      const found = `stops ${mode.stops}, derates ${mode.derates}`
      problems.push({ code: 'contradiction', path, found, allowed: 'together at most 1' })
    }
  }

  for (const part of catalogue.parts) {
    const path = `parts.${part.id}`
    for (const name of part.access.opens) mustKnow('access', name, `${path}.access.opens`)
    for (const name of part.access.alsoReachedFrom) mustKnow('access', name, `${path}.access.alsoReachedFrom`)
    for (const name of part.service.tests) mustKnow('check', name, `${path}.service.tests`)
    for (const name of part.service.clears) mustKnowMode(part.id, name, `${path}.service.clears`)
    for (const mode of part.modes) checkMode(part, mode)
    problems.push(...twice(part.modes, `${path}.modes`))
    for (const mode of part.modes) {
      problems.push(
        ...twice(
          mode.links.map((link) => ({ id: link.to })),
          `${path}.modes.${mode.id}.links`,
        ),
      )
      const checks = mode.checks.map(({ check }) => ({ id: check }))
      problems.push(...twice(checks, `${path}.modes.${mode.id}.checks`))
    }
  }
  for (const way of catalogue.access) {
    for (const name of way.includes) mustKnow('access', name, `access.${way.id}.includes`)
  }
  for (const { id, opensByDangers, limits, told } of catalogue.stopLines) {
    const path = `stopLines.${id}`
    for (const { danger, parts: at = [] } of opensByDangers) {
      mustKnow('danger', danger, `${path}.opensByDangers`)
      for (const name of at) mustKnowMode(name, undefined, `${path}.opensByDangers`)
    }
    for (const name of limits) mustKnow('limit', name, `${path}.limits`)
    for (const { source } of [told, ...told.alongside]) mustKnow('source', source, `${path}.told`)
  }
  for (const [path, origin] of catalogue.origins) {
    for (const { source, held } of [origin, ...origin.alongside]) {
      mustKnow('source', source, `${path} (source)`)
      if ((source === 'practice') !== (held === 'practice')) {
        problems.push({
          code: 'contradiction',
          path,
          found: `${source}, ${held}`,
          allowed: 'practice held as practice',
        })
      }
    }
  }
  for (const { id, told, winding } of catalogue.links.patterns) {
    mustKnow('source', told.source, `links.patterns.${id}.told`)
    mustKnow('winding', winding, `links.patterns.${id}.winding`)
  }
  for (const list of lists) problems.push(...twice(catalogue[list], list))
  return problems
}

function twice(records: readonly { readonly id: string }[], path: string): Problem[] {
  const seen = new Set<string>()
  return records.flatMap(({ id }) => {
    const again = seen.has(id)
    seen.add(id)
    return again ? [{ code: 'twice', path, found: id, allowed: 'each name once' }] : []
  })
}
