import { expect, test } from 'vitest'
import { atKappa, knownModes, lnLikelihoodAtKappa } from '../../src/forecast/known-modes.js'
import { chanceOfEnding, residualSurvival } from '../../src/forecast/lives.js'
import { posteriorOf } from '../../src/forecast/posterior.js'
import { gamma, lnGamma } from '../../src/forecast/special-gamma.js'
import { gaussLegendre } from '../../src/forecast/special-quadrature.js'
import { pastUseOf } from '../../src/forecast/track.js'
import {
  posteriorMean,
  posteriorQuantile,
  type ScalePosterior,
  scalePosterior,
} from '../oracles/scale-posterior.js'
import { type KnownLife, weibullLogLikelihood } from '../oracles/scale-posterior-lives.js'
import { trialModel } from '../trial-model.js'

function expectRelative(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(tolerance)
}

function known(sound: readonly number[], failed: readonly number[]): KnownLife[] {
  return [
    ...sound.map((age): KnownLife => ({ ended: 'sound', age })),
    ...failed.map((age): KnownLife => ({ ended: 'failed', age })),
  ]
}

// Quadrature with 200 001 points over ±12 sd by an independent program; halved grids agree to 1e-7. Derived.
const held = [
  {
    median: 6000,
    factor: 2,
    shape: 2.0,
    sound: [5000],
    failed: [],
    age: 5000,
    ahead: 300,
    evidence: 0.473870755609,
    mean: 10855.9292729,
    sd: 6800.12147419,
    median50: 9057.46326604,
    q05: 4190.91857562,
    q95: 23512.1545847,
    meanLog: 9.14514473433,
    sdLog: 0.525993094668,
    ends: 0.0540447026448,
    pluggedIn: 0.036965109709,
  },
  {
    median: 6000,
    factor: 2,
    shape: 2.0,
    sound: [],
    failed: [1500],
    age: 0,
    ahead: 300,
    evidence: 0.000126148371958,
    mean: 3824.42286179,
    sd: 2509.0417565,
    median50: 3153.342166,
    q05: 1391.07334449,
    q95: 8492.94913647,
    meanLog: 8.08800963306,
    sdLog: 0.551348203869,
    ends: 0.0143055889748,
    pluggedIn: 0.00901024040955,
  },
  {
    median: 20000,
    factor: 3,
    shape: 1.3,
    sound: [12000],
    failed: [8000],
    age: 12000,
    ahead: 500,
    evidence: 1.29797097438e-5,
    mean: 27241.2110947,
    sd: 24900.4780797,
    median50: 20220.5746232,
    q05: 7943.43257007,
    q95: 69033.8685541,
    meanLog: 9.96859366858,
    sdLog: 0.661356004192,
    ends: 0.0346581714588,
    pluggedIn: 0.0272787431229,
  },
  {
    median: 6000,
    factor: 1.2,
    shape: 3.0,
    sound: [5000],
    failed: [],
    age: 5000,
    ahead: 300,
    evidence: 0.544164088503,
    mean: 6433.89819016,
    sd: 1101.65494312,
    median50: 6330.04623297,
    q05: 4818.40597973,
    q95: 8403.20356462,
    meanLog: 8.75499463335,
    sdLog: 0.169034392842,
    ends: 0.0994319409991,
    pluggedIn: 0.0898416932285,
  },
  {
    median: 6000,
    factor: 2,
    shape: 2.0,
    sound: [15000],
    failed: [],
    age: 15000,
    ahead: 300,
    evidence: 0.0911027022268,
    mean: 18557.7761309,
    sd: 9095.67352896,
    median50: 16335.4568809,
    q05: 9006.26931047,
    q95: 35524.4349592,
    meanLog: 9.73456207176,
    sdLog: 0.419608481586,
    ends: 0.0420120168895,
    pluggedIn: 0.0334907836362,
  },
  {
    median: 4000,
    factor: 1.5,
    shape: 1.0,
    sound: [10000],
    failed: [1000, 2500],
    age: 0,
    ahead: 300,
    evidence: 1.94347883305e-9,
    mean: 4999.1755559,
    sd: 1740.81710939,
    median50: 4699.29215168,
    q05: 2763.88763026,
    q95: 8250.71804491,
    meanLog: 8.46110069145,
    sdLog: 0.332495156611,
    ends: 0.0645930998623,
    pluggedIn: 0.0618443464883,
  },
]

test.each(held)('prior $median, factor $factor, shape $shape, sound $sound, failed $failed', (one) => {
  const lives = known(one.sound, one.failed)
  const posterior = scalePosterior({
    prior: { medianScale: one.median, logSd: Math.log(one.factor) },
    logLikelihood: (scale) => weibullLogLikelihood(lives, { shape: one.shape, scale }),
  })
  const ends = (scale: number): number =>
    chanceOfEnding({ kind: 'weibull', shape: one.shape, scale }, { age: one.age, ahead: one.ahead })
  const mean = posteriorMean(posterior, (scale) => scale)
  const meanLog = posteriorMean(posterior, Math.log)
  const median = posteriorQuantile(posterior, 0.5)

  expectRelative(mean, one.mean, 1e-4)
  expectRelative(median, one.median50, 1e-4)
  expectRelative(posteriorMean(posterior, ends), one.ends, 1e-4)
  expectRelative(meanLog, one.meanLog, 1e-4)
  expectRelative(Math.exp(posterior.logEvidence), one.evidence, 1e-3)
  expectRelative(Math.sqrt(posteriorMean(posterior, (scale) => (scale - mean) ** 2)), one.sd, 1e-3)
  expectRelative(
    Math.sqrt(posteriorMean(posterior, (scale) => (Math.log(scale) - meanLog) ** 2)),
    one.sdLog,
    1e-3,
  )
  expectRelative(posteriorQuantile(posterior, 0.05), one.q05, 1e-3)
  expectRelative(posteriorQuantile(posterior, 0.95), one.q95, 1e-3)
  expectRelative(ends(median), one.pluggedIn, 1e-3)
})

interface LivesOfOne {
  readonly median: number
  readonly factor: number
  readonly shape: number
  readonly sound: readonly number[]
  readonly failed: readonly number[]
  readonly age: number
}

/** The same by the functions that a boat's posterior is made with. */
function byProduct(one: LivesOfOne): {
  readonly evidence: number
  readonly mean: (of: (scale: number) => number) => number
  readonly scales: Float32Array
} {
  const earlier = one.sound.filter((age) => age !== one.age)
  const model = trialModel([
    {
      id: 'a',
      age: { years: one.age / 1000, hours: one.age },
      pastLives: [
        ...one.failed.map((hours) => ({ age: { hours }, ended: { failed: 'm' } })),
        ...earlier.map((hours) => ({ age: { hours }, ended: 'sound' as const })),
      ],
      modes: [{ id: 'm', clock: 'hours', shape: one.shape, scale: one.median, logSd: Math.log(one.factor) }],
    },
  ])
  const how = { past: pastUseOf(model), kappaLogSd: 0, extra: () => [] }
  const [mode] = knownModes(model, model.parts[0]!, how)
  const evidence = Math.exp(lnLikelihoodAtKappa(mode!, 0))
  const { columns, weight } = atKappa(mode!, 0)
  const chances = columns.whole.map((likelihood, k) => likelihood * weight[k]!)
  const whole = chances.reduce((a, b) => a + b, 0)
  const { theta } = posteriorOf(model, { seed: 1 })
  return {
    evidence,
    mean: (of) =>
      chances.reduce((sum, chance, k) => sum + chance * of(columns.theta[k]! * one.median), 0) / whole,
    scales: theta.map((at) => at * one.median).sort(),
  }
}

test.each(held)(
  "the product's own grid and table: prior $median, factor $factor, shape $shape, sound $sound, failed $failed",
  (one) => {
    const { evidence, mean, scales } = byProduct(one)
    const ends = (scale: number): number =>
      chanceOfEnding({ kind: 'weibull', shape: one.shape, scale }, { age: one.age, ahead: one.ahead })
    const meanScale = mean((scale) => scale)
    const meanLog = mean(Math.log)
    expectRelative(meanScale, one.mean, 1e-4)
    expectRelative(mean(ends), one.ends, 1e-4)
    expectRelative(meanLog, one.meanLog, 1e-4)
    expectRelative(evidence, one.evidence, 1e-3)
    expectRelative(Math.sqrt(mean((scale) => (scale - meanScale) ** 2)), one.sd, 1e-3)
    expectRelative(Math.sqrt(mean((scale) => (Math.log(scale) - meanLog) ** 2)), one.sdLog, 1e-3)
    // one step of the 1,024 of the table beside the quantile
    expect(scales[511 - 1]!).toBeLessThan(one.median50)
    expect(scales[512 + 1]!).toBeGreaterThan(one.median50)
    expect(scales[50]!).toBeLessThan(one.q05)
    expect(scales[52]!).toBeGreaterThan(one.q05)
    expect(scales[971]!).toBeLessThan(one.q95)
    expect(scales[974]!).toBeGreaterThan(one.q95)
  },
)

// The prior's own moments: mean 6000 e^(ln²2/2). Closed form.
test('no evidence', () => {
  const posterior = scalePosterior({ prior: { medianScale: 6000, logSd: Math.LN2 }, logLikelihood: () => 0 })
  const mean = posteriorMean(posterior, (scale) => scale)
  expectRelative(mean, 7629.22277828, 1e-4)
  expectRelative(Math.sqrt(posteriorMean(posterior, (scale) => (scale - mean) ** 2)), 5991.76577929, 1e-3)
  expectRelative(posteriorQuantile(posterior, 0.5), 6000, 1e-4)
  expectRelative(posteriorQuantile(posterior, 0.05), 1918.67301686, 1e-3)
  expectRelative(posteriorQuantile(posterior, 0.95), 18762.9677822, 1e-3)
  expectRelative(Math.exp(posterior.logEvidence), 1, 1e-3)
})

// Derived: shift of the mean of ln η by one failure, prior 6000, factor 2, shape 2. One near the median can raise it.
test.each([
  [1500, -0.612],
  [3000, -0.302],
  [4000, -0.144],
  [5000, -0.0117],
  [6000, 0.103],
])('one failure at %i moves the mean of ln η by %f', (age, shift) => {
  const posterior = scalePosterior({
    prior: { medianScale: 6000, logSd: Math.LN2 },
    logLikelihood: (scale) => weibullLogLikelihood(known([], [age]), { shape: 2, scale }),
  })
  const tolerance = Math.abs(shift) > 0.1 ? 5e-4 : 5e-5
  const moved = posteriorMean(posterior, Math.log) - Math.log(6000)
  expect(Math.abs(moved - shift)).toBeLessThan(tolerance)
  const product = byProduct({ median: 6000, factor: 2, shape: 2, sound: [], failed: [age], age: 0 })
  expect(Math.abs(product.mean(Math.log) - Math.log(6000) - shift)).toBeLessThan(tolerance)
})

// Two-dimensional quadrature by an independent program. Derived.
test('shape uncertain too: the posteriors of the scale, mixed over shapes by their evidence', () => {
  const lives = known([5000], [4200, 7100])
  const logSdShape = Math.log(1.3)
  const { nodes, weights } = gaussLegendre(20)
  const mixed: { shape: number; weight: number; posterior: ScalePosterior }[] = []
  for (let panel = -6; panel < 6; panel += 2) {
    nodes.forEach((node, index) => {
      const z = panel + 1 + node
      const shape = 2 * Math.exp(logSdShape * z)
      const posterior = scalePosterior({
        prior: { medianScale: 6000, logSd: Math.LN2 },
        logLikelihood: (scale) => weibullLogLikelihood(lives, { shape, scale }),
      })
      mixed.push({
        shape,
        weight: weights[index]! * Math.exp(-0.5 * z * z + posterior.logEvidence),
        posterior,
      })
    })
  }
  const total = mixed.reduce((sum, { weight }) => sum + weight, 0)
  const over = (of: (shape: number, posterior: ScalePosterior) => number): number =>
    mixed.reduce((sum, { shape, weight, posterior }) => sum + weight * of(shape, posterior), 0) / total
  expectRelative(
    over((_, posterior) => posteriorMean(posterior, (scale) => scale)),
    7510.010582,
    5e-4,
  )
  expectRelative(
    over((shape) => shape),
    2.19737884227,
    5e-4,
  )
  const ahead = over((shape, posterior) =>
    posteriorMean(posterior, (scale) =>
      chanceOfEnding({ kind: 'weibull', shape, scale }, { age: 5000, ahead: 300 }),
    ),
  )
  expectRelative(ahead, 0.0713988618011, 5e-4)
})

// Closed form: λ = η^−β ~ Gamma(a, b) becomes Gamma(a + r, b + Σ t^β); checked here on an own grid over ln η.
test('a gamma prior on η^−β stays a gamma, and the likelihood on a grid agrees', () => {
  const [a, b, shape] = [3, 2.5e8, 2]
  const lives = known([5000], [4200, 7100])
  const [after, rate] = [a + 2, b + 5000 ** 2 + 4200 ** 2 + 7100 ** 2]
  expect(after).toBe(5)
  expectRelative(rate, 343_050_000, 1e-12)

  // ln of the prior density of ln η, a log-gamma: η^−β ~ Gamma(a, b).
  const logPrior = (logScale: number): number => {
    const lambda = Math.exp(-shape * logScale)
    return a * Math.log(b * lambda) - b * lambda - lnGamma(a) + Math.log(shape)
  }
  const [centre, width] = [Math.log(9000), 1.2]
  // The prior is handed in as part of the likelihood, over a normal that is divided out again.
  const posterior = scalePosterior({
    prior: { medianScale: 9000, logSd: width },
    logLikelihood: (scale) =>
      weibullLogLikelihood(lives, { shape, scale }) +
      logPrior(Math.log(scale)) +
      0.5 * ((Math.log(scale) - centre) / width) ** 2,
  })
  expectRelative(
    posteriorMean(posterior, (scale) => scale ** -shape),
    1.457513482e-8,
    1e-9,
  )
  expectRelative(
    posteriorMean(posterior, (scale) => scale),
    8976.59689048,
    1e-9,
  )
  expectRelative((rate ** 0.5 * gamma(after - 0.5)) / gamma(after), 8976.59689048, 1e-9)
  const lasts = posteriorMean(posterior, (scale) =>
    residualSurvival({ kind: 'weibull', shape, scale }, { age: 5000, ahead: 300 }),
  )
  expectRelative(1 - lasts, 0.0438452836127, 1e-9)
  expectRelative(1 - (rate / (rate + 5300 ** 2 - 5000 ** 2)) ** after, 0.0438452836127, 1e-9)
})
