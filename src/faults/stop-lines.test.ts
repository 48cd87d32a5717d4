import { describe, expect, test } from 'vitest'
import { caseWith, nothingKnown, shippedFaults } from '../../test/fault-model.js'
import type { OpenLine } from '../proof/open-lines.js'
import { type CaseBody, newCase, type Step, stepped } from './case.js'
import { diagnose } from './diagnose.js'
import { faultTables } from './infer.js'
import { clearanceOf, firstQuestions, lineStates, sayHeld } from './stop-lines.js'

const { model } = shippedFaults()
const tables = faultTables(model)
const money = {
  currency: 'USD',
  ownPerHour: 10,
  perUsd: 1,
  byFault: model.faults.map(() => 100),
  handOverFee: 300,
}
const diagnosed = (body: ReturnType<typeof caseWith>) =>
  diagnose(tables, { body, given: nothingKnown, money })
const line = (id: string) => model.stopLines.find((one) => one.id === id)!
const stateOf = (body: ReturnType<typeof caseWith>, id: string) =>
  lineStates(model, body).find((one) => one.line.id === id)!.is

function afterSteps(...steps: readonly Step[]) {
  return steps.reduce((body, step) => {
    const next = stepped(model, body, step)
    if (!next.ok) throw new Error(JSON.stringify(next.problems))
    return next.body
  }, newCase('trial'))
}

describe('the first screen', () => {
  test('asks for shock, fuel, carbon monoxide, flooding, fuel through the skin and people in the water', () => {
    const asked = firstQuestions(lineStates(model, newCase('trial'))).map(({ id }) => id)
    expect(asked.sort()).toEqual(
      [
        'carbon-monoxide',
        'flooding',
        'fuel-and-fire',
        'fuel-injury',
        'people-in-water',
        'touch-voltage',
      ].sort(),
    )
  })

  test('says what to do, in words', () => {
    for (const { act, clearWhen, id } of model.stopLines) {
      expect(act.split(' ').length, id).toBeGreaterThanOrEqual(3)
      expect(clearWhen.length, id).toBeGreaterThan(0)
    }
    expect(line('carbon-monoxide').act).toMatch(/^Everyone out into fresh air, now/)
    expect(line('people-in-water').act).toMatch(/cut the power first.*do not jump in/)
    expect(line('fuel-injury').act).toMatch(/^To an emergency hospital now/)
  })

  test('nothing that is written offers to go round a protection', () => {
    const all = JSON.stringify(model).toLowerCase()
    for (const trick of [
      /jumper it/,
      /bypass the/,
      /bridge the/,
      /tape (up|the hose)/,
      /tie (up|back|down)/,
    ]) {
      expect(all).not.toMatch(trick)
    }
    expect(line('bypassed-trip').act).toMatch(/^Take the bridge out/)
  })
})

describe('a stop line', () => {
  test('that was answered yes bars every look that names it, until it is cleared', () => {
    const open = afterSteps({ line: 'carbon-monoxide', is: 'open' })
    const running = model.checks.filter(({ clearFirst }) => clearFirst.includes('carbon-monoxide'))
    expect(running.length).toBeGreaterThan(10)
    for (const check of running) {
      expect(clearanceOf(check, lineStates(model, open)).open.map(({ id }) => id)).toContain(
        'carbon-monoxide',
      )
    }
    const body = { ...caseWith({ present: ['little-water', 'hot-on-load'] }), lines: open.lines }
    const { suggestions, barred } = diagnosed(body)
    for (const { check } of suggestions) expect(check.clearFirst).not.toContain('carbon-monoxide')
    expect(barred.length).toBeGreaterThan(0)
    expect(barred[0]!.open.map(({ id }) => id)).toEqual(['carbon-monoxide'])
  })

  test('opens by what was seen, whatever was said before', () => {
    const said = afterSteps({ line: 'touch-voltage', is: 'not-so' })
    expect(stateOf(said, 'touch-voltage')).toBe('not-so')
    expect(
      stateOf(
        afterSteps({ line: 'touch-voltage', is: 'not-so' }, { symptom: 'tingle', is: 'present' }),
        'touch-voltage',
      ),
    ).toBe('open')
    expect(stateOf(afterSteps({ check: 'stator-insulation', outcome: 'dead' }), 'insulation')).toBe('open')
    expect(stateOf(afterSteps({ check: 'gas-on-load', outcome: 'danger' }), 'carbon-monoxide')).toBe('open')
  })

  test('that was cleared opens again by something new', () => {
    const cleared = afterSteps(
      { symptom: 'gas-in-space', is: 'present' },
      { line: 'carbon-monoxide', is: 'cleared', because: 'joint mended, 4 ppm on load' },
    )
    expect(stateOf(cleared, 'carbon-monoxide')).toBe('cleared')
    const again = stepped(model, cleared, { check: 'gas-on-load', outcome: 'danger' })
    expect(again.ok && stateOf(again.body, 'carbon-monoxide')).toBe('open')
  })

  test('of the gravest is lifted by no reason, only by how it was cleared', () => {
    const never = [
      'carbon-monoxide',
      'earth-path',
      'links-unproven',
      'touch-voltage',
      'water-in-cylinders',
      'people-in-water',
      'fuel-injury',
    ]
    expect(model.stopLines.filter(({ neverPassedOver }) => neverPassedOver).map(({ id }) => id)).toEqual(
      never,
    )
    for (const id of never) {
      expect(stepped(model, newCase('trial'), { line: id, is: 'overruled', because: 'in a hurry' }).ok).toBe(
        false,
      )
      expect(stepped(model, newCase('trial'), { line: id, is: 'cleared' }).ok).toBe(false)
    }
    expect(stepped(model, newCase('trial'), { line: 'wrong-volts', is: 'overruled' }).ok).toBe(false)
    const overruled = afterSteps({ line: 'wrong-volts', is: 'overruled', because: 'maker allows 12 % droop' })
    expect(lineStates(model, overruled).find(({ is }) => is === 'overruled')!.because).toMatch(/12 %/)
  })

  test('that nobody asked for is confirmed before the look; one that holds each time, each time', () => {
    const body = afterSteps(
      { line: 'people-in-water', is: 'not-so' },
      { line: 'touch-voltage', is: 'not-so' },
    )
    const check = model.checks.find(({ id }) => id === 'volts-unloaded')!
    const { open, confirm } = clearanceOf(check, lineStates(model, body))
    expect(open).toEqual([])
    const ids = confirm.map(({ id }) => id)
    expect(ids).toContain('people-in-water')
    expect(ids).toContain('insulation')
    expect(ids).not.toContain('touch-voltage')
  })

  test('does not bar the one look that a low oil lamp allows', () => {
    const lamp = afterSteps({ symptom: 'oil-pressure-low', is: 'present' })
    expect(stateOf(lamp, 'oil-pressure')).toBe('open')
    const gauge = model.checks.find(({ id }) => id === 'oil-gauge')!
    expect(clearanceOf(gauge, lineStates(model, lamp)).open).toEqual([])
    expect(gauge.how).toMatch(/five seconds/)
  })
})

describe('what the log holds apart from the case', () => {
  const held: OpenLine = {
    ...{
      line: 'earth-path',
      hazard: 'No safe path to earth',
      why: '3 Ω',
      act: '',
      clearWhen: [],
      closedBy: [],
    },
    ...{ bars: 'energising', eachTime: false, entries: ['b'], never: true, licensed: true },
    causes: [{ by: 'test', entry: 'b', order: 3, why: '3 Ω to the bond bar.' }],
  }
  const stateIn = (body: CaseBody, inLog: readonly OpenLine[]) =>
    lineStates(model, body, inLog).find(({ line: { id } }) => id === inLog[0]!.line)!

  test('is open in the case too, whatever is answered there, and bars the looks that name it', () => {
    const cleared = afterSteps({ line: 'earth-path', is: 'cleared', because: 'looks good' })
    expect(stateIn(cleared, [held])).toMatchObject({ is: 'open', inLog: held.causes })
    const states = lineStates(model, newCase('trial'), [held])
    const barred = model.checks.find(({ clearFirst }) => clearFirst.includes('earth-path'))!
    expect(clearanceOf(barred, states).open.map(({ id }) => id)).toContain('earth-path')
    expect(sayHeld(held.causes)[0]).toMatch(/no answer clears that: 3 Ω to the bond bar\.$/)
  })

  test('and was passed over there, is passed over here, with the reason', () => {
    const passedOver = {
      entry: 'p',
      date: '2024-05-01',
      order: 4,
      about: 'insulation',
      because: 'to be rewound',
    }
    const low = { ...held, line: 'insulation', never: false, passedOver }
    expect(stateIn(newCase('trial'), [low])).toMatchObject({ is: 'overruled', because: 'to be rewound' })
  })

  test('by a case alone is cleared in the case', () => {
    const byCase = { ...held, causes: [{ ...held.causes[0]!, by: 'case' as const }] }
    expect(stateIn(newCase('trial'), [byCase])).toMatchObject({ is: 'unknown', inLog: [] })
  })
})

test('names are of one kind only, so that an answer needs no more than a name', () => {
  const names = [...model.stopLines, ...model.symptoms, ...model.checks].map(({ id }) => id)
  expect(names.filter((id, at) => names.indexOf(id) !== at)).toEqual([])
})
