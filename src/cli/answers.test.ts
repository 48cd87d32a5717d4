import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { showAlternatives } from './alternatives.js'
import { showBrief } from './brief.js'
import { showForecast } from './forecast.js'
import { answerForm } from './json-forms.js'
import type { Result } from './result.js'
import { showSet } from './set.js'
import { simulateFile } from './simulate.js'

// One folder: what one test works out, the next find.
const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const files = mkdtempSync(join(tmpdir(), 'gensettle-'))
const teasel = { data, boat: 'teasel', asOf: '2026-11-25' }

function jsonOf(result: Result): unknown {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const parsed = answerForm.safeParse(JSON.parse(JSON.stringify(result.json)))
  expect(parsed.error?.issues ?? []).toEqual([])
  return result.json
}

test('a demonstration boat’s set is shown, with what was never tested said so', async () => {
  const shown = await showSet(teasel)
  expect(jsonOf(shown)).toMatchObject({ boat: 'teasel', set: 'main', setFacts: { ratingKw: 4, rpm: 3000 } })
  expect(shown.ok && shown.text).toContain('as far as the log knows')
})

test('a forecast says what each figure rests on, and never less over a longer time', async () => {
  const shown = await showForecast({ ...teasel, seed: 1 })
  const { whole, parts } = jsonOf(shown) as {
    whole: { failing: number[] }
    parts: { failing: number[]; restsOn: string[] }[]
  }
  for (const { failing } of [whole, ...parts]) expect(failing).toEqual([...failing].sort((a, b) => a - b))
  expect(parts.some(({ restsOn }) => restsOn.length === 0)).toBe(true)
  expect(parts.some(({ restsOn }) => restsOn.length > 0)).toBe(true)
  expect(shown.ok && shown.text).toContain('catalogue only')
})

test('alternatives come with a verdict that names the least mean cost', async () => {
  const shown = await showAlternatives({ ...teasel, seed: 1, histories: 40 })
  const { verdict, alternatives } = jsonOf(shown) as {
    verdict: { best: string }
    alternatives: { alternative: string; barred?: string; cost: { mean: number } }[]
  }
  const open = alternatives.filter(({ barred }) => barred === undefined)
  const best = open.reduce((least, one) => (one.cost.mean < least.cost.mean ? one : least))
  expect(verdict.best).toBe(best.alternative)
  expect(shown.ok && shown.text).toContain('makes no electrical or engine work safe')
}, 120_000)

test('what is worth finding out, and what would change the answer, are told where they are asked for', async () => {
  const asked = { ...teasel, seed: 1, histories: 400 }
  const shown = await showAlternatives({ ...asked, findOut: true, whatChanges: true, when: true })
  const { verdict, findingOut, whatChanges } = jsonOf(shown) as {
    verdict: { best: string }
    findingOut: { looks: { part: string; worth: number; cost: number; pays: boolean }[]; tooSmall: number }
    whatChanges: { turning: { best: string; inputs: { id: string }[] }; maps: { rows: unknown[] }[] }
  }
  expect(whatChanges.turning.best).toBe(verdict.best)
  expect(whatChanges.turning.inputs.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['day-without-power', 'years-kept', 'hours-a-year']),
  )
  expect(whatChanges.maps.every(({ rows }) => rows.length > 3)).toBe(true)
  for (const { worth, cost, pays } of findingOut.looks) if (pays) expect(worth).toBeGreaterThan(cost)
  expect(findingOut.tooSmall).toBeGreaterThan(50)
  expect(shown.ok && shown.text).toMatch(/Do this first|Nothing is worth finding out/)
  expect(shown.ok && shown.text).toContain('What would change the answer')
  expect(shown.ok && shown.text).toContain('As money goes, ')
}, 120_000)

const figuresOf = (result: Result) =>
  (jsonOf(result) as { alternatives: { alternative: string; cost: object; headings: object }[] }).alternatives

test('the model that is written out plays to the same figures by hand', async () => {
  const [list, model] = [join(files, 'list.json'), join(files, 'model.json')]
  const options = { ...teasel, seed: 1, histories: 60 }
  const shown = await showAlternatives({ ...options, write: list, writeModel: model })
  const played = await simulateFile(model, { histories: 60, seed: 1 })
  expect(figuresOf(shown)).toMatchObject(figuresOf(played))
  const again = await showAlternatives({ ...options, with: list })
  expect(figuresOf(again)).toEqual(figuresOf(shown))
  expect(shown.ok && shown.text).toContain(`Written: ${list}`)

  const edited = JSON.parse(readFileSync(list, 'utf8'))
  edited.alternatives = [
    ...edited.alternatives.filter(({ id }: { id: string }) => id === 'leave' || id === 'give-up'),
    { id: 'tinker', name: 'Tinker', now: { parts: [{ part: 'exhaust-elbow' }], price: 12 } },
  ]
  const other = join(files, 'edited.json')
  writeFileSync(other, JSON.stringify(edited))
  const tried = figuresOf(await showAlternatives({ ...options, with: other })).map(
    ({ alternative }) => alternative,
  )
  expect(tried).toEqual(['leave', 'give-up', 'tinker'])
  edited.alternatives.push({ id: 'tinker', now: { parts: [{ part: 'mast' }] } }, { id: 'x', now: 'wait' })
  edited.version = 2
  writeFileSync(other, JSON.stringify(edited))
  const fresh = join(files, 'fresh.json')
  const refused = await showAlternatives({ ...options, with: other, write: list, writeModel: fresh })
  const paths = refused.ok ? [] : refused.problems.map(({ path }) => path)
  expect(paths.slice(0, 2)).toEqual(['--write', 'version'])
  expect(paths.length).toBeGreaterThanOrEqual(4)
  expect(existsSync(fresh)).toBe(false)
}, 120_000)

test('what was worked out once is found again', async () => {
  const own = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const ask = (folder: string) => showForecast({ ...teasel, data: folder, seed: 1 })
  const first = await ask(data)
  cpSync(join(data, 'computed'), join(own, 'computed'), { recursive: true })
  const kept = () =>
    readdirSync(join(own, 'computed')).map((name) => [name, statSync(join(own, 'computed', name)).ino])
  const before = kept()
  expect(before.length).toBeGreaterThan(0)
  expect(await ask(own)).toEqual(first)
  expect(kept()).toEqual(before)
  for (const [name] of before) truncateSync(join(own, 'computed', String(name)), 1000)
  expect(await ask(own)).toEqual(first)
}, 60_000)

test('what is asked of no set is told', async () => {
  const problems = async (options: object) => {
    const shown = await showSet({ ...teasel, ...options })
    return shown.ok ? [] : shown.problems.map(({ code, path }) => `${code} ${path}`)
  }
  expect(await problems({ boat: 'none' })).toEqual(['unknown-boat --boat'])
  expect(await problems({ set: 'none' })).toEqual(['unknown-set --set'])
  expect(await problems({ asOf: 'May' })).toEqual(['wrong-form --as-of'])
})

const briefly = { ...teasel, seed: 1, histories: 60 }

test('a brief has its form, is told as text, and written as one file that needs nothing else', async () => {
  const write = join(files, 'brief.html')
  const shown = await showBrief({ ...briefly, write })
  if (!shown.ok) throw new Error(JSON.stringify(shown.problems))
  const parsed = answerForm.safeParse(JSON.parse(JSON.stringify(shown.json)))
  expect(parsed.error?.issues ?? []).toEqual([])
  const { brief } = shown.json as unknown as { brief: { passages: { title: string }[]; colophon: string } }
  const html = readFileSync(write, 'utf8')
  expect(html).not.toMatch(/<script|<link|<img|url\(|@import|<button|<input/)
  for (const { title } of brief.passages) {
    expect(shown.text).toContain(title)
    expect(html).toContain(`<h2>${title}</h2>`)
  }
  expect(html).toContain(brief.colophon)
  expect(shown.text).toContain('Demonstration: boat and log are invented.')
  expect(shown.text).toContain(`Written: ${write}`)
  expect(Math.max(...shown.text.split('\n').map((line) => line.length))).toBeLessThan(160)
}, 300_000)

test('a file that is there is never written over, and no work is done for it', async () => {
  const write = join(files, 'there.html')
  writeFileSync(write, 'mine')
  const shown = await showBrief({ ...briefly, write })
  expect(shown.ok ? [] : shown.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'already-there --write',
  ])
  expect(readFileSync(write, 'utf8')).toBe('mine')
  const nowhere = join(files, 'none', 'brief.html')
  expect((await showBrief({ ...briefly, write: nowhere })).ok).toBe(false)
  expect(existsSync(nowhere)).toBe(false)
})
