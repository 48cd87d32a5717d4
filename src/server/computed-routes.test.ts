import { afterAll, beforeAll, expect, test } from 'vitest'
import { type ServedFolder, serveFolder } from '../../test/served-folder.js'
import { memoryOf } from '../cli/opened.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { unpacked } from '../forecast/packed.js'
import { posteriorOf } from '../forecast/posterior.js'
import { digestOf } from '../store/computed.js'

let served: ServedFolder
beforeAll(async () => {
  served = await serveFolder()
})
afterAll(() => served.stop())

const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 3,
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  parts: [
    {
      id: 'pump',
      age: { years: 4 },
      modes: [{ id: 'seal', clock: 'years', shape: 2, scale: 5, logSd: 0.3 }],
    },
  ],
})
const restsOn = { what: 'posterior', model, seed: 1 }
const mine = '?by=/assets/main-1a2b.js'

test('a posterior that was worked out before is sent to a script of this program, and to no other', async () => {
  const at = `/api/computed/${digestOf(restsOn)}`
  expect(await served.ask(at + mine)).toMatchObject({ status: 204, text: '' })
  const made = memoryOf(served.folder).posterior(restsOn, () => posteriorOf(model, { seed: 1 }))
  const sent = await served.ask(at + mine)
  expect(sent.status).toBe(200)
  expect(sent.headers['cache-control']).toBe('no-store')
  expect(unpacked(new Uint8Array(sent.bytes))).toEqual(made)
  for (const by of ['', '?by=/assets/main-9z9z.js']) expect((await served.ask(at + by)).status).toBe(204)
  expect((await served.ask(`/api/computed/${digestOf('another')}${mine}`)).status).toBe(204)
  expect((await served.ask(at + mine, { headers: { cookie: undefined } })).status).toBe(401)
  expect((await served.ask(`/api/computed/..%2Fport${mine}`)).status).toBe(404)
})
