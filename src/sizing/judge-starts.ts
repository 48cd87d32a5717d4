/**
 * What the largest starts do to a set.
 *
 * @module
 */

import { alternatorEfficiency } from './alternator-rating.js'
import { firstStepShare, frequencyAfterStep, meanPressureBar } from './engine-derating.js'
import type { Judged, OfSet } from './judged-set.js'
import { startOn } from './overload.js'
import { measured, type SizeCheck } from './size-check.js'
import { startKW, voltageDip } from './voltage-dip.js'

/** What the largest start does to voltage and frequency, with nothing else running. */
export function startChecks({ book: { sizing }, loads, year }: Judged, { set, derated }: OfSet): SizeCheck[] {
  const started = loads.filter((_, i) => year.some(({ startsPerYear }) => startsPerYear[i]! > 0))
  const motors = started.flatMap((load) => {
    const motor = startOn(load, set)
    return motor === undefined ? [] : [{ load, motor }]
  })
  const checks: SizeCheck[] = []
  const { aim, most } = sizing.voltageDip
  const deepest = motors
    .map(({ load, motor }) => ({ load, dip: voltageDip(motor) }))
    .sort((a, b) => b.dip - a.dip)[0]
  if (deepest !== undefined) {
    const { verdict, ...check } = measured('voltage-dip', deepest.dip, most, 'share')
    const tight = verdict === 'passes' && deepest.dip > aim
    checks.push({
      ...check,
      verdict: tight ? 'tight' : verdict,
      about: deepest.load.name,
      limitPath: 'sizing.voltageDip.most',
      ...(set.usual.includes('reactance') ? { usual: ['reactance'] } : {}),
    })
  }
  const largest = [...motors].sort((a, b) => b.motor.startKVA - a.motor.startKVA)[0]
  if (set.capacitor && largest !== undefined) {
    const times = sizing.alternator.capacitorStartTimesRating.most
    checks.push({
      ...measured('start-current', largest.motor.startKVA, times * set.kVA, 'kVA'),
      about: largest.load.name,
      limitPath: 'sizing.alternator.capacitorStartTimesRating.most',
    })
  }
  const step = started
    .map((load) => {
      const motor = startOn(load, set)
      return { load, kW: Math.max(load.watts / 1000, motor === undefined ? 0 : startKW(motor)) }
    })
    .sort((a, b) => b.kW - a.kW)[0]
  if (step === undefined) return checks
  const told = set.sweptLitres
  const efficiency = alternatorEfficiency(sizing.alternator, set.ratingKW)
  const usualBar = sizing.engine.usualMeanPressureBar
  const bar =
    told === undefined
      ? set.aspiration === 'turbo'
        ? usualBar.turbo
        : set.aspiration === 'turbo-cooled'
          ? usualBar.turboCooled
          : usualBar.natural
      : meanPressureBar({ shaftKW: set.ratingKW / efficiency, sweptLitres: told, rpm: set.rpm })
  const firstStep = firstStepShare({ meanPressureBar: bar, fullUpToBar: sizing.firstStep.fullUpToBar })
  const { inertiaSeconds, governorSeconds, dipMost } = sizing.frequency
  const after = frequencyAfterStep({
    stepShare: step.kW / set.kVA,
    seconds: governorSeconds,
    inertiaSeconds,
  })
  checks.push(
    {
      ...measured('first-step', step.kW, firstStep * derated.engineKW, 'kW'),
      about: step.load.name,
      limitPath: 'sizing.firstStep.fullUpToBar',
      ...(told === undefined ? { usual: ['sweptLitres'] } : {}),
    },
    {
      ...measured('frequency-dip', 1 - after, dipMost, 'share'),
      about: step.load.name,
      limitPath: 'sizing.frequency.dipMost',
      usual: ['inertia'],
    },
  )
  return checks
}
