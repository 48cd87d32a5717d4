import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import type { Body } from '../logbook/kinds.js'
import { type Activity, activitiesOf } from './activities.js'

const step = (name: string, ...after: string[]): Activity => ({
  ...{ name, what: name, after, lasts: { is: 'three-point', low: 1, usual: 2, high: 4 }, needs: ['owner'] },
  ...{ inOneRun: false, progress: { is: 'to-do' }, proposed: true, entries: [], opensSet: false },
})
const proposed = [step('get'), step('check', 'get'), step('open', 'check'), step('fit', 'open')]

function told(...list: readonly (readonly [string, Omit<Body<'activity'>, 'job'>])[]) {
  const entries = list.map(([from, body], i) =>
    trialEntry(i + 1, 'activity', { job: 'pump', ...body }, { from, until: from }),
  )
  return activitiesOf(proposed, entries, { job: 'pump', set: 'main', asOf: '2027-03-10' })
}
const named = (found: ReturnType<typeof told>, name: string) => found.list.find((one) => one.name === name)

test('the log changes field by field what the job proposes, and adds to it', () => {
  const found = told(
    ['2027-03-01', { name: 'open', days: { usual: 4 }, needs: ['owner', 'helper'] }],
    ['2027-03-02', { name: 'open', days: { high: 20 }, what: 'Open the side' }],
    ['2027-03-02', { name: 'paint', after: ['open'] }],
    ['2027-03-03', { name: 'fit', after: ['paint'] }],
  )
  expect(named(found, 'open')).toMatchObject({
    what: 'Open the side',
    needs: ['owner', 'helper'],
    lasts: { low: 0.7 * 4, usual: 4, high: 20 },
    after: ['check'],
  })
  expect(named(found, 'open')!.entries).toHaveLength(2)
  expect(named(found, 'paint')).toMatchObject({ proposed: false, what: 'Paint', after: ['open'] })
  expect(named(found, 'fit')!.after).toEqual(['paint'])
  expect(found.assumed).toEqual([expect.stringContaining('paint')])
  expect(found.problems).toEqual([])
})

test('what holds only from a later day does not hold yet', () => {
  const found = told(['2027-03-20', { name: 'open', days: { usual: 9 } }])
  expect(named(found, 'open')!.lasts).toMatchObject({ usual: 2 })
  expect(found.problems).toEqual([])
})

test('what is left out hands on what it follows, and comes back when it is to be done again', () => {
  const out = told(
    ['2027-03-01', { name: 'check', state: 'left-out' }],
    ['2027-03-01', { name: 'open', state: 'left-out' }],
  )
  expect(out.list.map(({ name, after }) => [name, after])).toEqual([
    ['get', []],
    ['fit', ['get']],
  ])
  const back = told(
    ['2027-03-01', { name: 'check', state: 'left-out' }],
    ['2027-03-02', { name: 'check', state: 'to-do' }],
  )
  expect(back.list).toHaveLength(4)
})

test('what something done follows is done too; days the wrong way round are told, and nothing is lost', () => {
  const found = told(['2027-03-05', { name: 'open', state: 'begun' }])
  const states = found.list.map(({ name, progress }) => `${name} ${progress.is}`)
  expect(states).toEqual(['get done', 'check done', 'open begun', 'fit to-do'])
  expect(found.problems).toEqual([])

  const turned = told(
    ['2027-03-05', { name: 'open', state: 'done' }],
    ['2027-03-08', { name: 'get', state: 'done' }],
    ['2027-04-01', { name: 'fit', state: 'done' }],
  )
  expect(turned.problems.map(({ code, path, found: what }) => [code, path, what])).toEqual([
    ['date-ahead', 'fit', 'fit done on 2027-04-01'],
    ['before-what-it-follows', 'check', 'check on 2027-03-05, get done on 2027-03-08'],
  ])
  expect(turned.list).toHaveLength(4)
  expect(named(turned, 'fit')!.progress.is).toBe('to-do')
})
