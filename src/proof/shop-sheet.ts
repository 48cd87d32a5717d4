/**
 * The sheet that goes to a workshop with the part.
 *
 * @module
 */

import type { LinkPattern } from '../catalogue/links-schema.js'
import type { Entry } from '../logbook/kinds.js'
import { isKind } from '../logbook/kinds.js'
import type { SetRegister } from '../register/register-types.js'
import type { LinksRecord } from './as-found.js'
import type { Limits } from './limits.js'
import { linkDrawing } from './links/drawing.js'
import { writeJoints, writeOutlets } from './links/links-text.js'
import { lookAtLinks } from './links/look-at-links.js'
import { phasorDrawing } from './links/phasor-drawing.js'
import { sayOhms, sayVolts } from './links/say-links.js'
import type { CoilValues, Joined } from './links/winding.js'
import { sayFigure } from './say-figure.js'
import type { SheetBlock, SheetPassage } from './shop-sheet-blocks.js'
import { picturesForShop } from './shop-sheet-pictures.js'
import {
  balanceWanted,
  bearingWants,
  coreTests,
  jobNames,
  reportWanted,
  rotorData,
  type ShopJob,
  testsWanted,
  varnishWants,
  type Wanted,
  windingData,
} from './shop-sheet-wants.js'
import { polesOf } from './supply.js'

export interface ShopSheetOf {
  readonly register: SetRegister
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly limits: Limits
  readonly jobs: readonly ShopJob[]
  /** What else is asked, in the owner's words. */
  readonly asks?: string | undefined
  /** Leads as found, with what their coils are made for; none where nobody wrote them down. */
  readonly found?: { readonly record: LinksRecord; readonly values: CoilValues } | undefined
  /** The links wanted back, where they are not those found. */
  readonly wanted?: { readonly pattern: LinkPattern; readonly joined: Joined } | undefined
  /** The price above which to ask first, as the owner types it. */
  readonly askAbove?: number | undefined
  readonly demonstration: boolean
  readonly program: string
}

export interface ShopSheet {
  readonly title: string
  readonly boatName: string
  readonly invented?: string
  readonly day: string
  readonly passages: readonly SheetPassage[]
  readonly colophon: string
}

/** What open quotes ask for. */
export function jobsOfQuotes(
  { openQuotes }: Pick<SetRegister, 'openQuotes'>,
  entries: readonly Entry[],
): readonly ShopJob[] {
  const parts = openQuotes.flatMap(({ entry: id }) => {
    const quote = entries.find((entry) => entry.id === id)
    return quote !== undefined && isKind(quote, 'quote') ? quote.body.covers.parts : []
  })
  const jobs = parts.flatMap(({ part, did }): ShopJob[] => {
    const anew = did === 'renewed'
    if (part === 'stator-winding') return [anew ? 'rewind-stator' : 'dry-and-varnish']
    if (part === 'rotor-winding') return [anew ? 'rewind-rotor' : 'dry-and-varnish']
    if (part === 'exciter' || part === 'rotor-diodes') return ['exciter']
    return part === 'outboard-bearing' || part === 'drive-end-bearing' ? ['bearings'] : []
  })
  return [...new Set(jobs)]
}

export function shopSheetOf(of: ShopSheetOf): ShopSheet {
  const { register, demonstration, program } = of
  const rewinds = of.jobs.some((job) => job.startsWith('rewind'))
  const apart = of.jobs.some((job) => job !== 'test')
  return {
    title: 'Shop sheet',
    boatName: register.boatFacts.name ?? register.boat,
    ...(demonstration ? { invented: 'Demonstration: boat and log are invented.' } : {}),
    day: register.asOf,
    passages: [
      whatItIs(of),
      whatIsAsked(of),
      asFound(of),
      required(of),
      ...(rewinds
        ? [beforeStripping(of.jobs), wants('Core test', 'Before and after stripping.', coreTests)]
        : []),
      ...(apart ? [wants('Bearings and fits', 'The end is open anyway.', bearingWants)] : []),
      ...(apart ? [wants('Balance', undefined, [balanceWanted(register.setFacts.rpm)])] : []),
      ...(apart && of.jobs.some((job) => job !== 'bearings')
        ? [wants('Insulation and varnish', 'It lives in salt air.', varnishWants)]
        : []),
      tests(of),
      {
        title: 'Report to return',
        says: 'Before the part, or with it.',
        blocks: [{ is: 'list', items: reportWanted }],
      },
      price(of),
      photographs(of),
      hazards(of.limits),
    ],
    colophon: `Gensettle ${program}, as of ${register.asOf}. Figures marked recalled or practice are to be checked; what the workshop’s own standard says stricter holds.`,
  }
}

function whatItIs({ register: { setFacts, set, hours } }: ShopSheetOf): SheetPassage {
  const { name, ratingKw, volts, hertz, rpm, phases, excitation, bearings, leads, built } = setFacts
  const meter = hours.points.findLast(({ entry }) => entry !== undefined)?.hours
  const poles = rpm === undefined || hertz === undefined ? undefined : polesOf({ hertz, rpm })
  const rows: readonly (readonly [string, string | undefined])[] = [
    ['Set', name ?? set],
    ['Rating', ratingKw === undefined ? undefined : `${ratingKw} kW`],
    [
      'Volts, frequency',
      said([
        volts?.length ? `${volts.join('/')} V` : '',
        hertz === undefined ? '' : `${hertz} Hz`,
        phases === undefined ? '' : `${phases === 1 ? 'one phase' : 'three phases'}`,
      ]),
    ],
    [
      'Speed, poles',
      said([rpm === undefined ? '' : `${rpm} rpm`, poles === undefined ? '' : `${poles} poles`]),
    ],
    ['Excitation', excitation?.replaceAll('-', ' ')],
    [
      'Bearings of its own',
      bearings === undefined ? undefined : bearings === 1 ? 'one: the engine carries the other end' : 'two',
    ],
    ['Leads brought out', leads === undefined ? undefined : String(leads)],
    [
      'Built, hours',
      said([built ?? '', meter === undefined ? '' : `${Math.round(meter).toLocaleString('en-GB')} h`]),
    ],
  ]
  return {
    title: 'What it is',
    blocks: [
      { is: 'table', heads: ['', ''], rows: rows.flatMap(([head, value]) => (value ? [[head, value]] : [])) },
      { is: 'blanks', names: ['Maker and type on the plate', 'Serial number', 'Weight as sent, kg'] },
    ],
  }
}

function whatIsAsked({ jobs, asks }: ShopSheetOf): SheetPassage {
  return {
    title: 'What is asked',
    blocks: [
      { is: 'list', items: jobs.map((job) => `${jobNames[job]}.`) },
      ...(asks === undefined ? [] : [{ is: 'text' as const, text: asks }]),
      {
        is: 'text',
        text: 'Find the cause and say it. Change nothing in how the leads are joined or marked without asking. Low insulation alone is no reason to rewind: wash, dry and test again first.',
      },
    ],
  }
}

function asFound({ found }: ShopSheetOf): SheetPassage {
  const title = 'Leads as found'
  if (found === undefined) {
    return {
      title,
      says: 'Nobody wrote them down.',
      blocks: [
        {
          is: 'stop',
          text: 'How the leads were joined is not in the log. Draw it here and take pictures before one of them is undone.',
        },
        { is: 'blanks', names: ['Joined', 'Lines and neutral from', 'Regulator’s leads from'] },
      ],
    }
  }
  const { record, values } = found
  const { winding, joined, labels, date } = record
  return {
    title,
    says: [
      date === undefined ? '' : `${date}.`,
      'A dot in a coil: where it begins. A crossing without a dot is no joint.',
    ]
      .filter(Boolean)
      .join(' '),
    blocks: [
      {
        is: 'drawings',
        drawings: [linkDrawing(winding, joined), phasorDrawing(winding, joined, { values, longest: 80 })],
      },
      {
        is: 'text',
        bold: 'Joined:',
        text: `${writeJoints(joined.joints) || 'nothing'}. Out: ${writeOutlets(joined.lines) || 'nothing'}.${joined.sensing.length === 0 ? ' Where the regulator looks was not written down.' : ` Regulator: ${writeOutlets(joined.sensing)}.`}`,
      },
      ...(labels.length === 0
        ? []
        : [{ is: 'text' as const, bold: 'Labels:', text: `${labels.join(', ')}.` }]),
    ],
  }
}

function required({ register: { setFacts }, found, wanted }: ShopSheetOf): SheetPassage {
  const { volts, hertz, rpm } = setFacts
  const joined = wanted?.joined ?? found?.record.joined
  const answer =
    found === undefined || joined === undefined
      ? undefined
      : lookAtLinks(found.record.winding, joined, found.values)
  const [most] = answer?.capacities ?? []
  return {
    title: 'Volts and frequency required',
    blocks: [
      {
        is: 'text',
        text: `${said([volts?.length ? `${volts.join('/')} V` : 'volts: ______', hertz === undefined ? 'frequency: ______' : `${hertz} Hz`, rpm === undefined ? '' : `at ${rpm} rpm`])}. ${
          wanted === undefined
            ? 'Linked as found.'
            : `Linked anew: ${wanted.pattern.name.toLowerCase()}, joined ${writeJoints(wanted.joined.joints)}; out ${writeOutlets(wanted.joined.lines)}; the regulator’s leads moved to suit.`
        }`,
      },
      ...(wanted === undefined || found === undefined
        ? []
        : [{ is: 'drawings' as const, drawings: [linkDrawing(found.record.winding, wanted.joined)] }]),
      ...(answer === undefined || answer.outlets.length === 0
        ? []
        : [
            {
              is: 'table' as const,
              heads: ['Between', 'Volts, nothing on', 'Ohms'],
              rows: answer.outlets.map((pair) => [
                `${pair.from} and ${pair.to}`,
                sayVolts(pair, answer.units),
                sayOhms(pair, answer.units),
              ]),
            },
          ]),
      ...(answer === undefined || most === undefined || !answer.units.amps
        ? []
        : [
            {
              is: 'text' as const,
              text: `Each line ${most.lineAmps.toFixed(1)} A at its rating, all lines alike.`,
            },
          ]),
    ],
  }
}

function beforeStripping(jobs: readonly ShopJob[]): SheetPassage {
  const names = [
    ...(jobs.includes('rewind-stator') ? windingData : []),
    ...(jobs.includes('rewind-rotor') ? rotorData : []),
  ]
  return {
    title: 'To be written down before stripping',
    says: 'A picture of each step.',
    blocks: [{ is: 'blanks', names }],
  }
}

function wants(title: string, says: string | undefined, list: readonly Wanted[]): SheetPassage {
  return {
    title,
    ...(says === undefined ? {} : { says }),
    blocks: [wantedTable(list, ['', 'Wanted', 'From'])],
  }
}

function wantedTable(list: readonly Wanted[], heads: readonly string[]): SheetBlock {
  const from = ({ source, held }: Wanted) => (source === 'practice' ? 'practice' : `${source} (${held})`)
  return {
    is: 'table',
    heads,
    rows: list.map((one) => [one.what, one.limit, from(one), ...heads.slice(3).map(() => '')]),
  }
}

function tests({ register: { setFacts }, limits, jobs, found, wanted }: ShopSheetOf): SheetPassage {
  const joined = wanted?.joined ?? found?.record.joined
  const answer =
    found === undefined || joined === undefined
      ? undefined
      : lookAtLinks(found.record.winding, joined, found.values)
  const volts = setFacts.volts === undefined ? undefined : Math.max(...setFacts.volts)
  return {
    title: 'Tests wanted',
    says: 'Dead ones first. A reading without its °C is none.',
    blocks: [wantedTable(testsWanted({ jobs, limits, volts, answer }), ['Test', 'Limit', 'From', 'Found'])],
  }
}

function price({ register, entries, askAbove }: ShopSheetOf): SheetPassage {
  const money = (amount: number) =>
    `${Math.round(amount).toLocaleString('en-GB')} ${register.boatFacts.currency ?? ''}`.trim()
  const decided = entries
    .filter((entry) => isKind(entry, 'decision'))
    .filter((entry) => entry.set === null || entry.set === register.set)
    .findLast(({ body }) => body.walkAwayPrice !== undefined)?.body.walkAwayPrice
  const quoted = register.openQuotes.find(({ expired }) => !expired)?.withTax
  const known = askAbove ?? decided ?? quoted
  const from =
    askAbove !== undefined
      ? ''
      : decided !== undefined
        ? ' That is the price settled on.'
        : quoted !== undefined
          ? ' That is what was quoted, tax in.'
          : ''
  return {
    title: 'Price above which to ask first',
    blocks: [
      known === undefined
        ? { is: 'blanks', names: ['Ask first above, tax in'] }
        : {
            is: 'text',
            bold: `${money(known)}, tax in.`,
            text: `Above it nothing is begun before it is said what it will cost.${from}`,
          },
      { is: 'text', text: 'If the core is not worth winding, or a seat or shaft is worn, stop and ask.' },
      { is: 'blanks', names: ['Telephone', 'Wanted back by'] },
    ],
  }
}

function photographs({ found, entries, jobs }: ShopSheetOf): SheetPassage {
  const pictures = picturesForShop({ found: found?.record, entries, jobs })
  return {
    title: 'Photographs',
    blocks: [
      pictures.length === 0
        ? {
            is: 'text',
            text: 'None are in the log. Take them before it leaves: terminal box, each lead’s mark, plate, both ends.',
          }
        : { is: 'pictures', pictures },
      { is: 'signatures', lines: ['Sent by', 'Date', 'Received by', 'Date'] },
    ],
  }
}

function hazards(limits: Limits): SheetPassage {
  return {
    title: 'Cautions',
    blocks: [
      {
        is: 'list',
        items: [
          `Lifting: over ${sayFigure(limits('lift-by-one').value, 'kg')} a head, use gear; prop the engine before an alternator with one bearing comes off.`,
          'Stored charge: bleed capacitors, and meter them, before a lead is touched.',
          'Tests above 500 V DC are for the shop alone, electronics out. Local rules and licensed people come first.',
        ],
      },
    ],
  }
}

function said(pieces: readonly string[]): string {
  return pieces.filter(Boolean).join(', ')
}
