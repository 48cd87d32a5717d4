import { expect, test } from 'vitest'
import { compile } from '../alternatives/program.js'
import { playSpan } from '../alternatives/simulate.js'
import { type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { openPlayers, playOnWorkers } from './play.js'

const model: LifeModel = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 6,
  setFactor: { boatLogSd: 0.3, setLogSd: 0.3 },
  checks: [{ id: 'look', everyHours: 60, diligence: 0.6 }],
  labour: { paidPerHour: 60, overrun: { median: 1.1, logSd: 0.3 } },
  parts: ['pump', 'belt', 'hose'].map((id, i) => ({
    id,
    age: { years: i + 1 },
    repair: { price: { median: 200, logSd: 0.4 }, hours: 2, supply: [{ chance: 1, days: 5 }] },
    modes: [
      {
        id: 'wear',
        clock: 'years',
        shape: 2,
        scale: 4 + i,
        logSd: 0.3,
        delay: { clock: 'years', median: 0.2, logSd: 0.5 },
        checks: [{ check: 'look', detection: 0.5 }],
      },
    ],
  })),
  alternatives: [{ id: 'leave' }, { id: 'mend', now: { parts: [{ part: 'pump' }] } }],
})
const posterior = posteriorOf(model, { seed: 3 })
const span = { seed: 11, from: 40, count: 230 }

test('any number of workers and any chunk give the bits of one thread', async () => {
  const alone = playSpan(compile(model, posterior), span)
  for (const split of [
    { workers: 1, historiesPerChunk: 230 },
    { workers: 2, historiesPerChunk: 47 },
  ]) {
    expect(await playOnWorkers(model, posterior, { ...span, ...split })).toEqual(alone)
  }
})

test('progress rises to the whole', async () => {
  const seen: number[] = []
  await playOnWorkers(model, posterior, {
    ...span,
    workers: 2,
    historiesPerChunk: 50,
    onProgress: ({ histories }) => seen.push(histories),
  })
  expect(seen).toHaveLength(5)
  expect(seen.at(-1)).toBe(span.count)
  expect(seen).toEqual([...seen].sort((a, b) => a - b))
})

test('a stop is heard, and its reason given back', async () => {
  const stop = new AbortController()
  const playing = playOnWorkers(model, posterior, {
    ...span,
    count: 5_000_000,
    workers: 1,
    signal: stop.signal,
    onProgress: () => stop.abort(new Error('enough')),
  })
  await expect(playing).rejects.toThrow('enough')
})

test('a count or a number of workers that is none is refused', async () => {
  await expect(playOnWorkers(model, posterior, { ...span, count: 0 })).rejects.toThrow(
    'count must be a whole number from 1 on; found 0',
  )
  await expect(playOnWorkers(model, posterior, { ...span, workers: 1.5 })).rejects.toThrow(
    'workers must be a whole number from 1 on; found 1.5',
  )
})

test('histories picked by their numbers are those of the whole span', async () => {
  const whole = playSpan(compile(model, posterior), span)
  const histories = Int32Array.from({ length: 50 }, (_, i) => 40 + ((i * 37) % 230))
  const picked = await playOnWorkers(model, posterior, {
    seed: span.seed,
    histories,
    workers: 2,
    historiesPerChunk: 17,
  })
  picked.forEach(({ columns }, a) => {
    columns.forEach((values, k) => {
      expect(values).toEqual(Float64Array.from(histories, (i) => whole[a]!.columns[k]![i - 40]!))
    })
  })
})

test('another model of the same set is played as it would be by itself', async () => {
  const other = { ...model, horizonYears: 11, labour: { ...model.labour, paidPerHour: 90 } }
  const alone = playSpan(compile(other, posterior), span)
  const players = openPlayers(model, posterior, { workers: 2 })
  try {
    const before = await players.play(model.alternatives, { ...span, historiesPerChunk: 60 })
    expect(await players.playModel(other, { ...span, historiesPerChunk: 60 })).toEqual(alone)
    expect(await players.play(model.alternatives, { ...span, historiesPerChunk: 60 })).toEqual(before)
  } finally {
    await players.close()
  }
})
