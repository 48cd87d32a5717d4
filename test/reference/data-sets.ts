/**
 * Published sets of lives, as ages and how many ended so at each.
 *
 * @module
 */

import type { KnownLife } from '../oracles/scale-posterior-lives.js'

function lives(record: {
  readonly failed: readonly (number | readonly [age: number, count: number])[]
  readonly sound: readonly (number | readonly [age: number, count: number])[]
}): KnownLife[] {
  const known =
    (ended: 'failed' | 'sound') =>
    (entry: number | readonly [number, number]): KnownLife =>
      typeof entry === 'number' ? { ended, age: entry } : { ended, age: entry[0], count: entry[1] }
  return [...record.failed.map(known('failed')), ...record.sound.map(known('sound'))]
}

/** NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3: 20 units on a 500 h test. Public domain; seen. */
export const nist: readonly KnownLife[] = lives({
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
  sound: [[500, 10]],
})

/** Bearing cages, 1703 units, 6 failures: Abernethy et al. (1983), in Meeker and Escobar (1998), chapter 8; data seen in an open notebook. */
export const bearingCages: readonly KnownLife[] = lives({
  failed: [230, 334, 423, 990, 1009, 1510],
  sound: [
    [50, 288],
    [150, 148],
    [250, 124],
    [350, 111],
    [450, 106],
    [550, 99],
    [650, 110],
    [750, 114],
    [850, 119],
    [950, 127],
    [1050, 123],
    [1150, 93],
    [1250, 47],
    [1350, 41],
    [1450, 27],
    [1550, 11],
    [1650, 6],
    1850,
    [2050, 2],
  ],
})

const shockFirstMode = [6700, 12200, 14300, 17520, 22700, 26510, 27490]
const shockSecondMode = [9120, 13150, 20100, 20900]
const shockSound = [
  6950, 7820, 8790, 9660, 9820, 11310, 11690, 11850, 11880, 12140, 12870, 13330, 13470, 14040, 17540, 17890,
  18450, 18960, 18980, 19410, 20100, 20150, 20320, 23490, 27410, 27890, 28100,
]
/** Shock absorbers, 38 vehicles, distance in km, two modes: O’Connor, in Meeker and Escobar (1998), appendix C; data seen in an open notebook. */
export const shockAbsorbers = {
  /** Either mode. */
  all: lives({ failed: [...shockFirstMode, ...shockSecondMode], sound: shockSound }),
  /** One mode, the other taken as removal while sound. */
  firstMode: lives({ failed: shockFirstMode, sound: [...shockSecondMode, ...shockSound] }),
  secondMode: lives({ failed: shockSecondMode, sound: [...shockFirstMode, ...shockSound] }),
} as const

/** 23 ball bearings, millions of revolutions: Lieblein and Zelen, Journal of Research of the NBS 57 (1956); data recalled (the variant with 48.48). */
export const ballBearings: readonly KnownLife[] = lives({
  failed: [
    17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12,
    93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
  ],
  sound: [],
})

/** Seals of running pumps, hours, from a public paper that lists them; seen. */
export const runningPumpSeals: readonly KnownLife[] = lives({
  failed: [14400, 19800, 21300, 23600, 24300, 28100, 29600, 29600, 34200, 38000],
  sound: [],
})

/** Seals of standby pumps, hours, from the same paper; seen. Pooled with the running ones they hide two populations. */
export const standbyPumpSeals: readonly KnownLife[] = lives({
  failed: [2200, 3800, 4600, 5000, 6700, 7500, 7800, 8000, 11000, 12900],
  sound: [],
})

/** Fans of 70 diesel generating sets, hours, 12 failures: Nelson, Applied Life Data Analysis (1982); data recalled, and the published fit follows from them to all its digits. */
export const generatorFans: readonly KnownLife[] = lives({
  failed: [450, 1150, 1150, 1600, 2070, 2070, 2080, 3100, 3450, 4600, 6100, 8750],
  sound: [
    460,
    1560,
    1660,
    [1850, 5],
    [2030, 3],
    2200,
    [3000, 4],
    3200,
    [3750, 2],
    [4150, 4],
    [4300, 4],
    [4850, 4],
    [5000, 3],
    [6100, 3],
    6300,
    [6450, 2],
    6700,
    7450,
    [7800, 2],
    [8100, 2],
    8200,
    [8500, 3],
    [8750, 2],
    9400,
    9900,
    [10100, 3],
    11500,
  ],
})

/** Eight parts, some of which came under watch already aged. Made up. */
export const joinedLate: readonly KnownLife[] = [
  { ended: 'failed', age: 1200, entryAge: 0 },
  { ended: 'sound', age: 2600, entryAge: 800 },
  { ended: 'failed', age: 3900, entryAge: 1500 },
  { ended: 'failed', age: 4100, entryAge: 0 },
  { ended: 'sound', age: 5200, entryAge: 3000 },
  { ended: 'failed', age: 6000, entryAge: 2500 },
  { ended: 'sound', age: 6000, entryAge: 4000 },
  { ended: 'failed', age: 7400, entryAge: 5000 },
]
