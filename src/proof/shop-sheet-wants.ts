/**
 * What is wanted of a workshop: what to write down before stripping, fits, balance, varnish, tests with their limits.
 *
 * @module
 */

import type { Held } from '../catalogue/provenance.js'
import type { Limits } from './limits.js'
import type { LinksAnswer } from './links/look-at-links.js'
import { sayOhms, sayVolts } from './links/say-links.js'

/** What can be asked of a workshop. */
export const shopJobs = [
  'rewind-stator',
  'rewind-rotor',
  'exciter',
  'dry-and-varnish',
  'bearings',
  'test',
] as const
export type ShopJob = (typeof shopJobs)[number]

export const jobNames: Readonly<Record<ShopJob, string>> = {
  'rewind-stator': 'Rewind the stator as it was: same turns, wire, pitch and leads',
  'rewind-rotor': 'Rewind the rotor as it was: same turns and wire',
  exciter: 'Mend the exciter; renew all rotating diodes and their surge part together',
  'dry-and-varnish': 'Wash with fresh water, dry and varnish; no stripping unless asked first',
  bearings: 'Renew the bearings',
  test: 'Test and report; nothing else without asking',
}

/** A figure that a workshop keeps to, and where it comes from. */
export interface Wanted {
  readonly what: string
  readonly limit: string
  readonly source: string
  readonly held: Held
}

/** Written down of a winding before it is stripped. */
export const windingData: readonly string[] = [
  'Slots; poles; coils in all',
  'Coils in a group; groups in a phase',
  'Throw of each coil (slot 1 to slot …)',
  'Turns of each coil',
  'Wire: diameter bare, wires in hand',
  'Paths in parallel within a phase',
  'Leads: which coil end each mark belongs to',
  'Length of end turns over the core, both ends',
  'Slot liner, wedge and phase paper: thickness',
  'Weight of the copper taken out',
  'Ohms of each half before stripping, and at what °C',
]

/** Rest of the data, of a rotor. */
export const rotorData: readonly string[] = [
  'Turns of each pole; wire, bare and insulated',
  'Direction of each pole’s winding',
  'Damper bars sound? Ohms of the field, and at what °C',
]

/**
 * Of the core, before and after the old winding is burnt out or drawn.
 *
 * Source: pages of the repair trade on core tests and on burning out, read in excerpts; ANSI/EASA AR100, which they follow, was
 * not seen on these. IEEE 1068 asks for less.
 */
export const coreTests: readonly Wanted[] = [
  {
    what: 'Core loss before and after stripping, at the same flux',
    limit: 'after not more than 20 % above before',
    source: 'a repairer’s page on core loss tests',
    held: 'quoted',
  },
  {
    what: 'Hot spots in the core test',
    limit: 'none over 15 K above the core as it began; 10 K where IEEE 1068 is asked for',
    source: 'a repairer’s page on core loss tests',
    held: 'quoted',
  },
  {
    what: 'Core while the old winding is burnt out',
    limit: 'not over 370 °C, by a probe in the core; no torch',
    source: 'a trade page on burning out (371 °C, give or take 14 K)',
    held: 'quoted',
  },
]

/**
 * Least unbalance that is left: `e = G / ω`, so many gram-millimetres for each kilogram of rotor.
 *
 * Source: ISO 21940-11, table 1: grade G 2.5 for electric machines of 80 mm shaft height or more above 950 rpm; quoted.
 */
export function balanceWanted(rpm: number | undefined): Wanted {
  const perKilo = rpm === undefined ? undefined : (2.5 * 1000 * 60) / (2 * Math.PI * rpm)
  const sum =
    perKilo === undefined
      ? ''
      : `: ${perKilo.toFixed(1)} g·mm for each kg of rotor at ${rpm} rpm, both planes`
  return {
    what: 'Balance of the rotor, with fan and half key, after varnish',
    limit: `grade G 2.5${sum}`,
    source: 'ISO 21940-11, table 1',
    held: 'quoted',
  }
}

/** Of bearings and of what carries them; the two standards of fits were read in excerpts. */
export const bearingWants: readonly Wanted[] = [
  {
    what: 'Shaft and housing measured at two planes, two ways',
    limit: 'to 0.005 mm, written down before and after',
    source: 'practice',
    held: 'practice',
  },
  {
    what: 'Fit on the shaft',
    limit: 'as the bearing’s maker tells for this load; for ball bearings k5, up to 18 mm j5',
    source: 'ANSI/ABMA 7-1995, table 1',
    held: 'quoted',
  },
  {
    what: 'Fit in the housing',
    limit: 'as the bearing’s maker tells for this load; for ball bearings H6',
    source: 'EASA AR100-2020, table 2-13',
    held: 'quoted',
  },
  {
    what: 'Worn seats',
    limit: 'sleeved or sprayed and ground, never punched or glued, and only after asking',
    source: 'practice',
    held: 'practice',
  },
  {
    what: 'Bearings',
    limit:
      'new, of a known make, sealed both sides for salt air; heated on, never hammered; insulated where the old one was',
    source: 'practice',
    held: 'practice',
  },
]

/** Of insulation and varnish, where air is salt. */
export const varnishWants: readonly Wanted[] = [
  {
    what: 'Before anything',
    limit:
      'salt washed out with fresh water until rinsing water is clean, then dried: winding not over 90 °C',
    source: 'maker’s instruction in a public archive (90 °C)',
    held: 'seen',
  },
  {
    what: 'Insulation',
    limit: 'class H throughout (wire, slots, leads, sleeves), reckoned with as class F',
    source: 'practice',
    held: 'practice',
  },
  {
    what: 'Varnish',
    limit:
      'vacuum and pressure, or two dips and bakes turned between; a sealing coat over end turns against salt and oil',
    source: 'practice',
    held: 'practice',
  },
  {
    what: 'Leads',
    limit: 'tinned, each marked at both ends as on this sheet, marks that oil and heat do not take off',
    source: 'practice',
    held: 'practice',
  },
]

export interface TestsWantedOf {
  readonly jobs: readonly ShopJob[]
  readonly limits: Limits
  /** Highest voltage as linked. [V] */
  readonly volts: number | undefined
  /** What the links wanted give. */
  readonly answer: LinksAnswer | undefined
}

/** Tests with their limits, in the order in which they are made. */
export function testsWanted({ jobs, limits, volts, answer }: TestsWantedOf): readonly Wanted[] {
  const of = (id: string) => limits(id)
  const wanted = (what: string, limit: string, id: string): Wanted => ({
    what,
    limit,
    source: of(id).held === 'practice' ? 'practice' : `${of(id).source}, ${of(id).place}`,
    held: of(id).held,
  })
  const rewound = jobs.some((job) => job.startsWith('rewind'))
  return [
    wanted(
      'Insulation, each winding to frame and to the others, 500 V DC for 1 min, with winding °C',
      `${of('insulation-random-wound').value} MΩ or more at 40 °C`,
      'insulation-random-wound',
    ),
    ...(jobs.includes('rewind-stator') && volts !== undefined
      ? [
          {
            what: 'High voltage, new stator, 50 or 60 Hz for 1 min, electronics out: shop only',
            limit: `${Math.round(2 * volts + 1000)} V (2 U + 1,000 V); repeated, 80 % of it`,
            source: 'IEC 60034-1, table of withstand voltage',
            held: 'recalled' as const,
          },
        ]
      : []),
    ...(jobs.includes('rewind-rotor')
      ? [
          {
            what: 'High voltage, new rotor field: shop only',
            limit: '10 times the exciter’s volts, 1,500 V least and 3,500 V most',
            source: 'IEC 60034-1, table of withstand voltage',
            held: 'recalled' as const,
          },
        ]
      : []),
    wanted(
      'Ohms of each half, four wires, with °C',
      `within ${of('winding-imbalance').value} % of their mean`,
      'winding-imbalance',
    ),
    ...(answer === undefined
      ? []
      : answer.outlets.map((pair) =>
          wanted(
            `Ohms as linked, ${pair.from} to ${pair.to}`,
            `${sayOhms(pair, answer.units)}${answer.units.ohms ? '' : ' (R: ohms of one half)'}, within ${of('winding-expected').value} %`,
            'winding-expected',
          ),
        )),
    ...(rewound
      ? [
          {
            what: 'Surge comparison of the halves',
            limit: 'alike',
            source: 'practice',
            held: 'practice' as const,
          },
        ]
      : []),
    wanted(
      'Rotating diodes, each way',
      `${of('diode-forward-least').value} to ${of('diode-forward-most').value} V forward, open backward`,
      'diode-forward-least',
    ),
    wanted(
      'Across any gap before a link closes it, low excitation',
      `under ${of('gap-volts').value} % of the volts of one half`,
      'gap-volts',
    ),
    ...(answer === undefined
      ? []
      : answer.outlets.map((pair) =>
          wanted(
            `Volts, nothing on, ${pair.from} to ${pair.to}`,
            `${sayVolts(pair, answer.units)}, within ${of('volts-match').value} %`,
            'volts-match',
          ),
        )),
    {
      what: 'Run with nothing on, then at full load until temperatures stand',
      limit: 'no noise, bearings and windings noted; insulation again hot',
      source: 'practice',
      held: 'practice',
    },
  ]
}

/** What comes back with the part. */
export const reportWanted: readonly string[] = [
  'Winding data as stripped and as wound, side by side',
  'Every test of this sheet: reading, °C, instrument, who and when',
  'Core loss before and after; shaft and housing before and after; balance certificate',
  'Bearings fitted: maker, number, clearance; parts renewed and old parts returned',
  'Pictures: before stripping, core bare, wound before varnish, as left with links',
  'Leads as left, drawn as on this sheet; the regulator’s leads too',
  'What was found to be the cause',
]
