import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { caseWith, nothingKnown, shippedFaults } from '../../test/fault-model.js'
import { catalogueFor } from '../catalogue/scale.js'
import { parseEntry } from '../logbook/entry.js'
import { kinds } from '../logbook/kinds.js'
import { type CaseBody, newCase, nextCaseName, type Step, stepped } from './case.js'
import { entriesOfCase, owedJobOf } from './case-entries.js'
import { caseSheetOf } from './case-sheet.js'
import { hindsightOfCases, placeOf } from './closed-cases.js'
import { diagnose } from './diagnose.js'
import { faultTables } from './infer.js'
import { faultMoneyOf } from './mending-costs.js'
import { sayCase } from './say-case.js'
import { findSymptoms } from './search.js'
import { whyOf } from './why.js'

const { model, catalogue } = shippedFaults()
const { owed } = catalogue
const tables = faultTables(model)
const money = faultMoneyOf(
  model,
  catalogueFor(catalogue, { ratingKW: 8, rpm: 1500, excitation: 'brushless-regulator' }),
  {},
)
const diagnosed = (body: CaseBody) => diagnose(tables, { body, given: nothingKnown, money })
const hot = caseWith({ present: ['little-water', 'hot-on-load'] })

describe('a case as it stands', () => {
  test('has at most three looks, none answered, each with what its outcomes would say', () => {
    const { suggestions, left } = diagnosed(
      caseWith({ present: ['hot-on-load'], outcomes: { impeller: 'good' } }),
    )
    expect(suggestions).toHaveLength(3)
    expect(left).not.toContain('impeller')
    for (const { check, ifs, bits, totalCost } of suggestions) {
      expect(check.id).not.toBe('impeller')
      expect(ifs.length).toBeGreaterThan(0)
      expect(bits).toBeGreaterThan(0)
      expect(totalCost).toBeGreaterThan(0)
    }
    expect(suggestions.map(({ score }) => score)).toEqual(
      [...suggestions.map(({ score }) => score)].sort((a, b) => b - a),
    )
  })

  test('passes over a look that could not be done', () => {
    const first = diagnosed(hot).suggestions[0]!.check.id
    const given = stepped(model, hot, { check: first, couldNot: true })
    expect(given.ok && diagnosed(given.body).suggestions.map(({ check }) => check.id)).not.toContain(first)
    expect(given.ok && diagnosed(given.body).ranked[0]).toEqual(diagnosed(hot).ranked[0])
  })

  test('says to mend where that is cheaper than another look', () => {
    const sure = caseWith({
      present: ['battery-goes-flat', 'belt-dust'],
      outcomes: { belt: 'bad', battery: 'charge-low' },
    })
    const dear = { ...money, ownPerHour: 400 }
    const { cheapest, ranked } = diagnose(tables, { body: sure, given: nothingKnown, money: dear })
    expect(ranked[0]!.fault).toBe('belt-slack')
    expect(cheapest).toMatchObject({ do: 'mend', fault: 'belt-slack' })
    expect(diagnosed(hot).cheapest.do).toBe('look')
  })

  test('says when nothing on the list explains what was seen', () => {
    expect(diagnosed(hot).unexplained).toBe(false)
    const usual = Object.fromEntries(
      model.checks.slice(0, 30).map((check) => [check.id, check.outcomes[0]!.id]),
    )
    const odd = caseWith({ absent: model.symptoms.map(({ id }) => id), outcomes: usual })
    expect(diagnosed(odd).unexplained).toBe(true)
  })

  test('is the same whatever way round it was answered, and after answers were changed and changed back', () => {
    const steps: Step[] = [
      { symptom: 'steam', is: 'present' },
      { check: 'strainer', outcome: 'free' },
      { symptom: 'black-smoke', is: 'absent' },
      { line: 'flooding', is: 'not-so' },
    ]
    const run = (list: readonly Step[]) =>
      list.reduce<CaseBody>((body, step) => {
        const next = stepped(model, body, step)
        return next.ok ? next.body : body
      }, newCase('trial'))
    const wanted = diagnosed(run(steps)).ranked.map(({ chance }) => chance)
    fc.assert(
      fc.property(fc.shuffledSubarray(steps, { minLength: steps.length }), (order) => {
        const changed = run([
          ...order,
          { check: 'strainer', outcome: 'blocked' },
          { symptom: 'steam', is: 'not-asked' },
        ])
        const back = run([
          ...order,
          { check: 'strainer', outcome: 'blocked' },
          { check: 'strainer', outcome: 'free' },
        ])
        const chances = diagnosed(back).ranked.map(({ chance }) => chance)
        for (const [at, chance] of chances.entries()) expect(chance).toBeCloseTo(wanted[at]!, 12)
        expect(diagnosed(changed).ranked[0]!.fault).toBe('intake-blocked')
      }),
      { numRuns: 5 },
    )
  })
})

describe('why', () => {
  const { posterior, left } = diagnosed({
    ...hot,
    symptoms: [...hot.symptoms, { symptom: 'black-smoke', is: 'absent' }],
  })
  const why = (fault: string) => whyOf(tables, posterior, { fault, left, catalogue })

  test('takes the list apart: what the answers say multiplies the prior, up to one factor', () => {
    const odds = (fault: string) => {
      const { chance, speaks } = why(fault)
      return chance / speaks.reduce((product, { times }) => product * times, 1)
    }
    const weight = (fault: string) => model.faults.find(({ id }) => id === fault)!.weight
    expect(odds('impeller-worn') / odds('elbow-choked')).toBeCloseTo(
      weight('impeller-worn') / weight('elbow-choked'),
      9,
    )
  })

  test('tells for from against', () => {
    const times = Object.fromEntries(
      why('elbow-choked').speaks.map(({ answer, times: by }) => [
        'symptom' in answer ? answer.symptom : '',
        by,
      ]),
    )
    expect(times['hot-on-load']).toBeGreaterThan(1)
    expect(times['black-smoke']).toBeLessThan(1)
  })

  test('names what would look the same, with the check that parts them, and what it drags down', () => {
    const { looksAlike, dragsDown, draggedParts } = why('impeller-worn')
    expect(looksAlike.map(({ fault }) => fault)).toContain('intake-blocked')
    for (const { toldApartBy } of looksAlike) expect(left).toContain(toldApartBy)
    expect(dragsDown).toContain('vane-pieces')
    expect(draggedParts.map(({ part }) => part)).toContain('exchanger-tubes')
  })
})

describe('symptoms by plain words', () => {
  test.each([
    ['smoke stings the eyes', 'white-smoke'],
    ['no water from exhaust', 'little-water'],
    ['electric shock', 'tingle'],
    ['will not start', 'no-crank'],
    ['surging', 'hunts'],
    ['gfci trips', 'residual-device-trips'],
    ['lights dim when something starts', 'volts-sag'],
    ['burning smell', 'hot-varnish'],
    ['starts then stops', 'stops-in-seconds'],
  ])('"%s" finds %s among the first three', (typed, id) => {
    expect(
      findSymptoms(model.symptoms, typed)
        .slice(0, 3)
        .map((one) => one.id),
    ).toContain(id)
  })

  test('without words are all of them, and with words of nothing none', () => {
    expect(findSymptoms(model.symptoms, ' the ')).toHaveLength(50)
    expect(findSymptoms(model.symptoms, 'qqq')).toEqual([])
  })
})

describe('a closed case', () => {
  const body: CaseBody = {
    ...caseWith({ present: ['a-few-volts'], outcomes: { diodes: 'one-shorted', links: 'x' } }),
    checks: [
      { check: 'diodes', outcome: 'one-shorted' },
      { check: 'impeller', outcome: 'good' },
      { check: 'stator-insulation', outcome: 'middling', value: 6, windingC: 15 },
      { check: 'belt', couldNot: true },
    ],
    closed: { as: 'listed', fault: 'diode-shorted', place: 1, chance: 0.8 },
  }
  const at = { boat: 'petrel', set: 'main', from: '2026-08-01' }

  test('leaves findings and readings, and no diagnosis', () => {
    const drafts = entriesOfCase(model, body, at)
    expect(drafts.map(({ kind }) => kind)).toEqual(['finding', 'finding', 'reading'])
    expect(drafts[0]!.body).toMatchObject({
      about: [{ part: 'rotor-diodes', mode: 'fail' }],
      verdict: 'defect-seen',
      check: 'diode-test',
    })
    expect(drafts[1]!.body).toMatchObject({ about: [{ part: 'sea-pump-impeller' }], verdict: 'nothing-seen' })
    expect(drafts[2]!.body).toMatchObject({
      test: 'insulation-test',
      part: 'stator-winding',
      values: [{ name: 'winding-to-frame', value: 6, unit: 'Mohm' }],
      conditions: [{ name: 'winding', value: 15, unit: 'C' }],
    })
    for (const { kind, body: one } of drafts) {
      const entry = {
        ...at,
        version: 1,
        until: at.from,
        corrects: [],
        id: '01HZZZZZZZ0000000000000001',
        noted: '2026-08-01T10:00:00Z',
        device: 'bench',
        n: 1,
        kind,
        body: one,
      }
      const parsed = parseEntry(entry)
      expect(parsed.ok ? [] : parsed.problems).toEqual([])
    }
    expect(kinds).not.toContain('diagnosis')
  })

  test('with nothing looked at leaves what it proved to be as a finding', () => {
    const drafts = entriesOfCase(model, { ...body, checks: [] }, at)
    expect(drafts).toHaveLength(1)
    expect(drafts[0]!.body).toMatchObject({
      verdict: 'defect-seen',
      about: [{ part: 'rotor-diodes', mode: 'fail' }],
    })
    expect(entriesOfCase(model, { ...body, checks: [], closed: { as: 'not-known' } }, at)).toEqual([])
  })

  test('hands over a job: parts, what mends it, what must be tried again, what stands open', () => {
    expect(owedJobOf(model, body, owed)).toEqual({
      parts: [{ part: 'rotor-diodes', mode: 'fail' }],
      mend: 'Renew the diodes as a set, with the surge arrester',
      testsOwed: ['diodes', 'stator-insulation'],
      proofsOwed: expect.arrayContaining(['diode-test', 'no-load']),
      openLines: [],
    })
    expect(owedJobOf(model, hot, owed)).toBeUndefined()
    expect(owedJobOf(model, { ...hot, closed: { as: 'listed', fault: 'earth-open' } }, owed)?.handOver).toBe(
      'electrician',
    )
  })

  test('tells the place that the truth had', () => {
    const told = { entry: '1', from: '2026-08-01', body }
    expect(hindsightOfCases([told])).toEqual([
      { name: 'trial', from: '2026-08-01', fault: 'diode-shorted', place: 1, chance: 0.8 },
    ])
    const { posterior, ranked } = diagnosed(hot)
    expect(placeOf(tables, posterior, ranked[3]!.fault)).toEqual({ place: 4, chance: ranked[3]!.chance })
    expect(placeOf(tables, posterior, 'teapot')).toBeUndefined()
    expect(nextCaseName([told])).toBe('case-2')
    expect(sayCase(body)).toBe('trial; 5 answers; closed, it was diode shorted')
  })

  test('takes no further answer', () => {
    expect(stepped(model, body, { symptom: 'steam', is: 'present' }).ok).toBe(false)
  })
})

test('a case sheet says what stops first, what was seen, what it may be and what to look at, with boxes to tick', () => {
  const opened = stepped(model, hot, { symptom: 'gas-in-space', is: 'present' })
  if (!opened.ok) throw new Error('must open')
  const sheet = caseSheetOf(model, { body: opened.body, diagnosis: diagnosed(opened.body) })
  expect(sheet.stops.map(({ title }) => title)).toEqual(['Carbon monoxide'])
  expect(sheet.seen).toHaveLength(3)
  expect(sheet.mayBe.length).toBeGreaterThan(4)
  expect(sheet.next.length).toBeGreaterThan(0)
  expect(sheet.notes.at(-1)).toMatch(/licensed people come first/)
})

test('what a mend costs is above nought for every fault, and dearer where others must do it', () => {
  for (const [f, cost] of money.byFault.entries()) expect(cost, model.faults[f]!.id).toBeGreaterThan(0)
  const cost = (id: string) => money.byFault[tables.faults.indexOf(id)]!
  expect(cost('stator-shorted-turns')).toBeGreaterThan(10 * cost('belt-slack'))
  expect(money.handOverFee).toBeGreaterThan(0)
})
