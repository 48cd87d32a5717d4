import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { showAlternatives } from './alternatives.js'
import { showForecast } from './forecast.js'
import type { Result } from './result.js'
import { showSet } from './set.js'

const data = mkdtempSync(join(tmpdir(), 'gensettle-'))
const teasel = { data, boat: 'teasel', asOf: '2026-11-25' }

function jsonOf(result: Result): unknown {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
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
})

test('what is asked of no set is told', async () => {
  const problems = async (options: object) => {
    const shown = await showSet({ ...teasel, ...options })
    return shown.ok ? [] : shown.problems.map(({ code, path }) => `${code} ${path}`)
  }
  expect(await problems({ boat: 'none' })).toEqual(['unknown-boat --boat'])
  expect(await problems({ set: 'none' })).toEqual(['unknown-set --set'])
  expect(await problems({ asOf: 'May' })).toEqual(['wrong-form --as-of'])
})
