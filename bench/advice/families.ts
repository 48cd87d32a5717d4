/**
 * Families of parts that the random boats are built from: invented, and like the catalogue's in shapes, lives and
 * prices; what a service would renew in time lives longer here, for there are no services. All figures are practice.
 *
 * @module
 */

import type { LifeModelInput } from '../../src/forecast/life-model.js'

type Part = LifeModelInput['parts'][number]
type Mode = Part['modes'][number]
type Clock = 'hours' | 'years'

const delayLogSd = 0.7

/** A mode: life by shape and scale; with a warning of this median it can be found before it fails. */
function mode(
  id: string,
  life: readonly [clock: Clock, shape: number, scale: number],
  more: { readonly warning?: number; readonly checks?: Mode['checks']; readonly stops?: 0 | 1 } & Pick<
    Mode,
    'links'
  > = {},
): Mode {
  const [clock, shape, scale] = life
  const { warning, checks, stops = 1, links } = more
  return {
    id,
    clock,
    shape,
    scale,
    logSd: shape < 1.3 ? 0.5 : 0.35,
    stops,
    ...(warning === undefined ? {} : { delay: { clock, median: warning, logSd: delayLogSd } }),
    ...(checks === undefined ? {} : { checks }),
    ...(links === undefined ? {} : { links }),
  }
}

const watched = (detection: number) => [{ check: 'watch', detection }]
const opened = (detection: number) => [
  { check: 'watch', detection: 0.15 },
  { check: 'open', detection },
]

type Work = Pick<NonNullable<Part['repair']>, 'hours' | 'by' | 'trips' | 'workshopDays'>

const owner = (hours: number): Work => ({ hours, by: 'owner' })
const paid = (hours: number, trips = 1): Work => ({ hours, by: 'paid', trips })
const shop = (hours: number, days: number): Work => ({
  ...paid(hours, 2),
  workshopDays: { median: days, logSd: 0.4 },
})

/** A part as the families list it: its price for a set of 10 kW. */
export interface Family {
  readonly id: string
  readonly access: readonly string[]
  readonly price: number
  readonly work: Work
  readonly modes: readonly Mode[]
}

/** Every boat has these. */
export const always: readonly Family[] = [
  {
    id: 'stator',
    access: ['end'],
    price: 2600,
    work: shop(13, 21),
    modes: [
      mode('insulation', ['years', 2.5, 38], {
        warning: 0.67,
        checks: [{ check: 'measure', detection: 0.7 }],
      }),
      mode('heat', ['hours', 2.2, 30000], { warning: 400, checks: [{ check: 'measure', detection: 0.6 }] }),
    ],
  },
  {
    id: 'bores',
    access: ['top', 'under'],
    price: 1900,
    work: shop(50, 14),
    modes: [
      mode('wear', ['hours', 2.8, 13500], {
        warning: 800,
        checks: watched(0.4),
        links: [{ part: 'crank', mode: 'wear', chance: 0.15 }],
      }),
      mode('rust', ['years', 1.5, 65]),
    ],
  },
  {
    id: 'end-bearing',
    access: ['end'],
    price: 75,
    work: paid(9),
    modes: [
      mode('wear', ['hours', 1.5, 14000], {
        warning: 150,
        checks: watched(0.4),
        links: [
          { part: 'stator', mode: 'insulation', chance: 0.15 },
          { part: 'rotor', mode: 'insulation', chance: 0.2 },
        ],
      }),
      mode('stand', ['years', 2.2, 24], {
        warning: 0.25,
        checks: watched(0.4),
        links: [{ part: 'rotor', mode: 'insulation', chance: 0.15 }],
      }),
    ],
  },
  {
    id: 'exchanger',
    access: ['side'],
    price: 1100,
    work: paid(4),
    modes: [
      mode('perforated', ['years', 3, 24], {
        warning: 0.5,
        checks: opened(0.6),
        links: [{ part: 'head', mode: 'gasket', chance: 0.15 }],
      }),
      mode('fouled', ['hours', 2, 5200], { warning: 150, checks: opened(0.6), stops: 0 }),
    ],
  },
  {
    id: 'elbow',
    access: ['side'],
    price: 480,
    work: paid(3),
    modes: [
      mode('perforated', ['years', 3, 14], {
        warning: 0.75,
        checks: opened(0.6),
        links: [{ part: 'bores', mode: 'rust', chance: 0.06 }],
      }),
      mode('choked', ['hours', 2.5, 5200], { warning: 300, checks: opened(0.7), stops: 0 }),
    ],
  },
  {
    id: 'hoses',
    access: ['front'],
    price: 130,
    work: owner(2.5),
    modes: [
      mode('burst', ['years', 3.2, 14], {
        warning: 0.75,
        checks: watched(0.35),
        links: [
          { part: 'stator', mode: 'insulation', chance: 0.12 },
          { part: 'head', mode: 'gasket', chance: 0.12 },
        ],
      }),
    ],
  },
  {
    id: 'sea-pump',
    access: ['front'],
    price: 420,
    work: owner(2),
    modes: [
      mode('seal', ['hours', 1.8, 3200], {
        warning: 80,
        checks: watched(0.5),
        stops: 0,
        links: [{ part: 'end-bearing', mode: 'stand', chance: 0.1, effect: 'starts-defect' }],
      }),
      mode('vanes', ['hours', 2.5, 3000], {
        links: [{ part: 'head', mode: 'gasket', chance: 0.04 }],
      }),
    ],
  },
]

/** Every boat has some of these. */
export const sometimes: readonly Family[] = [
  {
    id: 'crank',
    access: ['under'],
    price: 1700,
    work: shop(60, 14),
    modes: [
      mode('wear', ['hours', 3, 17000], {
        warning: 150,
        checks: watched(0.3),
        links: [{ part: 'bores', mode: 'wear', chance: 0.4 }],
      }),
    ],
  },
  {
    id: 'head',
    access: ['top'],
    price: 320,
    work: paid(13, 2),
    modes: [
      mode('gasket', ['hours', 2.3, 14000], {
        warning: 60,
        checks: watched(0.4),
        links: [{ part: 'bores', mode: 'wear', chance: 0.1 }],
      }),
    ],
  },
  {
    id: 'rotor',
    access: ['end'],
    price: 1900,
    work: shop(11, 14),
    modes: [
      mode('insulation', ['years', 2.5, 40], {
        warning: 0.67,
        checks: [{ check: 'measure', detection: 0.6 }],
        links: [{ part: 'stator', mode: 'heat', chance: 0.2 }],
      }),
    ],
  },
  {
    id: 'injection-pump',
    access: ['top'],
    price: 1500,
    work: paid(5),
    modes: [
      mode('wear', ['hours', 2.2, 14000], { warning: 500, checks: watched(0.3), stops: 0 }),
      mode('stuck', ['years', 1.4, 40]),
    ],
  },
  {
    id: 'injectors',
    access: ['top'],
    price: 360,
    work: paid(3),
    modes: [
      mode('spray', ['hours', 2.2, 4800], {
        warning: 250,
        checks: watched(0.4),
        stops: 0,
        links: [{ part: 'bores', mode: 'wear', chance: 0.05 }],
      }),
    ],
  },
  {
    id: 'regulator',
    access: ['end'],
    price: 380,
    work: paid(1.5),
    modes: [
      mode('dead', ['years', 1.2, 26], { links: [{ part: 'rotor', mode: 'insulation', chance: 0.05 }] }),
    ],
  },
  {
    id: 'diodes',
    access: ['end'],
    price: 120,
    work: paid(2),
    modes: [
      mode('dead', ['hours', 1.1, 18000], { links: [{ part: 'regulator', mode: 'dead', chance: 0.1 }] }),
    ],
  },
  {
    id: 'starter',
    access: ['under'],
    price: 420,
    work: owner(1.5),
    modes: [mode('worn', ['years', 1.8, 16], { warning: 0.3, checks: watched(0.3) })],
  },
  {
    id: 'board',
    access: [],
    price: 520,
    work: paid(1.5),
    modes: [mode('dead', ['years', 1, 22])],
  },
  {
    id: 'mounts',
    access: ['under'],
    price: 240,
    work: paid(4),
    modes: [
      mode('sagged', ['years', 2.5, 14], {
        warning: 2,
        checks: opened(0.4),
        stops: 0,
        links: [{ part: 'end-bearing', mode: 'wear', chance: 0.2, effect: 'starts-defect' }],
      }),
    ],
  },
]
