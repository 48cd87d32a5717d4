/**
 * The coils added up as arrows: where each lead stands above the others.
 *
 * @module
 */

import { type Complex, minus, plus, scaled, sizeOf } from './complex.js'
import { type LinkDrawing, type LinkShape, round, text } from './drawing.js'
import { joinedWinding, jointOf, nameOfJoint } from './solve-links.js'
import type { CoilValues, Joined, Winding } from './winding.js'

const width = 360
const sides = 58

/**
 * Each coil an arrow of its EMF, from its end to its start, where its ends stand with nothing switched on; points where lines
 * go out bear their names. Arrows that lie on one another are set apart. `longest` is the length of one coil's arrow at most, so
 * that two drawings may have one scale. [px]
 */
export function phasorDrawing(
  winding: Winding,
  joined: Joined,
  { values = {}, longest = 96 }: { readonly values?: CoilValues; readonly longest?: number } = {},
): LinkDrawing {
  const of = joinedWinding(winding, joined, values)
  const { joints, branches, solved, emf } = of
  const outNodes = joined.lines.map(({ lead }) => jointOf(joints, lead))
  const part = largestPart(outNodes.map((node) => solved.parts[node]!))
  const shown = branches
    .map((branch, at) => ({ branch, at }))
    .filter(({ branch }) => part === undefined || solved.parts[branch.from] === part)
  const points = shown.flatMap(({ branch: { to, emf: own } }) => [
    solved.volts[to]!,
    plus(solved.volts[to]!, own),
  ])
  const spread = (pick: (point: Complex) => number) => {
    const all = points.map(pick)
    return { low: Math.min(...all, 0), high: Math.max(...all, 0) }
  }
  const [across, up] = [spread(({ re }) => re), spread(({ im }) => im)]
  const scale = Math.min(longest / emf, (width - 2 * sides) / Math.max(across.high - across.low, emf * 0.01))
  const top = 30
  const left = (width - (across.high - across.low) * scale) / 2
  const place = ({ re, im }: Complex) => ({
    x: left + (re - across.low) * scale,
    y: top + (up.high - im) * scale,
  })
  const laid: { readonly from: Complex; readonly to: Complex }[] = []
  const arrows = shown.flatMap(({ branch, at }): LinkShape[] => {
    const from = solved.volts[branch.to]!
    const to = plus(from, branch.emf)
    const before = laid.filter((other) => liesOn(other, { from, to }, emf)).length
    laid.push({ from, to })
    return arrow(place(from), place(to), { name: winding.coils[at]!.name, aside: before })
  })
  const outs = [...new Set(outNodes)].filter((node) => solved.parts[node] === part)
  const middle = scaled(points.reduce(plus, { re: 0, im: 0 }), 1 / Math.max(1, points.length))
  const names = outs.flatMap((node, at): LinkShape[] => {
    const here = solved.volts[node]!
    const alike = outs.filter((other) => sizeOf(minus(solved.volts[other]!, here)) < emf * 0.02)
    if (alike[0] !== outs[at]) return []
    const { x, y } = place(here)
    const outward = minus(here, middle)
    const size = sizeOf(outward)
    const [dx, dy] = size < emf * 0.05 ? [0, 1] : [outward.re / size, -outward.im / size]
    const anchor = dx > 0.4 ? 'start' : dx < -0.4 ? 'end' : 'middle'
    const says = alike.map((other) => nameOfJoint(joints[other]!)).join(', ')
    return [text(says, { x: round(x + 12 * dx), y: round(y + 5 + 18 * dy), anchor, bold: true })]
  })
  return {
    width,
    height: Math.round(top + (up.high - up.low) * scale + 34),
    says: `The coils as arrows: ${shown.map(({ at }) => winding.coils[at]!.name).join(', ')}`,
    shapes: [
      ...arrows,
      ...outs.map((node): LinkShape => ({ is: 'dot', ...rounded(place(solved.volts[node]!)), r: 4 })),
      ...names,
    ],
  }
}

/** The connected part from which most lines go out: parts that nothing connects stand nowhere above one another. */
function largestPart(parts: readonly number[]): number | undefined {
  const count = (part: number) => parts.filter((other) => other === part).length
  return [...parts].sort((a, b) => count(b) - count(a))[0]
}

/** Whether two arrows would be drawn over one another. */
function liesOn(
  one: { readonly from: Complex; readonly to: Complex },
  other: { readonly from: Complex; readonly to: Complex },
  emf: number,
): boolean {
  const middle = ({ from, to }: typeof one) => scaled(plus(from, to), 0.5)
  return sizeOf(minus(middle(one), middle(other))) < emf * 0.05
}

function arrow(
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  { name, aside }: { readonly name: string; readonly aside: number },
): LinkShape[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [dx / length, dy / length]
  const [ox, oy] = [-uy * aside * 14, ux * aside * 14]
  const a = { x: from.x + ox + ux * 3, y: from.y + oy + uy * 3 }
  const b = { x: to.x + ox - ux * 3, y: to.y + oy - uy * 3 }
  const neck = { x: b.x - ux * 10, y: b.y - uy * 10 }
  const wing = { x: -uy * 4.5, y: ux * 4.5 }
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
  const side = aside === 0 ? -1 : 1
  return [
    { is: 'path', d: `M${round(a.x)} ${round(a.y)}L${round(neck.x)} ${round(neck.y)}`, look: 'line' },
    {
      is: 'filled',
      d: `M${round(b.x)} ${round(b.y)}L${round(neck.x + wing.x)} ${round(neck.y + wing.y)}L${round(neck.x - wing.x)} ${round(neck.y - wing.y)}z`,
    },
    text(name, {
      x: round(middle.x - uy * 13 * side),
      y: round(middle.y + ux * 13 * side + 5),
      anchor: 'middle',
    }),
  ]
}

function rounded({ x, y }: { readonly x: number; readonly y: number }) {
  return { x: round(x), y: round(y) }
}
