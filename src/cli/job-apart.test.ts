import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { showJobApart } from './job-apart.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

interface Value {
  readonly next: string | null
  readonly nextBack: string | null
  readonly back: readonly string[]
  readonly steps: readonly { readonly key: string; readonly proposed: string | null }[]
  readonly lines: readonly { readonly id: string }[]
  readonly wayOut: object | null
}

async function apart(options: Parameters<typeof showJobApart>[0]) {
  const shown = await showJobApart(options)
  if (!shown.ok) throw new Error(JSON.stringify(shown.problems))
  const value = JSON.parse(JSON.stringify(shown.json)) as Value
  expect(answerForm.safeParse(value).error?.issues ?? []).toEqual([])
  return { value, text: shown.text }
}

test('a quoted job is proposed, written down step by step, found again, and printed with its pictures', async () => {
  const data = folder()
  const add = async (
    kind: Parameters<typeof addEntry>[0]['kind'],
    body: object,
    photograph: string[] = [],
  ) => {
    const written = await addEntry(
      { kind, bare: [], flags: {} },
      { data, boat: 'petrel', set: 'main', body: JSON.stringify(body), photograph },
    )
    if (!written.ok) throw new Error(JSON.stringify(written.problems))
    return (written.json as unknown as { readonly entries: readonly { readonly id: string }[] }).entries[0]!
      .id
  }
  await add('set', { ratingKw: 10, rpm: 1500, leads: 4 })
  await add('space', { wayOut: [{ name: 'hatch', widthMm: 500, heightMm: 500 }], liftKg: 200 })
  await add('quote', {
    job: 'rewind',
    amount: 2400,
    firmness: 'firm',
    subjectToStripDown: true,
    excludes: [],
    covers: { parts: [{ part: 'stator-winding', did: 'renewed' }] },
  })
  const before = await apart({ data, out: true, asOf: '2126-01-01' })
  expect(before.value.next).toBe('made-dead')
  expect(before.value.lines.map(({ id }) => id)).toContain('unexpected-start')
  expect(before.value.wayOut).toMatchObject({ passage: 'too-large', lift: 'too-large' })
  expect(before.text).toContain('from the set’s own manual: ____')
  expect(before.text).toMatch(/mm too large for the tightest opening \(hatch\)/)

  const picture = join(data, 'a.jpg')
  await sharp({ create: { width: 90, height: 60, channels: 3, background: '#446622' } })
    .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
    .jpeg()
    .toFile(picture)
  const step = { job: 'rewind', n: 1, what: 'Made dead', proposed: 'made-dead' }
  const id = await add(
    'apart-step',
    { ...step, bag: { label: 'tags' }, torque: { nm: 24, source: 'manual, page 41' } },
    [picture],
  )
  const after = await apart({ data, asOf: '2126-01-01' })
  expect([after.value.next, after.value.nextBack, after.value.back]).toEqual(['panels-off', id, [id]])
  expect(after.text).toContain('24 N·m (manual, page 41)')
  await add('refit-step', { job: 'rewind', step: id, torqueNm: 24 })
  const html = join(data, 'apart.html')
  expect((await apart({ data, html, asOf: '2126-01-01' })).value.nextBack).toBeNull()
  const page = readFileSync(html, 'utf8')
  for (const words of [
    'Undoing',
    'Putting back',
    'Unexpected start',
    '1. Made dead',
    'data:image/webp;base64,',
  ])
    expect(page).toContain(words)
  expect(page).not.toContain('GPS')
})

test('a job that nobody spoke of is refused, with those that are', async () => {
  expect(await showJobApart({ data: folder(), boat: 'marram', job: 'tea' })).toMatchObject({
    ok: false,
    problems: [{ code: 'not-one-of', path: 'job', found: 'tea' }],
  })
})
