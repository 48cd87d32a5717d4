import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import type { Result } from './result.js'
import { showLoads, showSize } from './size.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

function jsonOf(result: Result): Record<string, unknown> {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const printed = JSON.parse(JSON.stringify(result.json)) as Record<string, unknown>
  expect(answerForm.safeParse(printed).error?.issues ?? []).toEqual([])
  return printed
}

test('loads of the catalogue are found by their words', async () => {
  const found = jsonOf(await showLoads({ search: 'heater water' }))
  expect((found.loads as { id: string }[]).map(({ id }) => id)).toEqual([
    'water-heater-22',
    'water-heater-75',
  ])
  const none = await showLoads({ search: 'mast' })
  expect(none.ok && none.text).toContain('No load of the catalogue')
})

test('loads are entered, listed, sized and held to a rule', async () => {
  const data = folder()
  const add = (
    kind: 'set' | 'load' | 'house-rule' | 'habits',
    bare: string[],
    flags: Record<string, string[]>,
  ) => addEntry({ kind, bare, flags }, { data, boat: 'petrel', ...(kind === 'set' ? { set: 'main' } : {}) })
  await add('set', [], { 'rating-kw': ['7'], volts: ['230'], hertz: ['50'], rpm: ['1500'] })
  const empty = await showSize({ data })
  expect(empty.ok && empty.text).toContain('No load is in the log yet')
  expect(jsonOf(empty).sets).toHaveLength(7)
  await add('load', ['oven'], { is: ['oven'], 'run-w': ['2300'], basis: ['measured'] })
  await add('load', ['heater', 'water-heater-75'], {})
  await add('load', ['mast'], { is: ['mast'] })
  await add('house-rule', ['baking', 'oven', 'heater'], {})
  await add('habits', [], { 'set-hours-cooking': ['1'], 'days-mild': ['60'] })
  const listed = await showLoads({ data })
  expect(
    (jsonOf(listed).loads as { id: string; watts: number }[]).map(({ id, watts }) => [id, watts]),
  ).toEqual([
    ['oven', 2300],
    ['heater', 2000],
  ])
  expect(listed.ok && listed.text).toContain('Rules of the house')
  expect(listed.ok && listed.text).toContain('load mast: is: found mast')
  const sized = await showSize({ data, sizes: '2,3' })
  const { sets, smallest, figures } = jsonOf(sized) as {
    sets: { set: { id: string } }[]
    smallest: string
    figures: { kW: { most: number } }[]
  }
  expect(sets.map(({ set }) => set.id)).toEqual(['size-2', 'size-3', 'main'])
  expect(smallest).toBe('size-3')
  // Never both: the larger of the two.
  expect(figures.map(({ kW }) => kW.most)).toEqual([2.3])
  expect(sized.ok && sized.text).toContain('A set of 2 kW: does not carry it')
})

test('ratings that are none are refused', async () => {
  const refused = await showSize({ data: folder(), sizes: '5,many' })
  expect(refused.ok ? [] : refused.problems.map(({ path }) => path)).toEqual(['--sizes'])
})

test.each(['marram', 'quillback', 'teasel'])('the demonstration boat %s is sized', async (boat) => {
  const { loads, problems, sets } = jsonOf(await showSize({ data: folder(), boat, asOf: '2026-11-25' })) as {
    loads: unknown[]
    problems: unknown[]
    sets: { verdict: string }[]
  }
  expect(loads.length).toBeGreaterThan(5)
  expect(problems).toEqual([])
  expect(sets.length).toBeGreaterThan(4)
})
