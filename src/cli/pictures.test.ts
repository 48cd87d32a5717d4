import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { exportToFile } from './boat-file.js'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import { copyPictures } from './pictures.js'

const place = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

async function note(data: string, files: readonly string[]) {
  return addEntry(
    { kind: 'note', bare: ['the leads as found'], flags: {} },
    { data, boat: 'trial', photograph: files },
  )
}

async function withPlace(file: string): Promise<string> {
  await sharp({ create: { width: 64, height: 48, channels: 3, background: '#336699' } })
    .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
    .jpeg()
    .toFile(file)
  return file
}

test('pictures are handed on without their places, or as they are where that is asked for', async () => {
  const data = place()
  const file = await withPlace(join(data, 'leads.jpg'))
  expect(await note(data, [file])).toMatchObject({ ok: true })
  for (const withPlaces of [false, true]) {
    const folder = join(data, `copies-${withPlaces}`)
    const copied = await copyPictures(folder, { data, withPlaces })
    if (!copied.ok) throw new Error(JSON.stringify(copied.problems))
    expect(answerForm.safeParse(JSON.parse(JSON.stringify(copied.json))).error?.issues ?? []).toEqual([])
    const [name] = readdirSync(folder)
    expect(name).toMatch(/^\d{4}-\d\d-\d\d-note-[0-9a-z]{6}-1\.jpg$/)
    const bytes = readFileSync(join(folder, name!))
    expect(bytes.equals(readFileSync(file))).toBe(withPlaces)
    expect((await sharp(bytes).metadata()).exif !== undefined).toBe(withPlaces)
    expect(await copyPictures(folder, { data })).toMatchObject({ problems: [{ code: 'already-there' }] })
  }
  const told = await exportToFile(join(data, 'trial.boat'), { data })
  expect(told.ok && told.text).toContain('1 of the photographs tell, or may tell, where they were taken')
})

test('a picture that is none stops the entry, with the file named, and nothing is written', async () => {
  const data = place()
  const whole = await withPlace(join(data, 'whole.jpg'))
  const half = join(data, 'half.jpg')
  writeFileSync(half, readFileSync(whole).subarray(0, 300))
  const empty = join(data, 'empty.jpg')
  writeFileSync(empty, '')
  expect(await note(data, [whole, half, empty])).toMatchObject({
    ok: false,
    problems: [
      { code: 'damaged', path: `--photograph ${half}` },
      { code: 'empty', path: `--photograph ${empty}` },
    ],
  })
  expect(await copyPictures(join(data, 'copies'), { data, boat: 'trial' })).toMatchObject({
    problems: [{ code: 'unknown-boat', path: '--boat' }],
  })
})
