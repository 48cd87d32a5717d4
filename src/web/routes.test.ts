import fc from 'fast-check'
import { expect, test } from 'vitest'
import { boatPages, pathTo, routeOf } from './routes.js'

test('every page has an address that leads back to it, whatever boat and set are called', () => {
  const name = fc.string({ minLength: 1, unit: 'grapheme' })
  fc.assert(
    fc.property(name, name, fc.constantFrom(...boatPages), (boat, set, page) => {
      const route = { page, boat, set }
      expect(routeOf(pathTo(route))).toEqual(route)
    }),
  )
  expect(routeOf(pathTo({ page: 'boats' }))).toEqual({ page: 'boats' })
  expect(routeOf(pathTo({ page: 'new' }))).toEqual({ page: 'new' })
})

test('an address that leads nowhere says so', () => {
  for (const path of ['/boats', '/boats/petrel', '/boats/petrel/main/gauges', '/new/more', '/%E0%A4%A']) {
    expect(routeOf(path).page).toBe('unknown')
  }
})
