import { expect, test } from 'vitest'
import { modelFromLog } from '../../bench/advice/adviser.js'
import { type Boat, boatOf } from '../../bench/advice/boat.js'
import { costOf } from '../../bench/advice/ledger.js'
import { live } from '../../bench/advice/world.js'
import { column } from '../../src/alternatives/sample.js'
import { simulate } from '../../src/alternatives/simulate.js'
import { posteriorOf } from '../../src/forecast/posterior.js'

const boats = 32
const lives = 1
const histories = 100

/** A boat that is as her owner believes, but for her scales and luck, with a log from the first day. */
function asBelieved(number: number): Boat | null {
  const boat = boatOf(11, number)
  if (!boat.isModelled || !boat.isLogWhole) return null
  return { ...boat, nature: { ...boat.nature, model: boat.believed } }
}

/** Where among what was foretold from the log at the first job the cost of mending ever after came to lie. */
function placeOf(boat: Boat, life: number): number | null {
  const steps = live(boat.nature, { life })
  let step = steps.next()
  if (step.done) return null
  const question = step.value
  const { at, spent } = question
  const whole = modelFromLog(boat, question)
  const model = { ...whole, alternatives: whole.alternatives.slice(0, 1) }
  const which = { seed: 3, from: 0, count: histories }
  const foretold = column(simulate(model, posteriorOf(model, { seed: 3 }), which)[0]!, 'cost')
  while (!step.done) step = steps.next('mend')
  const came = (costOf(step.value) - spent) * Math.exp(boat.believed.realInterestPerYear * at)
  return (foretold.filter((cost) => cost < came).length + 0.5) / (histories + 1)
}

test('what is foretold from the log alone is spread as what comes', () => {
  const places = Array.from({ length: 4 * boats }, (_, number) => asBelieved(number))
    .filter((boat) => boat !== null)
    .flatMap((boat) => Array.from({ length: lives }, (_, life) => placeOf(boat, life)))
    .filter((place) => place !== null)
  expect(places.length).toBeGreaterThan(boats / 2)
  // Places of a right forecast are even between 0 and 1; the lives of a boat share her scales, so that n is her boats'.
  const error = 1 / Math.sqrt(12 * (places.length / lives))
  const mean = places.reduce((sum, place) => sum + place, 0) / places.length
  expect(Math.abs(mean - 0.5)).toBeLessThan(4 * error)
  const outer = places.filter((place) => place < 0.1 || place > 0.9).length / places.length
  expect(Math.abs(outer - 0.2)).toBeLessThan(4 * Math.sqrt((0.2 * 0.8) / (places.length / lives)))
})
