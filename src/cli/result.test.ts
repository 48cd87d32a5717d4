import { expect, test } from 'vitest'
import { problemText } from './result.js'

test.each([
  ['body.meterHours', '--meter-hours'],
  ['body.covers.parts.0.did', '--covers-parts 1 did'],
  ['body.months.2', '--months 3'],
  ['line 2 body.meterHours', 'line 2 body.meterHours'],
  ['--boat', '--boat'],
])('a problem at %s is told at %s', (path, place) => {
  const text = problemText([{ code: 'wrong-type', path, found: '"x"', allowed: 'a number' }])
  expect(text).toContain(`  ${place}: found "x"; allowed is a number`)
})

test('a data folder in use is told with what to do', () => {
  const used = (found: string) => problemText([{ code: 'in-use', path: '/home/data', found, allowed: '' }])
  expect(used('http://127.0.0.1:4000/')).toContain('at http://127.0.0.1:4000/ Enter it there, or stop')
  expect(used('another program that has told no address yet')).toContain('told no address yet. Stop')
})
