import { deflateSync } from 'fflate'
import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { trialModel } from '../../test/trial-model.js'
import type { LifeModel } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { longestKeptModel } from '../logbook/bodies-decision.js'
import { longestEntry, parseEntry } from '../logbook/entry.js'
import { compareResults, type KeptAnswer, keepAnswer, keptModel, resultOf } from './kept-answer.js'
import { reportOf } from './report.js'
import { simulate } from './simulate.js'

const by = { program: '0.1.0', reckoning: 'a'.repeat(64), engine: 'node 20, v8 11' }
const model = trialModel(
  [
    {
      id: 'pump',
      age: { years: 6 },
      repair: { price: 400 },
      modes: [{ id: 'seal', clock: 'years', shape: 2.5, scale: 8, logSd: 0.3 }],
    },
  ],
  {
    setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
    alternatives: [
      { id: 'leave' },
      { id: 'mend', now: { parts: [{ part: 'pump' }], quote: { price: 500 } } },
      { id: 'patch', now: { parts: [{ part: 'pump', outcome: 'patched' }], price: 50 }, barred: 'wet' },
    ],
  },
)

function answered(of: LifeModel, { seed = 1, histories = 300 } = {}) {
  const samples = simulate(of, posteriorOf(of, { seed }), { seed, from: 0, count: histories })
  return { model: of, samples, report: reportOf(of, samples, seed) }
}

function kept(of: LifeModel = model, histories = 300): KeptAnswer {
  const made = keepAnswer(answered(of, { histories }), { seed: 1, by })
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.kept
}

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')

test('an entry holds it, and run again from its text it gives the same figures', () => {
  const entry = trialEntry(1, 'decision', { choice: 'mend it', alternative: 'mend', kept: kept() })
  const parsed = parseEntry(JSON.stringify(entry))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const stored = (JSON.parse(parsed.text) as typeof entry).body.kept!
  const read = keptModel(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  expect(read.model).toEqual(model)
  const again = answered(read.model, stored)
  const { figures, differences } = compareResults(stored.result, resultOf(again))
  expect(differences).toEqual([])
  // six of the verdict, seven of the walk-away price, three a choice, and the bar
  expect(figures).toBe(6 + 7 + 3 * 3 + 1)
})

test('another seed, or another figure in the model, is told figure by figure', () => {
  const { result } = kept()
  const other = compareResults(result, resultOf(answered(model, { seed: 2 })))
  expect(other.differences.map(({ figure }) => figure)).toContain('alternatives, mend, mean')
  expect(other.differences.find(({ figure }) => figure === 'walkAway, price')).toMatchObject({
    kept: result.walkAway!.price,
  })
  const without = trialModel([...model.parts], { ...model, alternatives: model.alternatives.slice(0, 2) })
  const gone = compareResults(result, resultOf(answered(without)))
  expect(gone.differences).toContainEqual({ figure: 'alternatives, patch, barred', kept: true, now: null })
})

test('of one history the error is not known, which JSON tells as null', () => {
  const { result } = kept(trialModel([...model.parts], { ...model, alternatives: [{ id: 'leave' }] }), 1)
  expect(result.alternatives[0]!.error).toBeNull()
  expect(parseEntry(trialEntry(1, 'decision', { choice: 'x', kept: kept(model, 2) })).ok).toBe(true)
})

test.each([
  ['AAAA', 20, 'bytes that cannot be unpacked'],
  [base64(deflateSync(new TextEncoder().encode('{"a":1}'))), 100, '7 bytes'],
  [base64(deflateSync(new TextEncoder().encode('{"a":'))), 5, 'bytes that are no JSON'],
  [base64(deflateSync(new Uint8Array(40_000_000))), 4_000_000, 'more bytes than were promised'],
])(
  'what is no packed model is told, and never unpacked past what it promises: %.12s',
  (text, bytes, found) => {
    expect(keptModel({ model: text, modelBytes: bytes })).toMatchObject({
      ok: false,
      problems: [{ code: 'broken-model', found }],
    })
  },
)

test('what is packed but no life model has everything wrong with it told', () => {
  const bytes = new TextEncoder().encode('{"type":"gensettle/life-model","version":1,"horizonYears":-1}')
  const read = keptModel({ model: base64(deflateSync(bytes)), modelBytes: bytes.length })
  expect(!read.ok && read.problems.map(({ path }) => path).sort()).toEqual(['horizonYears', 'parts'])
})

test('a life model that no entry can hold is refused', () => {
  let state = 1
  const letter = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return 'abcdefghijklmnopqrstuvwxyz0123456789'[state % 36]!
  }
  const id = () => `p${Array.from({ length: 60 }, letter).join('')}`
  const parts = Array.from({ length: 500 }, () => ({
    id: id(),
    name: Array.from({ length: 180 }, letter).join(''),
    modes: [{ id: id(), clock: 'years' as const, shape: 2, scale: 9 }],
  }))
  const big = trialModel(parts)
  const made = keepAnswer({ ...answered(model), model: big }, { seed: 1, by })
  expect(made).toMatchObject({ ok: false, problems: [{ code: 'too-long', path: 'kept.model' }] })
})

/** A decision with every field at its longest, filled with one letter. */
function longest(letter: string) {
  const filled = letter.repeat(4000)
  return trialEntry(1, 'decision', {
    choice: letter.repeat(1000),
    because: filled,
    remark: filled,
    photographs: Array.from({ length: 50 }, () => ({
      sha256: 'a'.repeat(64),
      type: 'image/jpeg' as const,
      bytes: 50_000_000,
      shows: letter.repeat(300),
    })),
    kept: {
      ...kept(),
      model: 'A'.repeat(longestKeptModel),
      engine: letter.repeat(200),
      program: letter.repeat(40),
    },
  })
}

test('the longest that every field may be still fits into an entry', () => {
  const parsed = parseEntry(longest('x'))
  expect(parsed.ok && parsed.text.length).toBeLessThan(longestEntry)
})

test('one whose letters take more room when written is refused, for a boat file could not bring it back', () => {
  expect(parseEntry(longest('"'))).toMatchObject({ ok: false, problems: [{ code: 'too-long' }] })
})

test('a form that is none is refused with everything that is wrong', () => {
  const broken = { ...kept(), model: 'no base64!', seed: -1, histories: 0 }
  const parsed = parseEntry(trialEntry(1, 'decision', { choice: 'x', kept: broken }))
  expect(!parsed.ok && parsed.problems.map(({ path }) => path).sort()).toEqual([
    'body.kept.histories',
    'body.kept.model',
    'body.kept.seed',
  ])
})
