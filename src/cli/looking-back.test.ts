import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { keptModel } from '../alternatives/kept-answer.js'
import { longestEntry } from '../logbook/entry.js'
import type { Entry, EntryOf } from '../logbook/kinds.js'
import { hearLessons, lessonsHeard } from '../store/lessons-setting.js'
import { openToRead } from '../store/read-store.js'
import { openStore } from '../store/store.js'
import { exportToFile, importFromFile } from './boat-file.js'
import { decide, rerun } from './decide.js'
import { showForecast } from './forecast.js'
import { showHindsight } from './hindsight.js'
import { answerForm } from './json-forms.js'
import { lessonsFor, showLessons } from './lessons.js'
import { addEntry } from './log.js'
import { listEntries } from './log-list.js'
import { allBoats, memoryOf } from './opened.js'
import { programVersion } from './places.js'
import type { Result } from './result.js'
import { showSet } from './set.js'
import { shippedDemonstration } from './shipped.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))
const asOf = '2026-11-25'

/** The value of an answer, as printed, in the form that is published. */
function printed(result: Result): Record<string, unknown> {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const value = JSON.parse(JSON.stringify(result.json)) as Record<string, unknown>
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  return value
}

const problemsOf = (result: Result) => (result.ok ? [] : result.problems)

/** A demonstration boat as an owner's, under another name, in a store of her own. */
function ownCopy(data: string, from: string, as: string): void {
  const opened = openStore(data)
  if (!opened.ok) throw new Error('the folder must be readable')
  const read = shippedDemonstration().read(from)
  if (!read.ok) throw new Error(`${from} must be readable`)
  const renamed = read.entries.map((entry, i) => ({
    ...entry,
    boat: as,
    id: `01J${as.slice(0, 1).toUpperCase()}${String(i).padStart(22, '0')}`,
    corrects: [],
  }))
  expect(opened.store.append(renamed)).toMatchObject({ ok: true })
  opened.store.close()
}

test('the version that is kept is that of the package', () => {
  const text = readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8')
  expect(programVersion).toBe((JSON.parse(text) as { version: string }).version)
})

/** Two boats of one owner, who hear one another's lessons. */
const data = folder()
beforeAll(() => {
  ownCopy(data, 'quillback', 'petrel')
  ownCopy(data, 'teasel', 'willet')
  expect(hearLessons(data, true)).toEqual([])
})

describe('a decision on a demonstration boat, in a real store', () => {
  let entry: EntryOf<'decision'>
  beforeAll(async () => {
    const decided = await decide(['Keep', 'it', 'as', 'it', 'is'], {
      data,
      boat: 'willet',
      asOf,
      seed: 3,
      histories: 200,
      alternative: 'leave',
      because: 'nothing is wrong',
    })
    const { type, entries } = printed(decided) as { type: string; entries: [EntryOf<'decision'>] }
    expect(type).toBe('gensettle/decide')
    entry = entries[0]
  }, 120_000)

  test('is kept with the life model, the figures, the seed, the program and what ran it', () => {
    const { kept, ...body } = entry.body
    expect(body).toEqual({ choice: 'Keep it as it is', alternative: 'leave', because: 'nothing is wrong' })
    expect(kept).toMatchObject({ seed: 3, histories: 200, program: programVersion })
    expect(kept!.engine).toContain(process.versions.v8)
    expect(kept!.result.alternatives.map(({ alternative }) => alternative)).toContain('leave')
    expect(JSON.stringify(entry).length).toBeLessThan(longestEntry)
    const read = keptModel(kept!)
    expect(read).toMatchObject({ ok: true, model: { currency: 'EUR' } })
    // lessons of the other boat stay out of what a boat file carries
    expect(read.ok && JSON.stringify(read.model)).not.toContain('lifeFactor')
  })

  test('run again gives the same to the last digit, and so it does after a journey in a boat file', async () => {
    const again = printed(await rerun(entry.id, { data }))
    expect(again).toMatchObject({ same: true, differences: [], sameProgram: true, sameEngine: true, seed: 3 })
    expect(again.figures).toBeGreaterThan(20)
    const file = join(folder(), 'willet.boat')
    printed(await exportToFile(file, { data, boat: 'willet' }))
    const elsewhere = folder()
    printed(await importFromFile(file, { data: elsewhere }))
    expect(lessonsHeard(elsewhere)).toEqual({ ok: true, heard: false })
    expect(printed(await rerun(entry.id, { data: elsewhere }))).toMatchObject({ same: true, boat: 'willet' })
  })

  test('with another figure, kept by another program, is told figure by figure', async () => {
    const { kept } = entry.body
    const result = {
      ...kept!.result,
      alternatives: kept!.result.alternatives.map((one, i) => (i === 0 ? { ...one, mean: 1 } : one)),
    }
    const body = { choice: 'x', kept: { ...kept!, result, program: '0.0.1', engine: 'another one' } }
    const other = { ...entry, id: '01JX0000000000000000000000', n: entry.n + 1, body } as Entry
    const opened = openStore(data)
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
    expect(opened.store.append([other])).toMatchObject({ ok: true })
    opened.store.close()
    const again = await rerun(other.id, { data })
    expect(printed(again)).toMatchObject({
      same: false,
      sameProgram: false,
      sameEngine: false,
      differences: [{ figure: `alternatives, ${result.alternatives[0]!.alternative}, mean`, kept: 1 }],
    })
    const text = again.ok ? again.text : ''
    expect(text).toContain('Not the same: 1 of')
    expect(text).toContain('kept by another program and another engine: version 0.0.1')
  })

  test('that was not kept so, or is none, is refused in words', async () => {
    const plain = await addEntry(
      { kind: 'decision', bare: ['wait'], flags: {} },
      { data, boat: 'willet', from: '2031' },
    )
    const [{ id }] = (printed(plain) as { entries: [{ id: string }] }).entries
    const listed = await listEntries({ data, boat: 'willet', kind: 'decision' })
    expect(listed.ok && listed.text).toContain('Keep it as it is, kept with its answer, alternative leave')
    expect(problemsOf(await rerun(id, { data }))).toMatchObject([{ code: 'nothing-kept' }])
    expect(problemsOf(await rerun('01HZZZZZZZ0000000000000001', { data }))).toMatchObject([
      { code: 'unknown-entry', allowed: expect.stringContaining('gensettle decide') },
    ])
  })

  test('for an alternative that there is not, or for a boat that is only shown, writes nothing', async () => {
    const before = printed(await listEntries({ data, boat: 'willet' })).entries
    const how = { data, boat: 'willet', asOf, seed: 3, histories: 200 }
    expect(problemsOf(await decide([], { ...how, alternative: 'tea' }))).toMatchObject([
      { code: 'unknown-alternative', allowed: expect.stringContaining('leave') },
    ])
    expect(problemsOf(await decide([], { ...how, boat: 'teasel', alternative: 'leave' }))).toMatchObject([
      { code: 'read-only' },
    ])
    expect(printed(await listEntries({ data, boat: 'willet' })).entries).toEqual(before)
  })

  test('is told in hindsight as it was said, and not worked out again', async () => {
    const looked = await showHindsight({
      data,
      boat: 'willet',
      asOf: '2026-12-31',
      seed: 1,
      months: '24',
      dates: 1,
      choices: 2,
    })
    const { choices } = printed(looked) as { choices: readonly { entry: string; said: object }[] }
    expect(choices.find((choice) => choice.entry === entry.id)!.said).toMatchObject({
      kept: true,
      best: entry.body.kept!.result.best,
    })
    expect(looked.ok && looked.text).toContain('It said: Best: ')
  })
})

describe('hindsight', () => {
  test('of a log typed in at once says so, and looks back by the day things happened where asked', async () => {
    const typed = folder()
    const how = { data, seed: 1, months: '12', dates: 1, choices: 0 }
    const late = await showHindsight({ ...how, boat: 'willet', asOf })
    expect(late.ok && late.text).toContain('As noted by then: entries typed in later are not used.')
    expect(late.ok && late.text).toContain('too few events')
    const typedIn = await addEntry(
      { kind: 'set', bare: [], flags: { 'rating-kw': ['7'], built: ['2004'] } },
      { data: typed, boat: 'plover', set: 'main' },
    )
    printed(typedIn)
    for (const year of ['2012', '2014', '2016']) {
      const flags = { 'defect-seen': ['weeps'], part: ['sea-pump-seal'] }
      printed(
        await addEntry(
          { kind: 'finding', bare: [], flags },
          { data: typed, boat: 'plover', from: `${year}-05-01` },
        ),
      )
    }
    const noted = await showHindsight({ ...how, data: typed })
    expect(printed(noted)).toMatchObject({ dates: [], unknownThen: 1, brier: null })
    expect(noted.ok && noted.text).toContain('as an old log that was typed in at once')
    const happened = await showHindsight({ ...how, data: typed, byDate: true })
    expect(printed(happened)).toMatchObject({ by: 'happened', unknownThen: 0, brier: null })
    expect(happened.ok && happened.text).toContain('Nobody could have been told this at the time')
    expect(happened.ok && happened.text).toContain('no span is declared complete')
  })
})

test('the set can be shown as noted by a day: what was typed in later is not in it, and that is said', async () => {
  const own = folder()
  const at = { data: own, boat: 'plover', set: 'main' }
  const flags = { 'rating-kw': ['7'], built: ['2004'] }
  printed(await addEntry({ kind: 'set', bare: [], flags }, { ...at, from: '2010' }))
  const asNoted = await showSet({ ...at, asOf: '2015-01-01', asNoted: true })
  expect(problemsOf(asNoted)).toMatchObject([{ code: 'unknown-set' }])
  expect(printed(await showSet({ ...at, asOf: '2015-01-01' }))).not.toHaveProperty('asNoted')
  const shown = await showSet({ data: own, boat: 'teasel', asOf: '2019-08-17', asNoted: true })
  expect(printed(shown)).toMatchObject({ asNoted: true, stops: [{}, {}] })
  expect(shown.ok && shown.text).toContain('As noted by the end of 2019-08-17; entries typed in later')
  const dayBefore = await showSet({ data: own, boat: 'teasel', asOf: '2019-08-16', asNoted: true })
  expect(printed(dayBefore)).toMatchObject({ stops: [{}] })
})

describe('lessons of other boats', () => {
  const forecast = async (boat: string) => printed(await showForecast({ data, boat, asOf, seed: 1 }))

  test('are not heard until that is wanted; then what the other has shown moves the chances, and is shown', async () => {
    expect(hearLessons(data, false)).toEqual([])
    const before = await forecast('willet')
    expect(before).not.toHaveProperty('lessons')
    const on = await showLessons('on', { data, seed: 1 })
    const { heard, boats } = printed(on) as {
      heard: boolean
      boats: readonly { boat: string; lessons: { boats: number; lifeFactor: number } }[]
    }
    expect(heard).toBe(true)
    // never the demonstration boats
    expect(boats.map(({ boat }) => boat)).toEqual(['petrel', 'willet'])
    const willet = boats.find(({ boat }) => boat === 'willet')!
    expect(willet.lessons).toMatchObject({ boats: 1 })
    expect(willet.lessons.lifeFactor).toBeGreaterThan(1)
    const shown = await showForecast({ data, boat: 'willet', asOf, seed: 1 })
    const after = printed(shown)
    const failing = (value: Record<string, unknown>) => (value.whole as { failing: number[] }).failing[2]!
    expect(failing(after)).toBeLessThan(failing(before))
    expect(after.lessons).toMatchObject({ boats: 1 })
    expect(shown.ok && shown.text).toContain('Heard: the lessons of one of your other boats.')

    printed(await showLessons('off', { data, seed: 1 }))
    expect(await forecast('willet')).toEqual(before)
  })

  test('are none for a boat alone, nor for one that is only shown', () => {
    const opened = openToRead(data)
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
    const boats = allBoats(opened.store)
    expect(hearLessons(data, true)).toEqual([])
    const of = (name: string, among = boats) => {
      const named = boats.find((boat) => boat.name === name)!
      return lessonsFor({ folder: data, boats: among, named, asOf, memory: memoryOf(data) }, { seed: 1 })
    }
    expect(of('willet')).toMatchObject({ ok: true, pooled: { boats: 1 } })
    expect(of('marram')).toEqual({ ok: true, pooled: undefined })
    const alone = boats.filter(({ name, demonstration }) => demonstration || name === 'willet')
    expect(of('willet', alone)).toEqual({ ok: true, pooled: undefined })
    opened.store.close()
  })

  test('anything but on and off is refused', async () => {
    expect(problemsOf(await showLessons('perhaps', { data, seed: 1 }))).toMatchObject([
      { code: 'not-one-of', found: 'perhaps' },
    ])
  })
})
