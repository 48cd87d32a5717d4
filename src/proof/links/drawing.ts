/**
 * Joined leads as a drawing: plain shapes, to be put on a screen or on paper by whoever shows them.
 *
 * @module
 */

import { writeJoints, writeOutlets } from './links-text.js'
import { type Joint, joinedWinding } from './solve-links.js'
import type { Coil, Joined, Winding } from './winding.js'

export type LinkShape =
  /** Lines; `cut` is drawn in the paper's own colour, wider, where a line passes over another without a joint. */
  | { readonly is: 'path'; readonly d: string; readonly look: 'line' | 'heavy' | 'cut' }
  /** A lead's end, with its mark in it. */
  | {
      readonly is: 'post'
      readonly x: number
      readonly y: number
      readonly half: number
      readonly text: string
      readonly heavy: boolean
    }
  | { readonly is: 'dot'; readonly x: number; readonly y: number; readonly r: number }
  /** A filled shape, such as the head of an arrow. */
  | { readonly is: 'filled'; readonly d: string }
  | {
      readonly is: 'text'
      readonly x: number
      readonly y: number
      readonly text: string
      readonly anchor: 'start' | 'middle' | 'end'
      readonly bold: boolean
    }

export interface LinkDrawing {
  readonly width: number
  readonly height: number
  /** In a sentence, for who cannot see it. */
  readonly says: string
  readonly shapes: readonly LinkShape[]
}

export interface DrawOptions {
  /** Leads whose joint another drawing does not have, and the word for that. */
  readonly changed?: { readonly leads: ReadonlySet<string>; readonly word: string }
}

const narrowest = 360
/** Of a letter of the names at the right, bold. */
const letterWidth = 8
const postRadius = 15
const laneGap = 27
const rightEdge = 322

/**
 * Coils above and, where there are more than three, below; their leads face the space between. Each joint is one level line with
 * a dot at each lead; a crossing without a dot is no joint, and breaks the line beneath. Lines go out to the right.
 */
export function linkDrawing(winding: Winding, joined: Joined, { changed }: DrawOptions = {}): LinkDrawing {
  const { joints } = joinedWinding(winding, joined, {})
  const perRow = winding.coils.length > 3 ? Math.ceil(winding.coils.length / 2) : winding.coils.length
  const [upper, lower] = rowsOf(winding.coils, perRow)
  const pitch = Math.min(72, 266 / (2 * perRow - 1 + (lower.length > 0 ? 0.5 : 0)))
  const upperY = 98
  const xs = new Map<string, number>()
  const place = (coils: readonly Coil[], offset: number) =>
    coils.forEach(({ start, end }, at) => {
      xs.set(start, 26 + offset + 2 * at * pitch)
      xs.set(end, 26 + offset + (2 * at + 1) * pitch)
    })
  place(upper, 0)
  place(lower, pitch / 2)
  const sensed = (joint: Joint) =>
    joined.sensing.filter(({ lead }) => joint.leads.includes(lead)).map(({ name }) => name)
  const isUpper = (lead: string) => upper.some(({ start, end }) => start === lead || end === lead)
  const rank = ({ leads }: Joint) => leads.filter((lead) => !isUpper(lead)).length / leads.length
  const lanes = joints
    .filter((joint) => joint.leads.length > 1 || joint.lines.length > 0 || sensed(joint).length > 0)
    .sort((a, b) => rank(a) - rank(b))
  const laneY = (at: number) => upperY + postRadius + 24 + at * laneGap
  const lowerY = laneY(lanes.length - 1) + 24 + postRadius
  const yOf = (lead: string) => (isUpper(lead) ? upperY : lowerY)
  const height = lower.length > 0 ? lowerY + 98 : laneY(lanes.length - 1) + 26
  const isChanged = ({ leads }: Joint) => leads.some((lead) => changed?.leads.has(lead))

  const level = lanes.map((joint, at): LinkShape => {
    const out = joint.lines.length + sensed(joint).length > 0
    const places = joint.leads.map((lead) => xs.get(lead)!)
    const to = out ? rightEdge : Math.max(...places)
    return {
      is: 'path',
      d: `M${round(Math.min(...places))} ${laneY(at)}H${round(to)}`,
      look: isChanged(joint) ? 'heavy' : 'line',
    }
  })
  const drops = lanes.flatMap((joint, at) =>
    joint.leads.flatMap((lead): LinkShape[] => {
      const x = round(xs.get(lead)!)
      const from = yOf(lead) + (isUpper(lead) ? postRadius : -postRadius)
      const stop = laneY(at) + (isUpper(lead) ? -4 : 4)
      return [
        { is: 'path', d: `M${x} ${from}V${stop}`, look: 'cut' },
        { is: 'path', d: `M${x} ${from}V${laneY(at)}`, look: isChanged(joint) ? 'heavy' : 'line' },
      ]
    }),
  )
  const dots = lanes.flatMap((joint, at): LinkShape[] =>
    joint.leads.map((lead) => ({
      is: 'dot',
      x: round(xs.get(lead)!),
      y: laneY(at),
      r: joint.leads.length > 1 ? 4 : 2.5,
    })),
  )
  const names = lanes.flatMap((joint, at): LinkShape[] => {
    const says = [...joint.lines, ...sensed(joint)].join(', ')
    const word = isChanged(joint) ? changed!.word : ''
    const first = Math.min(...joint.leads.map((lead) => xs.get(lead)!))
    return [
      ...(says === ''
        ? []
        : [
            { is: 'filled', d: `M${rightEdge} ${laneY(at) - 4}l8 4l-8 4z` } as const,
            text(says, { x: rightEdge + 11, y: laneY(at) + 5, bold: true }),
          ]),
      ...(word === '' ? [] : [text(word, { x: first - 7, y: laneY(at) - 5, anchor: 'end', bold: true })]),
    ]
  })
  const posts = [...xs].map(
    ([lead, x]): LinkShape => ({
      is: 'post',
      x: round(x),
      y: yOf(lead),
      half: Math.min(pitch / 2 - 2, Math.max(postRadius, 4.3 * lead.length)),
      text: lead,
      heavy: changed?.leads.has(lead) ?? false,
    }),
  )
  const longest = Math.max(
    ...lanes.map((joint) => [...joint.lines, ...sensed(joint)].join(', ').length * letterWidth),
  )
  return {
    width: Math.max(narrowest, rightEdge + 11 + longest),
    height,
    says: sayDrawing(winding, joined),
    shapes: [
      ...level,
      ...drops,
      ...dots,
      ...upper.flatMap((coil) => coilShapes(coil, { xs, y: upperY, up: true })),
      ...lower.flatMap((coil) => coilShapes(coil, { xs, y: lowerY, up: false })),
      ...posts,
      ...names,
    ],
  }
}

/** Where each lead stands in a drawing. */
export function placesOf({
  shapes,
}: LinkDrawing): readonly { readonly lead: string; readonly x: number; readonly y: number }[] {
  return shapes.flatMap((shape) =>
    shape.is === 'post' ? [{ lead: shape.text, x: shape.x, y: shape.y }] : [],
  )
}

/** A coil between its two leads, with a dot where it begins and its name. */
function coilShapes(
  { name, start, end }: Coil,
  { xs, y, up }: { readonly xs: ReadonlyMap<string, number>; readonly y: number; readonly up: boolean },
): LinkShape[] {
  const [a, b] = [round(xs.get(start)!), round(xs.get(end)!)]
  const away = up ? -1 : 1
  const top = y + away * 58
  const turns = 4
  const r = Math.min(7, (b - a) / (2 * turns + 1))
  const before = round((b - a - 2 * r * turns) / 2)
  const arcs = Array.from(
    { length: turns },
    () => `a${r} ${round(r * 1.3)} 0 0 ${up ? 1 : 0} ${2 * r} 0`,
  ).join('')
  return [
    {
      is: 'path',
      d: `M${a} ${y + away * postRadius}V${top}h${before}${arcs}H${b}V${y + away * postRadius}`,
      look: 'line',
    },
    { is: 'dot', x: round(a + 7), y: top + (up ? -7 : 7), r: 3 },
    text(name, { x: round((a + b) / 2), y: top + (up ? 22 : -12), anchor: 'middle' }),
  ]
}

function rowsOf(coils: readonly Coil[], perRow: number): readonly [readonly Coil[], readonly Coil[]] {
  if (coils.length <= perRow) return [coils, []]
  // First halves of the phases above, second halves below.
  const firsts = coils.filter(({ degrees }, at) => coils.findIndex((one) => one.degrees === degrees) === at)
  const upper = firsts.length === perRow ? firsts : coils.slice(0, perRow)
  return [upper, coils.filter((coil) => !upper.includes(coil))]
}

function sayDrawing({ coils }: Winding, { joints, lines }: Joined): string {
  const between = coils.map(({ name, start, end }) => `${name} from ${start} to ${end}`).join(', ')
  const joined = joints.length === 0 ? 'nothing joined' : `joined ${writeJoints(joints)}`
  return `Coils ${between}; ${joined}; out ${lines.length === 0 ? 'nothing' : writeOutlets(lines)}`
}

export function text(
  says: string,
  at: {
    readonly x: number
    readonly y: number
    readonly anchor?: 'start' | 'middle' | 'end'
    readonly bold?: boolean
  },
): LinkShape {
  return { is: 'text', text: says, anchor: 'start', bold: false, ...at }
}

export function round(value: number): number {
  return Math.round(value * 10) / 10
}
