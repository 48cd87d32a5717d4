/**
 * Measured power folded into a grid of fixed size: for each hour of the day, how long it drew how much.
 *
 * However long the log, the same memory: nothing of a row is kept but what it adds.
 *
 * @module
 */

/** Width of a step of the grid [kW], and the steps: the last one holds all above. */
export const stepKW = 0.1
export const steps = 1001
const hoursOfDay = 24
const daySeconds = 86_400

/** One moment. */
export interface Sample {
  /** On the boat's clock, since 1970. [s] */
  readonly time: number
  readonly kW: number
  readonly kVA?: number
  /** By leg, where each was measured. [kW] */
  readonly legsKW?: readonly number[]
}

/** What a log comes to. */
export interface Folded {
  /** Seconds at each step, hour of the day by hour. */
  readonly seconds: readonly Float64Array[]
  readonly samples: number
  readonly firstTime: number
  readonly lastTime: number
  readonly coveredS: number
  readonly gaps: number
  readonly gapS: number
  /** Between two samples as a rule. [s] */
  readonly everyS: number
  /** Calendar days of which something was measured. */
  readonly days: number
  readonly kWh: number
  readonly mostKW: number
  readonly mostKVA?: number
  readonly mostLegKW?: readonly number[]
  /** Times that power came after none, or after a gap. */
  readonly starts: number
  /** Times that the clock was set back. */
  readonly setBack: number
}

export interface Fold {
  /** Adds a moment. What it shows holds until the next one, or for the usual time where that is long in coming. */
  add(sample: Sample): void
  end(): Folded | undefined
}

/** Samples by which the usual time between two is learnt. */
const learntFrom = 64
/** Longer than so many usual times, and than this, is a gap. [s] */
const gapFactor = 5
const leastGapS = 10

export function openFold(): Fold {
  const seconds = Array.from({ length: hoursOfDay }, () => new Float64Array(steps))
  const held: Sample[] = []
  let everyS = 0
  let before: Sample | undefined
  const sums = {
    samples: 0,
    coveredS: 0,
    gaps: 0,
    gapS: 0,
    days: 0,
    kWh: 0,
    mostKW: 0,
    starts: 0,
    setBack: 0,
    firstTime: Number.POSITIVE_INFINITY,
    lastTime: Number.NEGATIVE_INFINITY,
  }
  let mostKVA: number | undefined
  let mostLegKW: number[] | undefined
  let lastDay = Number.NaN
  let wasOn = false

  const hold = ({ time, kW }: Sample, forS: number) => {
    if (!(forS > 0)) return
    const hour = Math.floor(time / 3600) % hoursOfDay
    seconds[hour < 0 ? hour + hoursOfDay : hour]![Math.min(steps - 1, Math.floor(kW / stepKW + 1e-9))]! +=
      forS
    sums.coveredS += forS
    sums.kWh += (kW * forS) / 3600
  }
  const take = (sample: Sample) => {
    if (before !== undefined) {
      const passed = sample.time - before.time
      const isGap = passed < 0 || passed > Math.max(leastGapS, gapFactor * everyS)
      hold(before, isGap ? Math.max(0, Math.min(everyS, passed < 0 ? everyS : passed)) : passed)
      if (passed < 0) sums.setBack++
      else if (isGap) {
        sums.gaps++
        sums.gapS += passed - everyS
      }
      if (isGap) wasOn = false
    }
    const isOn = sample.kW >= stepKW
    if (isOn && !wasOn) sums.starts++
    wasOn = isOn
    const day = Math.floor(sample.time / daySeconds)
    if (day !== lastDay) sums.days++
    lastDay = day
    sums.samples++
    sums.firstTime = Math.min(sums.firstTime, sample.time)
    sums.lastTime = Math.max(sums.lastTime, sample.time)
    sums.mostKW = Math.max(sums.mostKW, sample.kW)
    if (sample.kVA !== undefined) mostKVA = Math.max(mostKVA ?? 0, sample.kVA)
    if (sample.legsKW !== undefined) {
      mostLegKW = sample.legsKW.map((kW, leg) => Math.max(mostLegKW?.[leg] ?? 0, kW))
    }
    before = sample
  }
  const settle = () => {
    everyS = usualOf(held)
    for (const sample of held) take(sample)
    held.length = 0
  }
  return {
    add: (sample) => {
      if (everyS > 0) return take(sample)
      held.push(sample)
      if (held.length >= learntFrom) settle()
    },
    end: () => {
      if (everyS === 0) settle()
      if (before === undefined) return undefined
      hold(before, everyS)
      before = undefined
      return {
        seconds,
        everyS,
        ...sums,
        ...(mostKVA === undefined ? {} : { mostKVA }),
        ...(mostLegKW === undefined ? {} : { mostLegKW }),
      }
    },
  }
}

/** The middle one of the times between samples; a second where there is none. */
function usualOf(samples: readonly Sample[]): number {
  const between = samples
    .slice(1)
    .map(({ time }, at) => time - samples[at]!.time)
    .filter((passed) => passed > 0)
    .sort((a, b) => a - b)
  return between[Math.floor(between.length / 2)] ?? 1
}
