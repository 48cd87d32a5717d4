import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { wouldSharpen } from './would-sharpen.js'

const at = { from: '2024-06-01', until: '2024-06-01' }
const entries = [
  trialEntry(1, 'set', { ratingKw: 10, built: '2004' }, at),
  trialEntry(2, 'hours', { meterHours: 4000 }, at),
] as Entry[]

function asked(log: readonly Entry[]) {
  const register = registerOf({ entries: log, boat: 'trial', set: 'main', asOf: '2024-06-01', catalogue })
  const { catalogue: ofSet } = setCatalogueOf(register, catalogue)
  return { list: wouldSharpen(register, ofSet), ofSet, register }
}

test('chances and money are as worked by hand', () => {
  const { list, ofSet, register } = asked(entries)
  const part = ofSet.parts.find(({ id }) => id === 'exhaust-elbow')!
  const perYear = register.hours.perYear ?? 4000 / 19.9
  const years = (register.asOfDay - register.builtDay!) / 365.2425
  const failing = (old: number) =>
    1 -
    part.modes.reduce((survives, { clock, shape, scale }) => {
      const age = old * (clock === 'years' ? years : 4000)
      const later = age + (clock === 'years' ? 1 : perYear)
      return survives * Math.exp((age / scale) ** shape - (later / scale) ** shape)
    }, 1)
  const found = list.find((one) => one.part === 'exhaust-elbow')!
  expect(found.chanceIfNew).toBeCloseTo(failing(0), 2)
  expect(found.chanceIfOld).toBeCloseTo(failing(1), 2)
  const price = part.price.original.typical + part.hours.paid * ofSet.wholeSet.labour.ratePerHour.typical
  expect(found.atStake).toBeCloseTo((found.chanceIfOld - found.chanceIfNew) * price, 6)
})

test('the part on which most money hangs comes first, and one that is known is not asked for', () => {
  const { list } = asked(entries)
  const stakes = list.map(({ atStake }) => atStake)
  expect(stakes).toEqual([...stakes].sort((a, b) => b - a))
  const first = list[0]!.part
  const known = trialEntry(3, 'fitted', { part: first, quality: 'original' }, at) as Entry
  expect(asked([...entries, known]).list.map(({ part }) => part)).not.toContain(first)
})
