import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedFaults } from '../../test/fault-model.js'
import { shippedCatalogue } from '../../test/served-folder.js'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { currentEntries } from '../logbook/current.js'
import type { Entry } from '../logbook/kinds.js'
import { type Apart, apartOf, linesBefore, type ProposedStep, proposedSteps } from './apart.js'
import { jobSteps } from './apart-first.js'
import { leadAdvice } from './apart-leads.js'
import { ways } from './apart-ways.js'

const catalogue = shippedCatalogue()
const { stopLines } = shippedFaults().model
const renewed = (...parts: readonly string[]) => parts.map((part) => ({ part, did: 'renewed' as const }))
const at = (set: string, proposed: readonly ProposedStep[]) => ({ set, job: 'rewind', proposed })

/** A step written down as it was proposed. */
function done(number: number, n: number, proposed: ProposedStep, more: object = {}): Entry {
  return trialEntry(number, 'apart-step', {
    job: 'rewind',
    n,
    what: proposed.what,
    proposed: proposed.id,
    ...more,
  })
}

function back(number: number, step: string): Entry {
  return trialEntry(number, 'refit-step', { job: 'rewind', step })
}

test('every way in of the catalogue has its steps, each with a name of its own, pictures, and lines that there are', () => {
  expect(ways.map(({ access }) => access).sort()).toEqual(catalogue.access.map(({ id }) => id).sort())
  const steps = [...jobSteps, ...ways.flatMap((way) => way.steps)]
  expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length)
  for (const { id, pictures } of steps) expect([id, pictures.length > 0]).toEqual([id, true])
  const lines = new Set(stopLines.map(({ id }) => id))
  for (const id of [...ways.flatMap((way) => way.lines), ...steps.flatMap((step) => step.lines ?? [])])
    expect([id, lines.has(id)]).toEqual([id, true])
  const parts = new Set(catalogue.parts.map(({ id }) => id))
  for (const id of steps.flatMap(({ forParts = [] }) => forParts))
    expect([id, parts.has(id)]).toEqual([id, true])
  expect(leadAdvice.length).toBeGreaterThan(0)
})

test('a rewind: dead first, then panels, end cover, leads with their marks, prop before flange, the winding last', () => {
  const steps = proposedSteps({ parts: renewed('stator-winding'), leads: 4 }, catalogue)
  expect(steps.map(({ id }) => id)).toEqual([
    'made-dead',
    'panels-off',
    'end-cover-off',
    'exciter-leads-off',
    'output-leads-off',
    'engine-propped',
    'coupling-undone',
    'alternator-off',
    'rotor-drawn',
    'part-stator-winding',
  ])
  expect(steps.find(({ id }) => id === 'output-leads-off')).toMatchObject({
    leads: ['T1', 'T2', 'T3', 'T4'],
    joined: true,
    lines: expect.arrayContaining(['unexpected-start', 'stored-charge', 'lifting']),
  })
})

test('a way that is opened twice is opened once; sea and fuel are shut before anything of theirs is opened', () => {
  const idsOf = (...parts: readonly string[]) =>
    proposedSteps({ parts: renewed(...parts) }, catalogue).map(({ id }) => id)
  const ids = idsOf('sea-pump-seal', 'mounts', 'crank-and-bearings', 'stator-winding')
  expect(new Set(ids).size).toBe(ids.length)
  expect(ids.slice(0, 3)).toEqual(['made-dead', 'seacock-shut', 'fuel-shut'])
  expect(ids.indexOf('set-lifted')).toBeLessThan(ids.indexOf('end-cover-off'))
  expect(ids.indexOf('set-lifted')).toBeLessThan(ids.indexOf('sump-off'))
  expect(idsOf('anode')).toEqual(['made-dead', 'seacock-shut', 'panels-off', 'part-anode'])
  for (const part of ['exchanger-tubes', 'exhaust-elbow', 'sea-pump-impeller'])
    expect(idsOf(part)).toContain('seacock-shut')
  for (const part of ['injection-pump', 'fuel-filters', 'injectors'])
    expect(idsOf(part)).toContain('fuel-shut')
  const [, , tank] = proposedSteps({ parts: renewed('header-tank') }, catalogue)
  expect(tank).toMatchObject({ id: 'part-header-tank', lines: expect.arrayContaining(['hot-coolant']) })
  expect(proposedSteps({ parts: [] }, catalogue)).toEqual([])
})

const someParts = fc.subarray(
  catalogue.parts.map(({ id }) => id),
  { minLength: 1, maxLength: 5 },
)

test('whatever the parts: names differ, every way stands after those that it includes, each part after its ways', () => {
  fc.assert(
    fc.property(someParts, (parts) => {
      const steps = proposedSteps({ parts: renewed(...parts) }, catalogue)
      expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length)
      const first = (access: string) => steps.findIndex((step) => step.access === access)
      for (const { id, includes } of catalogue.access) {
        for (const other of includes) if (first(id) >= 0) expect(first(other)).toBeLessThan(first(id))
      }
      for (const part of parts) {
        const mine = steps.findIndex(({ id }) => id === `part-${part}`.slice(0, 60))
        expect(mine).toBeGreaterThanOrEqual(0)
        for (const way of catalogue.parts.find(({ id }) => id === part)!.access.opens)
          expect(first(way)).toBeLessThanOrEqual(mine)
      }
    }),
    { numRuns: 60 },
  )
})

test('putting back is the list of undoing reversed, whatever order the entries come in', () => {
  fc.assert(
    fc.property(
      someParts,
      fc.infiniteStream(fc.nat()),
      fc.nat(),
      fc.nat(),
      (parts, shuffle, undone, refitted) => {
        const proposed = proposedSteps({ parts: renewed(...parts) }, catalogue)
        const count = undone % (proposed.length + 1)
        const steps = proposed.slice(0, count).map((step, i) => done(i + 1, i + 1, step))
        const order = steps.map(({ id }) => id)
        const put = order.toReversed().slice(0, refitted % (count + 1))
        const entries = [...steps, ...put.map((id, i) => back(500 + i, id))]
        const shuffled = entries
          .map((entry) => ({ entry, key: shuffle.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ entry }) => entry)
        const apart = apartOf(shuffled, at('main', proposed))
        expect(apart.steps.map(({ key }) => key)).toEqual([
          ...order,
          ...proposed.slice(count).map(({ id }) => id),
        ])
        expect(apart.back.map(({ key }) => key)).toEqual(order.toReversed())
        expect(apart.next?.key).toBe(proposed[count]?.id)
        expect(apart.nextBack?.key).toBe(order.toReversed()[put.length])
        expect(apart.nextN).toBe(count + 1)
      },
    ),
    { numRuns: 60 },
  )
})

/** Does the next step, or puts the next one back, with nothing known but the log. */
function goOn(log: readonly Entry[], proposed: readonly ProposedStep[]): Entry | undefined {
  const apart = apartOf(log, at('main', proposed))
  const number = log.length + 1
  if (apart.next?.proposal) return done(number, apart.nextN, apart.next.proposal)
  return apart.nextBack?.entry ? back(number, apart.nextBack.entry.id) : undefined
}

test('broken off after any step it goes on from the log alone, and ends with everything back', () => {
  fc.assert(
    fc.property(someParts, (parts) => {
      const proposed = proposedSteps({ parts: renewed(...parts) }, catalogue)
      let log: readonly Entry[] = []
      for (let next = goOn(log, proposed); next !== undefined; next = goOn(log, proposed))
        log = [...log, next]
      expect(log).toHaveLength(2 * proposed.length)
      const apart = apartOf(log, at('main', proposed))
      expect([apart.next, apart.nextBack, apart.loose, apart.sharedPlaces]).toEqual([
        undefined,
        undefined,
        [],
        [],
      ])
      const order = log.slice(proposed.length).map(({ body }) => ('step' in body ? body.step : ''))
      expect(order).toEqual(
        log
          .slice(0, proposed.length)
          .map(({ id }) => id)
          .toReversed(),
      )
    }),
    { numRuns: 20 },
  )
})

const proposed = proposedSteps({ parts: renewed('anode') }, catalogue)
const [dead, sea, panels] = proposed as [ProposedStep, ProposedStep, ProposedStep]
const apartIn = (all: readonly Entry[]): Apart =>
  apartOf(currentEntries(all).entries, { ...at('main', proposed), all })

test('a step that was corrected twice is still the one that was put back; taken back, it leaves that loose', () => {
  const first = done(1, 1, dead)
  const second = { ...done(2, 1, dead, { remark: 'tag is red' }), corrects: [first.id] }
  const third = { ...done(3, 1, dead, { remark: 'tag is yellow' }), corrects: [second.id] }
  const refit = back(4, first.id)
  expect(apartIn([first, second, third, refit])).toMatchObject({
    steps: [{ key: third.id, refit: { id: refit.id } }, ...proposed.slice(1).map(({ id }) => ({ key: id }))],
    loose: [],
  })
  const voided = trialEntry(5, 'note', { text: 'never happened' }, { corrects: [first.id], voids: true })
  const apart = apartIn([first, voided, refit])
  expect(apart.loose.map(({ id }) => id)).toEqual([refit.id])
  expect(apart.next?.key).toBe('made-dead')
})

test('one’s own steps, steps that are not needed, other jobs, other sets and a place that two steps claim', () => {
  const own = trialEntry(2, 'apart-step', { job: 'rewind', n: 2, what: 'Cable tie cut' })
  const entries = [
    done(1, 1, dead),
    own,
    done(3, 2, panels, { notNeeded: true }),
    done(6, 4, sea),
    trialEntry(4, 'apart-step', { job: 'other', n: 3, what: 'x' }),
    trialEntry(5, 'apart-step', { job: 'rewind', n: 3, what: 'y' }, { set: 'other' }),
  ]
  const apart = apartIn(entries)
  expect(apart.steps.map(({ key }) => key)).toEqual([
    trialId(1),
    trialId(2),
    trialId(3),
    trialId(6),
    'part-anode',
  ])
  expect(apart.back.map(({ key }) => key)).toEqual([trialId(6), trialId(2), trialId(1)])
  expect(apart.sharedPlaces).toEqual([2])
  expect(apart.nextN).toBe(5)
})

test('stop lines are answered before a step, for the day', () => {
  const asked = (apart: Apart, day: string) =>
    linesBefore(apart.next!, { apart, day, stopLines }).map(({ id }) => id)
  const before = apartIn([])
  expect(asked(before, '2020-06-01').sort()).toEqual(['fuel-and-fire', 'unexpected-start'])
  const after = apartIn([done(1, 1, dead, { cleared: ['unexpected-start', 'fuel-and-fire'] })])
  expect(asked(after, '2020-06-01')).toEqual(['flooding'])
  expect(asked(after, '2020-06-02')).toHaveLength(3)
})
