/**
 * Joined leads as they are typed: `T4-T7, T10-T11-T12`, `L1=T1, N=T10`, or a file of lines such as `joined: T4-T7`.
 *
 * @module
 */

import type { Problem } from '../../catalogue/problem.js'
import type { Coil, CoilValues, Joined, Outlet, Winding } from './winding.js'

const jointWords = 'two leads or more joined by "-", such as T4-T7; the next joint after a comma'
const outletWords = 'a name and the lead it leaves from, such as L1=T1; the next one after a comma'

/** Leads that are joined; every lead must be one of `leads`. */
export function readJoints(
  text: string,
  { leads, path }: { readonly leads: readonly string[]; readonly path: string },
): { readonly joints: readonly (readonly string[])[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const joints = piecesOf(text).map((piece) => {
    const marks = piece.split(/[-–+]/).map((mark) => mark.trim())
    if (marks.length < 2 || marks.includes('')) {
      problems.push({ code: 'wrong-form', path, found: piece, allowed: jointWords })
      return []
    }
    return marks.flatMap((mark, at) => {
      const lead = leadNamed(mark, leads)
      if (lead === undefined) problems.push(unknownLead(mark, { leads, path }))
      else if (marks.findIndex((other) => leadNamed(other, leads) === lead) !== at) {
        problems.push({ code: 'twice', path, found: piece, allowed: 'each lead once in a joint' })
      }
      return lead ?? []
    })
  })
  return { joints: joints.filter(({ length }) => length > 1), problems }
}

/** Lines, the neutral, or leads of the regulator. */
export function readOutlets(
  text: string,
  { leads, path }: { readonly leads: readonly string[]; readonly path: string },
): { readonly outlets: readonly Outlet[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const met = new Set<string>()
  const outlets = piecesOf(text).flatMap((piece) => {
    const [, name, mark] = /^([A-Za-z][A-Za-z0-9]{0,5})\s*=\s*(\S+)$/.exec(piece) ?? []
    if (name === undefined || mark === undefined) {
      problems.push({ code: 'wrong-form', path, found: piece, allowed: outletWords })
      return []
    }
    const said = name.toUpperCase()
    if (met.has(said)) problems.push({ code: 'twice', path, found: piece, allowed: 'each name once' })
    met.add(said)
    const lead = leadNamed(mark, leads)
    if (lead === undefined) problems.push(unknownLead(mark, { leads, path }))
    return lead === undefined ? [] : [{ name: said, lead }]
  })
  return { outlets, problems }
}

/** Joints and outlets as they would be typed. */
export function writeJoints(joints: readonly (readonly string[])[]): string {
  return joints.map((leads) => leads.join('-')).join(', ')
}

export function writeOutlets(outlets: readonly Outlet[]): string {
  return outlets.map(({ name, lead }) => `${name}=${lead}`).join(', ')
}

/** What a file tells; what it leaves out is undefined. */
export interface LinksFile {
  /** A winding of the catalogue, or coils of its own. */
  readonly winding?: string
  readonly coils?: readonly Coil[]
  readonly marks?: string
  readonly joined: string
  readonly lines: string
  readonly sensing: string
  readonly values: CoilValues
}

const fileKeys = {
  winding: 'a winding, such as four-leads or twelve-leads',
  coils: 'coils with their ends and their angle, such as T1-T4 at 0, T2-T5 at -120',
  marks: 'nema or iec',
  joined: jointWords,
  lines: outletWords,
  sensing: outletWords,
  emf: 'volts of one coil',
  resistance: 'ohms of one coil',
  reactance: 'ohms of one coil',
  amps: 'what one coil may carry',
} as const
const numberKeys = {
  emf: 'emfV',
  resistance: 'resistanceOhm',
  reactance: 'reactanceOhm',
  amps: 'amps',
} as const

/** Reads a file of lines `key: value`; what stands after `#` is for people. */
export function readLinksFile(text: string): {
  readonly file: LinksFile
  readonly problems: readonly Problem[]
} {
  const problems: Problem[] = []
  const told = new Map<string, string>()
  text.split(/\r?\n/).forEach((line, at) => {
    const plain = line.replace(/#.*/, '').trim()
    if (plain === '') return
    const path = `line ${at + 1}`
    const [, key = '', value = ''] = /^([a-z]+)\s*:\s*(.*)$/i.exec(plain) ?? []
    const known = key.toLowerCase()
    if (!Object.hasOwn(fileKeys, known)) {
      const allowed = `"key: value" with one of ${Object.keys(fileKeys).join(', ')}`
      problems.push({ code: 'unknown-field', path, found: plain, allowed })
    } else if (told.has(known) && !['joined', 'lines', 'coils'].includes(known)) {
      problems.push({ code: 'twice', path, found: plain, allowed: 'this once' })
    } else told.set(known, [told.get(known), value].filter(Boolean).join(', '))
  })
  const values = Object.fromEntries(
    Object.entries(numberKeys).flatMap(([key, field]) => {
      const said = told.get(key)
      if (said === undefined) return []
      const value = Number(said.replace(/\s*(V|A|ohm|Ω)$/i, ''))
      if (Number.isFinite(value) && value >= 0) return [[field, value]]
      problems.push({ code: 'wrong-type', path: key, found: said, allowed: fileKeys[key as 'emf'] })
      return []
    }),
  ) as CoilValues
  const coils = told.has('coils') ? readCoils(told.get('coils')!, problems) : undefined
  const winding = told.get('winding')
  const marks = told.get('marks')
  return {
    file: {
      ...(winding === undefined ? {} : { winding }),
      ...(coils === undefined ? {} : { coils }),
      ...(marks === undefined ? {} : { marks }),
      joined: told.get('joined') ?? '',
      lines: told.get('lines') ?? '',
      sensing: told.get('sensing') ?? '',
      values,
    },
    problems,
  }
}

/** "T1-T4 at 0, T2-T5 at -120" */
function readCoils(text: string, problems: Problem[]): readonly Coil[] {
  const met = new Set<string>()
  return piecesOf(text).flatMap((piece) => {
    const [, start, end, degrees] = /^(\w+)\s*[-–]\s*(\w+)\s+at\s+(-?\d+(?:\.\d+)?)$/.exec(piece) ?? []
    if (start === undefined || end === undefined || start === end) {
      problems.push({ code: 'wrong-form', path: 'coils', found: piece, allowed: fileKeys.coils })
      return []
    }
    for (const mark of [start, end]) {
      if (met.has(mark))
        problems.push({ code: 'twice', path: 'coils', found: mark, allowed: 'each lead once' })
      met.add(mark)
    }
    return [{ name: `${start}–${end}`, start, end, degrees: Number(degrees) }]
  })
}

/** Joints and outlets of a winding, with everything that is wrong in them. */
export function readJoined(
  texts: { readonly joined: string; readonly lines: string; readonly sensing: string },
  { leads, path = '' }: { readonly leads: readonly string[]; readonly path?: string },
): { readonly joined: Joined; readonly problems: readonly Problem[] } {
  const at = (key: string) => ({ leads, path: path === '' ? key : `${path} ${key}` })
  const { joints, problems: ofJoints } = readJoints(texts.joined, at('joined'))
  const lines = readOutlets(texts.lines, at('lines'))
  const sensing = readOutlets(texts.sensing, at('sensing'))
  return {
    joined: { joints, lines: lines.outlets, sensing: sensing.outlets },
    problems: [...ofJoints, ...lines.problems, ...sensing.problems],
  }
}

/** Another marking of the same winding, lead by lead. */
export function relabelled(winding: Winding, marks: ReadonlyMap<string, string>): Winding {
  const other = (lead: string) => marks.get(lead) ?? lead
  return {
    coils: winding.coils.map((coil) => ({ ...coil, start: other(coil.start), end: other(coil.end) })),
  }
}

function piecesOf(text: string): readonly string[] {
  return text
    .split(/[,;\n]/)
    .map((piece) => piece.trim())
    .filter(Boolean)
}

/** A lead by its mark, in any case; where all are T1, T2 … its number alone will do. */
function leadNamed(mark: string, leads: readonly string[]): string | undefined {
  const upper = mark.toUpperCase()
  return (
    leads.find((lead) => lead.toUpperCase() === upper) ??
    (/^\d+$/.test(mark) ? leads.find((lead) => lead.toUpperCase() === `T${mark}`) : undefined)
  )
}

function unknownLead(
  mark: string,
  { leads, path }: { readonly leads: readonly string[]; readonly path: string },
): Problem {
  return { code: 'unknown-lead', path, found: mark, allowed: `one of: ${leads.join(', ')}` }
}
