/**
 * Whether one piece goes in the place of another, by their own sizes and standard numbers.
 *
 * @module
 */

import type { StandardKind, StandardSizes } from '../catalogue/kit-schema.js'
import type { BatterySize, BearingSize, BeltSize, CapacitorSize, PieceSize, ThreadSize } from './kit-size.js'
import { readSize } from './kit-size-read.js'

/** One thing in which the new piece is not as the old. */
export interface Difference {
  readonly what: string
  readonly old: string
  readonly new: string
  /** It does not go in or does not do; or it goes in, and is thought about first. */
  readonly weight: 'does-not-fit' | 'think'
  /** Why it is to be thought about. */
  readonly because?: string
}

/** What comes of holding two numbers against one another. */
export interface Compared {
  /** `cannot-tell`: one of them is no size of ours, they are of different kinds, or it lacks what decides. */
  readonly verdict: 'fits' | 'think' | 'does-not-fit' | 'cannot-tell'
  readonly differences: readonly Difference[]
  /** The size that both have, in words, where they fit. */
  readonly both?: string
  readonly standard?: string
  /** What the sizes do not tell, and is looked at besides. */
  readonly alsoLook: readonly string[]
}

/** Two numbers or sizes as they are written, the old piece and what is to go in its place; `as`: by that standard alone. */
export function compareNumbers(
  {
    old,
    replacement,
    as,
  }: { readonly old: string; readonly replacement: string; readonly as?: StandardKind },
  sizes: StandardSizes,
): Compared {
  const before = readSize(old, sizes, as)
  const after = readSize(replacement, sizes, before?.is)
  if (before === undefined || after === undefined || before.is !== after.is) return cannotTell
  return compareSizes({ old: before, replacement: after }, sizes)
}

const cannotTell: Compared = { verdict: 'cannot-tell', differences: [], alsoLook: [] }

/** Two sizes of one kind. */
export function compareSizes(
  { old, replacement }: { readonly old: PieceSize; readonly replacement: PieceSize },
  sizes: StandardSizes,
): Compared {
  const { alike } = sizes
  if (old.is === 'bearing' && replacement.is === 'bearing') {
    return comparedBy(bearingDifferences(old, replacement), {
      both: `bore ${old.boreMm}, outside ${old.outsideMm}, width ${old.widthMm} mm`,
      standard: sizes.bearings.standard,
      alsoLook: ['the grease, where it runs hot', 'the load it is made for'],
    })
  }
  if (old.is === 'seal' && replacement.is === 'seal') {
    return comparedBy(
      sizeDifferences(old, replacement, {
        within: alike.measuredMm,
        names: { shaftMm: 'shaft', housingMm: 'housing', widthMm: 'width' },
      }),
      {
        both: `shaft ${old.shaftMm}, housing ${old.housingMm}, width ${old.widthMm} mm`,
        standard: sizes.seals.standard,
        alsoLook: [
          'which way the lip faces, and whether it has a second one',
          'a helix on the lip',
          'its rubber',
        ],
      },
    )
  }
  if (old.is === 'o-ring' && replacement.is === 'o-ring') {
    return comparedBy(
      sizeDifferences(old, replacement, {
        within: alike.measuredMm,
        names: { insideMm: 'inside diameter', thicknessMm: 'thickness' },
      }),
      {
        both: `${old.insideMm} × ${old.thicknessMm} mm`,
        standard: sizes.oRings.standard,
        alsoLook: ['its rubber: for sea water, coolant, oil or fuel'],
      },
    )
  }
  if (old.is === 'belt' && replacement.is === 'belt') {
    return comparedBy(beltDifferences(old, replacement, alike.beltLengthMm), {
      both: `section ${old.section}, ${Math.round(old.datumMm)} mm in its middle`,
      standard: sizes.belts.list.find(({ id }) => id === old.section)?.standard,
      alsoLook: ['whether two run together: those are bought as a pair'],
    })
  }
  if (old.is === 'thread' && replacement.is === 'thread') {
    return comparedBy(threadDifferences(old, replacement), {
      both: `${old.form} ${old.size}`,
      standard: old.form === 'metric' ? sizes.threads.standard : sizes.pipeThreads.standard,
      alsoLook: ['the grade on the head of a bolt', 'whether it seals on the thread or on a washer'],
    })
  }
  if (old.is === 'hose' && replacement.is === 'hose') {
    return comparedBy(
      sizeDifferences(old, replacement, { within: alike.hoseBoreMm, names: { boreMm: 'inside diameter' } }),
      {
        both: `inside ${shown(old.boreMm)} mm`,
        alsoLook: [
          'what it is made for: sea water, coolant, wet exhaust or fuel',
          'its bends and its length',
        ],
      },
    )
  }
  if (old.is === 'capacitor' && replacement.is === 'capacitor')
    return compareCapacitors(old, replacement, sizes)
  if (old.is === 'battery' && replacement.is === 'battery') {
    return comparedBy(batteryDifferences(old, replacement), {
      both: 'the case, the volts and the side of the pole',
      standard: sizes.batteries.standard,
      alsoLook: ['how it is held down', 'its terminals'],
    })
  }
  return cannotTell
}

function comparedBy(
  differences: readonly Difference[],
  told: {
    readonly both: string
    readonly standard?: string | undefined
    readonly alsoLook: readonly string[]
  },
): Compared {
  const { both, standard, alsoLook } = told
  const misfit = differences.some(({ weight }) => weight === 'does-not-fit')
  const verdict = misfit ? 'does-not-fit' : differences.length > 0 ? 'think' : 'fits'
  return {
    verdict,
    differences,
    ...(misfit ? {} : { both }),
    ...(standard === undefined ? {} : { standard }),
    alsoLook: misfit ? [] : alsoLook,
  }
}

/** Sizes that must be alike, within what measuring and marking leave open. */
function sizeDifferences<T extends PieceSize>(
  old: T,
  replacement: T,
  of: { readonly within: number; readonly names: Readonly<Partial<Record<keyof T, string>>> },
): Difference[] {
  return (Object.entries(of.names) as [keyof T, string][]).flatMap(([field, what]) => {
    const [before, after] = [Number(old[field]), Number(replacement[field])]
    if (Math.abs(before - after) <= of.within + 1e-9) return []
    return [misfit(what, `${shown(before)} mm`, `${shown(after)} mm`)]
  })
}

function bearingDifferences(old: BearingSize, replacement: BearingSize): Difference[] {
  return [
    ...sizeDifferences(old, replacement, {
      within: 0,
      names: { boreMm: 'bore', outsideMm: 'outside diameter', widthMm: 'width' },
    }),
    ...(old.groove === replacement.groove ? [] : [misfit('outer ring', ringOf(old), ringOf(replacement))]),
    ...(old.clearance === replacement.clearance
      ? []
      : [
          think('clearance', old.clearance, replacement.clearance, {
            because: 'with less than the old one had it may close up when hot, with more it runs looser',
          }),
        ]),
    ...(old.closed === replacement.closed
      ? []
      : [
          think('seals', old.closed, replacement.closed, {
            because: 'an open one needs grease from outside, a shield keeps no spray out',
          }),
        ]),
    ...[...old.unread, ...replacement.unread]
      .filter((mark) => !(old.unread.includes(mark) && replacement.unread.includes(mark)))
      .map((mark) =>
        think(`mark ${mark}`, had(old.unread.includes(mark)), had(replacement.unread.includes(mark)), {
          because: 'no list here tells what it means: ask',
        }),
      ),
  ]
}

function ringOf({ groove }: BearingSize): string {
  return groove === 'none' ? 'plain' : groove
}

function had(is: boolean): string {
  return is ? 'there' : 'not there'
}

function beltDifferences(old: BeltSize, replacement: BeltSize, within: number): Difference[] {
  const longer = replacement.datumMm - old.datumMm
  return [
    ...(old.section === replacement.section ? [] : sectionDifference(old, replacement)),
    ...(Math.abs(longer) <= within
      ? []
      : [
          misfit(
            'length in its middle',
            `${Math.round(old.datumMm)} mm`,
            `${Math.round(replacement.datumMm)} mm`,
          ),
        ]),
    ...(old.notched === replacement.notched
      ? []
      : [
          think('edge', edgeOf(old), edgeOf(replacement), {
            because: 'a notched one bends round smaller pulleys; a plain one may not',
          }),
        ]),
  ]
}

/** Sections of nearly one width run in one another's grooves, at another depth. */
function sectionDifference(old: BeltSize, replacement: BeltSize): Difference[] {
  const said = [
    `${old.section} (${old.topMm} mm)`,
    `${replacement.section} (${replacement.topMm} mm)`,
  ] as const
  return Math.abs(old.topMm - replacement.topMm) <= 0.5
    ? [
        think('section', ...said, {
          because: 'it is as wide at the top and of another height: look at the groove',
        }),
      ]
    : [misfit('section', ...said)]
}

function edgeOf({ notched }: BeltSize): string {
  return notched ? 'notched' : 'plain'
}

function threadDifferences(old: ThreadSize, replacement: ThreadSize): Difference[] {
  const name = ({ form, size, pitchMm }: ThreadSize) => `${form} ${size}, pitch ${shown(pitchMm)} mm`
  const same =
    old.form === replacement.form &&
    old.size === replacement.size &&
    Math.abs(old.pitchMm - replacement.pitchMm) < 0.01
  return [
    ...(same ? [] : [misfit('thread', name(old), name(replacement))]),
    ...(old.lengthMm === undefined ||
    replacement.lengthMm === undefined ||
    old.lengthMm === replacement.lengthMm
      ? []
      : [
          think('length', `${old.lengthMm} mm`, `${replacement.lengthMm} mm`, {
            because: 'a longer one can bottom, a shorter one holds by fewer turns',
          }),
        ]),
  ]
}

/** The same capacity; volts no less, class no shorter: IEC 60252-1. */
function compareCapacitors(old: CapacitorSize, replacement: CapacitorSize, sizes: StandardSizes): Compared {
  const { alike, capacitorClasses } = sizes
  const hours = ({ operation }: CapacitorSize) =>
    capacitorClasses.list.find(({ id }) => id === operation)?.hours
  const share = Math.abs(replacement.microfarads / old.microfarads - 1)
  const [before, after] = [hours(old), hours(replacement)]
  if (old.volts === undefined || replacement.volts === undefined) {
    if (share <= alike.capacitySharePercent / 100) return { ...cannotTell, alsoLook: ['the volts on both'] }
  }
  return comparedBy(
    [
      ...(share <= alike.capacitySharePercent / 100
        ? []
        : [misfit('capacity', `${old.microfarads} µF`, `${replacement.microfarads} µF`)]),
      ...(old.volts !== undefined && replacement.volts !== undefined && replacement.volts < old.volts
        ? [misfit('rated voltage', `${old.volts} V`, `${replacement.volts} V`)]
        : []),
      ...(before !== undefined && after !== undefined && after < before
        ? [
            think('class', `${old.operation} (${before} h)`, `${replacement.operation} (${after} h)`, {
              because: 'it is made for fewer hours',
            }),
          ]
        : []),
    ],
    {
      both: `${old.microfarads} µF at ${old.volts} V or more`,
      standard: capacitorClasses.standard,
      alsoLook: ['its diameter, height, stud and tongues', 'that it is for running, not for starting'],
    },
  )
}

/** The same volts and side of the pole; a case no larger; cranking current no less. */
function batteryDifferences(old: BatterySize, replacement: BatterySize): Difference[] {
  const larger = (['lengthMm', 'widthMm', 'heightMm'] as const).flatMap((edge) => {
    const [before, after] = [old[edge], replacement[edge]]
    if (before === undefined || after === undefined || before === after) return []
    const said = [edge.replace('Mm', ''), `${before} mm`, `${after} mm`] as const
    return after > before ? [misfit(...said)] : [think(...said, { because: 'it must still be held down' })]
  })
  const changed = (what: string, before: number | string | undefined, after: number | string | undefined) =>
    before === undefined || after === undefined || before === after
      ? []
      : [misfit(what, String(before), String(after))]
  const less = (what: string, unit: string, before: number | undefined, after: number | undefined) =>
    before === undefined || after === undefined || after >= before
      ? []
      : [
          think(what, `${before} ${unit}`, `${after} ${unit}`, {
            because: 'it turns a cold engine for less long',
          }),
        ]
  return [
    ...changed('volts', old.volts, replacement.volts),
    ...changed('side of the positive pole', old.positive, replacement.positive),
    ...larger,
    ...less('cranking current', 'A', old.crankingA, replacement.crankingA),
    ...less('capacity', 'Ah', old.ampereHours, replacement.ampereHours),
  ]
}

function misfit(what: string, old: string, replacement: string): Difference {
  return { what, old, new: replacement, weight: 'does-not-fit' }
}

function think(
  what: string,
  old: string,
  replacement: string,
  { because }: { readonly because: string },
): Difference {
  return { what, old, new: replacement, weight: 'think', because }
}

function shown(value: number): string {
  return String(Number(value.toFixed(2)))
}
