/**
 * Sizes and standard numbers of pieces as people write them: "6205-2RS/C3", "25x47x7", "A 1000 Ld", "G 1/2", "30 µF 450 V".
 *
 * @module
 */

import type { StandardKind, StandardSizes } from '../catalogue/kit-schema.js'
import type {
  BearingSize,
  BeltSize,
  HoseSize,
  PieceSize,
  RingSize,
  SealSize,
  ThreadSize,
} from './kit-size.js'
import { readBattery, readCapacitor } from './kit-size-electric.js'

const millimetresPerInch = 25.4

type Reader = (text: string, sizes: StandardSizes) => PieceSize | undefined

/** The more telling first: a seal is any three numbers, an O-ring any two. */
const readers: Readonly<Record<StandardKind, Reader>> = {
  battery: readBattery,
  capacitor: readCapacitor,
  bearing: readBearing,
  thread: readThread,
  belt: readBelt,
  hose: readHose,
  seal: readSeal,
  'o-ring': readRing,
}

/** What a text names, by the standard that is asked for, else by any; undefined where it is no size of ours. */
export function readSize(text: string, sizes: StandardSizes, as?: StandardKind): PieceSize | undefined {
  const plain = text.trim().replaceAll('×', 'x').replaceAll(',', '.').replace(/\s+/g, ' ')
  if (as !== undefined) return readers[as](plain, sizes)
  for (const read of Object.values(readers)) {
    const size = read(plain, sizes)
    if (size !== undefined) return size
  }
  return undefined
}

/** Boundary dimensions by the number: ISO 15, general plan. The bore of a number from 04 on is five times its last two figures. */
function readBearing(text: string, { bearings, bearingMarks }: StandardSizes): BearingSize | undefined {
  const match = /^(6[023]\d\d)(?!\d)(.*)$/.exec(text.toUpperCase())
  const size = bearings.list.find(({ id }) => id === match?.[1])
  if (match === null || size === undefined) return undefined
  const { boreMm, outsideMm, widthMm } = size
  const { told, unread } = marksOf(match[2]!, bearingMarks)
  return {
    is: 'bearing',
    boreMm,
    outsideMm,
    widthMm,
    clearance: told.clearance ?? 'usual',
    closed: told.closed ?? 'open',
    groove: told.groove ?? 'none',
    unread,
  }
}

type Told = Partial<Record<StandardSizes['bearingMarks'][number]['of'], string>>

/** Marks behind the figures, the longest that fits first, with or without hyphens, strokes and blanks between. */
function marksOf(
  text: string,
  marks: StandardSizes['bearingMarks'],
): { readonly told: Told; readonly unread: readonly string[] } {
  const known = marks
    .flatMap(({ of, is, marks: written }) => written.map((mark) => ({ of, is, mark })))
    .sort((a, b) => b.mark.length - a.mark.length)
  const told: Told = {}
  const unread: string[] = []
  let rest = text
  while (rest !== '') {
    const here = rest
    const mark = known.find((one) => here.startsWith(one.mark))
    if (/^[-/. _]/.test(rest)) rest = rest.slice(1)
    else if (mark !== undefined) {
      told[mark.of] = mark.is
      rest = rest.slice(mark.mark.length)
    } else {
      const [strange = rest] = /^[^-/. _]+/.exec(rest) ?? []
      unread.push(strange)
      rest = rest.slice(strange.length)
    }
  }
  return { told, unread }
}

const number = '(\\d+(?:\\.\\d+)?)'
const threeNumbers = new RegExp(`^${number} ?[-x/] ?${number} ?[-x/] ?${number}(?: ?mm)?(?: .*)?$`, 'i')
const twoNumbers = new RegExp(`^(?:o-?ring |or )?${number} ?x ?${number}(?: ?mm)?$`, 'i')

function readSeal(text: string): SealSize | undefined {
  const [shaftMm = 0, housingMm = 0, widthMm = 0] = (threeNumbers.exec(text) ?? []).slice(1).map(Number)
  const isSeal = shaftMm > 0 && shaftMm < housingMm && widthMm > 0 && widthMm <= 25
  return isSeal ? { is: 'seal', shaftMm, housingMm, widthMm } : undefined
}

/** Inside diameter × thickness, or the size code of the general series (ISO 3601-1; the same as AS568). */
function readRing(text: string, { oRings }: StandardSizes): RingSize | undefined {
  const code = /^(?:as ?568[- ]?|bs ?|iso ?3601[- ]?|-)(\d{3})$/i.exec(text)?.[1]
  const listed = oRings.list.find(({ id }) => id === code)
  if (listed !== undefined)
    return { is: 'o-ring', insideMm: listed.insideMm, thicknessMm: listed.thicknessMm }
  const [insideMm = 0, thicknessMm = 0] = (twoNumbers.exec(text) ?? []).slice(1).map(Number)
  return insideMm > thicknessMm && thicknessMm > 0 && thicknessMm <= 10
    ? { is: 'o-ring', insideMm, thicknessMm }
    : undefined
}

/**
 * Section and length. A length is inside (Li), datum or pitch (Ld, Lw, Lp) or outside, effective (La, Le); unsaid it is
 * what the section is named by, and a classical section with less than 200 has it in inches, inside.
 */
function readBelt(text: string, { belts }: StandardSizes): BeltSize | undefined {
  const spelt = belts.list.flatMap(({ names }) => names).sort((a, b) => b.length - a.length)
  const form = new RegExp(
    `^(${spelt.join('|')})(x?)[ -]?x?[ -]?${number} ?(?:mm)? ?(li|ld|lw|lp|la|le)?$`,
    'i',
  )
  const [, name = '', raw, told = '', how = ''] = form.exec(text) ?? []
  const section = belts.list.find(({ names }) => names.includes(name.toUpperCase()))
  if (section === undefined) return undefined
  const { insideToDatumMm = 0, datumToOutsideMm } = section
  const inInches = section.lengthIs === 'inside' && Number(told) < 200
  const length = Number(told) * (inInches ? millimetresPerInch : 1)
  const along = lengthOf[how.toLowerCase()] ?? section.lengthIs
  const datumMm =
    along === 'inside' ? length + insideToDatumMm : along === 'outside' ? length - datumToOutsideMm : length
  const notched = /X/i.test(name) || (raw !== '' && /^[A-Z]$/i.test(name))
  return { is: 'belt', section: section.id, topMm: section.topMm, datumMm, notched }
}

const lengthOf: Readonly<Record<string, 'inside' | 'datum' | 'outside'>> = {
  li: 'inside',
  ld: 'datum',
  lw: 'datum',
  lp: 'datum',
  la: 'outside',
  le: 'outside',
}

/** Metric threads with their pitch (coarse where unsaid), and pipe threads: G parallel, R and Rc tapered, NPT American. */
function readThread(text: string, sizes: StandardSizes): ThreadSize | undefined {
  const metric = /^M(\d+(?:\.\d+)?)(?: ?x ?(\d+(?:\.\d+)?))?(?: ?x ?(\d+(?:\.\d+)?))?(?: ?mm)?$/i.exec(text)
  if (metric !== null) return metricThread(metric, sizes)
  const pipe = /^(G|RC?|RP|BSPP?|BSPT|NPT) ?(\d+(?:\/\d+)?)(?: ?(NPT|BSPP?|BSPT))?"?$/i.exec(text)
  const after = /^(\d+(?:\/\d+)?)"? ?(G|NPT|BSPP?|BSPT)$/i.exec(text)
  const mark = (pipe?.[1] ?? after?.[2])?.toUpperCase()
  const listed = sizes.pipeThreads.list.find(({ id }) => id === (pipe?.[2] ?? after?.[1]))
  if (mark === undefined || listed === undefined) return undefined
  const form =
    mark === 'NPT' ? 'American pipe' : ['R', 'RC', 'BSPT'].includes(mark) ? 'tapered pipe' : 'parallel pipe'
  const perInch = form === 'American pipe' ? listed.americanPerInch : listed.perInch
  return { is: 'thread', form, size: listed.id, pitchMm: millimetresPerInch / perInch }
}

/** A second number is a pitch where it is no more than a third of the diameter, else the length. */
function metricThread(match: RegExpExecArray, { threads }: StandardSizes): ThreadSize | undefined {
  const [diameter, second, third] = match.slice(1).map((one) => (one === undefined ? undefined : Number(one)))
  const coarse = threads.list.find(({ id }) => id === `M${diameter}`)?.pitchMm
  const isPitch = second !== undefined && second <= diameter! / 3
  const pitchMm = isPitch ? second : coarse
  const lengthMm = isPitch ? third : second
  if (pitchMm === undefined) return undefined
  return {
    is: 'thread',
    form: 'metric',
    size: `M${diameter}`,
    pitchMm,
    ...(lengthMm === undefined ? {} : { lengthMm }),
  }
}

function readHose(text: string): HoseSize | undefined {
  const match = /^(?:hose |bore )?(\d+(?:\.\d+)?) ?mm(?: (?:hose|bore|inside))?$/i.exec(text)
  if (match !== null) return { is: 'hose', boreMm: Number(match[1]) }
  const inches = /^(?:hose )?(?:(\d+)[ -])?(\d+)(?:\/(\d+))? ?(?:"|in|inch)(?: hose)?$/i.exec(text)
  if (inches === null) return undefined
  const [whole = 0, over = 0, under = 1] = inches
    .slice(1)
    .map((one) => (one === undefined ? undefined : Number(one)))
  return { is: 'hose', boreMm: (whole + over / under) * millimetresPerInch }
}
