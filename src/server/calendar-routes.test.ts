import { afterAll, beforeAll, expect, test } from 'vitest'
import { type ServedFolder, serveFolder } from '../../test/served-folder.js'
import type { Refusal } from './http-types.js'

let served: ServedFolder
beforeAll(async () => {
  served = await serveFolder()
})
afterAll(() => served.stop())

const path = '/api/boats/marram/sets/main/jobs/rewind-2026/calendar.ics'

test('the days of a job come as a file for a calendar, the same each time', async () => {
  const asked = await served.ask(`${path}?asOf=2026-11-26&readyBy=2027-02-01`)
  expect(asked.status).toBe(200)
  expect(asked.headers['content-type']).toBe('text/calendar; charset=utf-8')
  expect(asked.headers['content-disposition']).toBe('attachment; filename="marram-rewind-2026.ics"')
  expect(asked.text).toMatch(/^BEGIN:VCALENDAR\r\n/)
  expect(asked.text).toContain('DTSTART;VALUE=DATE:20270201')
  expect((await served.ask(`${path}?asOf=2026-11-26&readyBy=2027-02-01`)).text).toBe(asked.text)
  expect((await served.ask(path, { headers: { cookie: undefined } })).status).toBe(401)
})

test.each([
  [`${path}`, 400, 'wrong-form'],
  [`${path}?asOf=2026-11-26&readyBy=2026-11-01`, 409, 'before-today'],
  ['/api/boats/marram/sets/main/jobs/painting/calendar.ics?asOf=2026-11-26', 404, 'unknown-job'],
  ['/api/boats/marram/sets/port/jobs/rewind-2026/calendar.ics?asOf=2026-11-26', 404, 'unknown-job'],
  ['/api/boats/nobody/sets/main/jobs/rewind-2026/calendar.ics?asOf=2026-11-26', 404, 'unknown-job'],
])('%s is refused', async (address, status, code) => {
  const asked = await served.ask(address)
  expect([asked.status, asked.json<Refusal>().problems.map((problem) => problem.code)]).toEqual([
    status,
    [code],
  ])
})
