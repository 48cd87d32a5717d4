import { existsSync, mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { hearLessons, lessonsHeard } from './lessons-setting.js'
import { openStore } from './store.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

test('lessons are heard from when it is said until it is taken back, and not before', () => {
  const at = join(folder(), 'new')
  expect(lessonsHeard(at)).toEqual({ ok: true, heard: false })
  expect(existsSync(at)).toBe(false)
  expect(hearLessons(at, true)).toEqual([])
  expect(lessonsHeard(at)).toEqual({ ok: true, heard: true })
  expect(hearLessons(at, false)).toEqual([])
  expect(lessonsHeard(at)).toEqual({ ok: true, heard: false })
})

test('a file that says neither is told, and so is one that cannot be read or written', () => {
  const at = folder()
  writeFileSync(join(at, 'lessons'), 'perhaps')
  expect(lessonsHeard(at)).toMatchObject({
    ok: false,
    problems: [{ code: 'wrong-setting', found: 'perhaps' }],
  })
  const other = folder()
  mkdirSync(join(other, 'lessons'))
  expect(lessonsHeard(other)).toMatchObject({ ok: false, problems: [{ code: 'wrong-setting' }] })
  expect(hearLessons(other, true)).toMatchObject([{ code: 'cannot-be-written' }])
})

test('a copy of the folder does not have it', () => {
  const at = folder()
  hearLessons(at, true)
  const opened = openStore(at)
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  opened.store.append([trialEntry(1, 'hours', { meterHours: 12 })])
  const copy = join(folder(), 'copy')
  expect(opened.store.backUp(copy)).toEqual({ ok: true })
  opened.store.close()
  expect(readdirSync(copy)).not.toContain('lessons')
  expect(lessonsHeard(copy)).toEqual({ ok: true, heard: false })
})
