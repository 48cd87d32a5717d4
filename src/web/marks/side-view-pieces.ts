/**
 * The pieces a set's side view is assembled from, for the number of cylinders, the length of its alternator and what is fitted.
 *
 * Seen from the service side: front of the engine at the left, alternator at the right. Lengths in units of the drawing.
 *
 * @module
 */

/** What of a set bears on how it is drawn. */
export interface Layout {
  readonly ratingKw: number
  readonly rpm: number
  readonly bearings: 1 | 2
  /** With a capacitor or a transformer there is no regulator: its box hangs at the side. */
  readonly regulator: boolean
}

export interface Piece {
  readonly id: string
  /** Parts of the catalogue that it stands for. */
  readonly parts: readonly string[]
  /** Path data. */
  readonly shape: string
  /** Lines upon it, that carry no meaning of their own. */
  readonly lines?: string
}

/** Where the ring of a way in stands, in hundredths of the drawing. */
export interface Ring {
  readonly access: string
  readonly x: number
  readonly y: number
}

export const viewWidth = 1000
export const viewHeight = 430

export function cylindersOf(ratingKw: number): number {
  return ratingKw < 4.5 ? 1 : ratingKw < 9 ? 2 : ratingKw < 16 ? 3 : 4
}

/** The pieces of a set, back to front. */
export function piecesOf(layout: Layout): readonly Piece[] {
  const cylinders = cylindersOf(layout.ratingKw)
  const blockWidth = 120 + 52 * cylinders
  const alternatorLength = Math.min(210, (110 + 5 * layout.ratingKw) * (layout.rpm >= 2800 ? 0.85 : 1))
  const gap = layout.bearings === 2 ? 26 : 0
  const left = 500 - (blockWidth + 34 + gap + alternatorLength) / 2
  const block = { x: left, y: 190, w: blockWidth, h: 110 }
  const wheel = { x: block.x + block.w, y: 165, w: 34, h: 150 }
  const end = { x: wheel.x + wheel.w + gap, y: 182, w: alternatorLength, h: 128 }
  return [
    ...caseAround({ left: block.x, right: end.x + end.w }),
    ...base({ left: block.x - 20, right: end.x + end.w + 10 }),
    ...engine(block, cylinders),
    ...topOf(block),
    ...frontOf(block),
    ...seaSide(block),
    ...sideOf(block, cylinders),
    {
      id: 'drive',
      parts: ['drive-plate', 'rear-crank-seal'],
      shape: box(wheel),
      ...(gap > 0 ? { lines: `M${wheel.x + wheel.w} 240h${gap}M${wheel.x + wheel.w} 252h${gap}` } : {}),
    },
    ...alternator(end, layout),
    ...boatSide({ left: block.x, right: end.x + end.w }),
  ]
}

interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

function box({ x, y, w, h }: Box): string {
  return `M${x} ${y}h${w}v${h}h${-w}z`
}

/** A box with round ends. */
function drum({ x, y, w, h }: Box): string {
  const r = h / 2
  return `M${x + r} ${y}h${w - h}a${r} ${r} 0 0 1 0 ${h}h${h - w}a${r} ${r} 0 0 1 0 ${-h}z`
}

function disc(at: { readonly x: number; readonly y: number }, r: number): string {
  return `M${at.x - r} ${at.y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`
}

interface Sides {
  readonly left: number
  readonly right: number
}

function caseAround({ left, right }: Sides): Piece[] {
  return [
    { id: 'case', parts: ['sound-case'], shape: box({ x: left - 84, y: 62, w: right - left + 138, h: 302 }) },
  ]
}

function base({ left, right }: Sides): Piece[] {
  const foot = (x: number) => `M${x} 330l12 -22h26l12 22z`
  return [
    {
      id: 'mounts',
      parts: ['mounts'],
      shape: [left + 26, (left + right) / 2 - 30, right - 90].map(foot).join(''),
    },
    { id: 'frame', parts: ['base-frame'], shape: box({ x: left, y: 330, w: right - left, h: 12 }) },
  ]
}

function engine(block: Box, cylinders: number): Piece[] {
  const { x, y, w, h } = block
  const each = (w - 30) / cylinders
  const bores = Array.from({ length: cylinders }, (_, i) => x + 15 + (i + 0.5) * each)
  return [
    {
      id: 'sump',
      parts: ['oil-and-filter', 'oil-pump-and-lines'],
      shape: `M${x + 8} ${y + h}h${w - 16}l-14 26h${44 - w}z`,
    },
    {
      id: 'block',
      parts: ['pistons-and-bores', 'crank-and-bearings'],
      shape: box(block),
      lines: bores
        .map((at) => `M${at - 12} ${y + 10}v44M${at + 12} ${y + 10}v44M${at - 12} ${y + 30}h24`)
        .join(''),
    },
    { id: 'head', parts: ['head-and-gasket'], shape: box({ x: x + 4, y: y - 26, w: w - 8, h: 26 }) },
    {
      id: 'rocker',
      parts: ['valve-gear'],
      shape: `M${x + 12} ${y - 26}v-14q0 -6 6 -6h${w - 36}q6 0 6 6v14z`,
    },
    {
      id: 'injectors',
      parts: ['injectors', 'preheat'],
      shape: bores.map((at) => box({ x: at - 5, y: y - 60, w: 10, h: 20 })).join(''),
    },
  ]
}

function topOf({ x, y, w }: Box): Piece[] {
  const top = y - 104
  const right = x + w
  return [
    {
      id: 'exchanger',
      parts: ['exchanger-tubes'],
      shape: drum({ x: x + 4, y: top, w: w * 0.62, h: 32 }),
      lines: `M${x + 34} ${top + 10}h${w * 0.62 - 60}M${x + 34} ${top + 22}h${w * 0.62 - 60}`,
    },
    {
      id: 'exchanger-ends',
      parts: ['exchanger-ends', 'anode'],
      shape: `M${x - 6} ${top + 2}h14v28h-14z`,
    },
    {
      id: 'header',
      parts: ['header-tank', 'coolant'],
      shape: `M${x + 40} ${top}v-12h34v12z`,
    },
    {
      id: 'hoses',
      parts: ['coolant-hoses'],
      shape: `M${x + w * 0.62} ${top + 8}q26 -6 30 18t22 22v10q-30 -2 -34 -26t-18 -14z`,
    },
    {
      id: 'manifold',
      parts: ['exhaust-manifold'],
      shape: drum({ x: x + w * 0.42, y: y - 70, w: w * 0.52, h: 20 }),
    },
    {
      id: 'elbow',
      parts: ['exhaust-elbow'],
      shape: `M${right - 18} ${y - 66}v-30q0 -26 27 -26t27 26v34h-20v-30q0 -9 -7 -9t-7 9v26z`,
    },
    {
      id: 'exhaust-hose',
      parts: ['exhaust-hose'],
      shape: `M${right + 16} ${y - 62}h20v188q0 12 12 12h320v18H${right + 44}q-28 0 -28 -28z`,
    },
    {
      id: 'intake',
      parts: ['air-intake'],
      shape: drum({ x: x + w * 0.68, y: y - 96, w: 44, h: 24 }),
    },
  ]
}

function frontOf({ x, y, h }: Box): Piece[] {
  return [
    {
      id: 'belt',
      parts: ['drive-belt', 'pulleys-and-guard', 'front-crank-seal'],
      shape: `M${x - 34} ${y + 4}a14 14 0 0 1 28 0l12 66a24 24 0 1 1 -48 0z`,
    },
    { id: 'coolant-pump', parts: ['coolant-pump'], shape: disc({ x: x - 20, y: y + 6 }, 12) },
    {
      id: 'thermostat',
      parts: ['thermostat', 'thermostat-housing'],
      shape: `M${x - 4} ${y - 34}h22v-16h-14q-8 0 -8 8z`,
    },
    { id: 'crank-pulley', parts: [], shape: disc({ x: x - 18, y: y + h - 36 }, 15) },
  ]
}

function seaSide({ x, y, h }: Box): Piece[] {
  return [
    {
      id: 'sea-pump',
      parts: ['sea-pump-body', 'sea-pump-seal', 'sea-pump-bearing'],
      shape: disc({ x: x - 56, y: y + h - 22 }, 22),
    },
    { id: 'impeller', parts: ['sea-pump-impeller'], shape: disc({ x: x - 56, y: y + h - 22 }, 11) },
    {
      id: 'sea-hoses',
      parts: ['sea-water-hoses'],
      shape: `M${x - 62} ${y + h - 44}v-128q0 -14 16 -14h40v10h-34q-10 0 -10 10v122z`,
    },
  ]
}

function sideOf({ x, y, w, h }: Box, cylinders: number): Piece[] {
  const middle = y + h - 44
  return [
    {
      id: 'injection',
      parts: ['injection-pump', 'governor', 'fuel-solenoid'],
      shape: box({ x: x + 20, y: middle - 6, w: 46, h: 26 }),
    },
    {
      id: 'fuel-pipes',
      parts: ['fuel-pipes'],
      shape: `M${x + 26} ${middle - 6}v-34h4v34zM${x + 40} ${middle - 6}v-34h4v34z${cylinders > 2 ? `M${x + 54} ${middle - 6}v-34h4v34z` : ''}`,
    },
    { id: 'lift-pump', parts: ['lift-pump'], shape: disc({ x: x + 84, y: middle + 22 }, 11) },
    {
      id: 'trips',
      parts: ['oil-pressure-trip', 'coolant-heat-trip', 'exhaust-heat-trip', 'sea-flow-trip'],
      shape: `M${x + 106} ${middle + 6}h16v18h-16z`,
    },
    {
      id: 'starter',
      parts: ['starter'],
      shape: drum({ x: x + w - 72, y: y + h - 30, w: 70, h: 24 }),
    },
    {
      id: 'charging',
      parts: ['battery-charging'],
      shape: disc({ x: x + 2, y: y + 22 }, 15),
    },
    {
      id: 'wiring',
      parts: ['engine-wiring'],
      shape: `M${x + 70} ${y + 66}h${w - 90}v5h${90 - w}z`,
    },
  ]
}

function alternator(end: Box, { regulator, bearings }: Layout): Piece[] {
  const { x, y, w, h } = end
  const right = x + w
  return [
    {
      id: 'stator',
      parts: ['stator-winding'],
      shape: `M${x + 6} ${y}h${w - 12}q6 0 6 6v${h - 12}q0 6 -6 6h${12 - w}q-6 0 -6 -6v${12 - h}q0 -6 6 -6z`,
    },
    {
      id: 'rotor',
      parts: ['rotor-winding', 'slip-rings'],
      shape: box({ x: x + 14, y: y + h / 2 - 22, w: w - 40, h: 44 }),
    },
    ...(bearings === 2
      ? [
          {
            id: 'drive-bearing',
            parts: ['drive-end-bearing'],
            shape: box({ x: x + 2, y: y + h / 2 - 15, w: 10, h: 30 }),
          },
        ]
      : []),
    {
      id: 'exciter',
      parts: ['exciter', 'rotor-diodes'],
      shape: box({ x: right - 24, y: y + h / 2 - 28, w: 16, h: 56 }),
    },
    {
      id: 'end-bell',
      parts: ['alternator-fan'],
      shape: `M${right} ${y + 12}q26 6 26 ${h / 2 - 12}t-26 ${h / 2 - 12}z`,
      lines: `M${right + 8} ${y + 36}v${h - 72}M${right + 15} ${y + 44}v${h - 88}`,
    },
    { id: 'end-bearing', parts: ['outboard-bearing'], shape: disc({ x: right + 12, y: y + h / 2 }, 10) },
    {
      id: 'box',
      parts: ['terminal-block', 'meters', 'output-breaker', 'control-board'],
      shape: box({ x: x + 24, y: y - 64, w: Math.max(86, w - 70), h: 56 }),
    },
    regulator
      ? {
          id: 'regulator',
          parts: ['voltage-regulator'],
          shape: box({ x: x + 34, y: y - 54, w: 36, h: 34 }),
        }
      : {
          id: 'capacitor',
          parts: ['excitation-capacitor', 'compounding-transformer'],
          shape: drum({ x: x + 32, y: y - 48, w: 52, h: 24 }),
        },
  ]
}

function boatSide({ left, right }: Sides): Piece[] {
  const far = right + 72
  return [
    { id: 'strainer', parts: ['sea-strainer'], shape: drum({ x: left - 190, y: 236, w: 58, h: 40 }) },
    {
      id: 'seacock',
      parts: ['seacock'],
      shape: `M${left - 176} 300h30v34h-30zM${left - 161} 300v-16h-1v16z`,
    },
    {
      id: 'siphon',
      parts: ['siphon-break'],
      shape: `M${left - 150} 130q0 -26 18 -26t18 26v34h-12v-34q0 -10 -6 -10t-6 10v34h-12z`,
    },
    {
      id: 'fuel-filters',
      parts: ['fuel-filters', 'fuel-tank'],
      shape: `M${left - 210} 156h40v44q0 8 -8 8h-24q-8 0 -8 -8z`,
    },
    { id: 'water-lift', parts: ['water-lift'], shape: drum({ x: far + 6, y: 286, w: 74, h: 50 }) },
    {
      id: 'board',
      parts: [
        'changeover-switch',
        'residual-current-device',
        'galvanic-isolator',
        'shore-inlet',
        'neutral-bond-relay',
      ],
      shape: box({ x: far + 14, y: 96, w: 70, h: 76 }),
    },
    {
      id: 'cables',
      parts: ['output-cables'],
      shape: `M${right - 40} 150h${far - right + 54}v6h${right - far - 54}z`,
    },
    {
      id: 'battery',
      parts: ['start-battery', 'battery-cables'],
      shape: `M${far + 8} 214h64v40h-64zM${far + 18} 208h10v6h-10zM${far + 52} 208h10v6h-10z`,
    },
    { id: 'alarm', parts: ['co-alarm', 'fire-interlock'], shape: disc({ x: far + 48, y: 60 }, 14) },
  ]
}

/** Where the rings stand, for those ways in that a set has. */
export function ringsOf(layout: Layout): readonly Ring[] {
  const cylinders = cylindersOf(layout.ratingKw)
  const blockWidth = 120 + 52 * cylinders
  const alternatorLength = Math.min(210, (110 + 5 * layout.ratingKw) * (layout.rpm >= 2800 ? 0.85 : 1))
  const gap = layout.bearings === 2 ? 26 : 0
  const left = 500 - (blockWidth + 34 + gap + alternatorLength) / 2
  const right = left + blockWidth + 34 + gap + alternatorLength
  const hundred = (x: number) => (100 * x) / viewWidth
  const wheel = left + blockWidth
  return [
    { access: 'panels-off', x: hundred(left - 84), y: 14 },
    { access: 'exchanger-side', x: hundred(left + blockWidth * 0.22), y: 9 },
    { access: 'top-end', x: hundred(left + blockWidth * 0.62), y: 7 },
    { access: 'exhaust-side', x: hundred(wheel + 18), y: 10 },
    { access: 'terminal-box', x: hundred((wheel + right) / 2 + 40), y: 18 },
    { access: 'front-end', x: hundred(left - 84), y: 44 },
    { access: 'sea-water-side', x: hundred(left - 84), y: 74 },
    { access: 'fuel-side', x: hundred(left + blockWidth * 0.2), y: 90 },
    { access: 'sump-off', x: hundred(left + blockWidth * 0.56), y: 90 },
    { access: 'starting-side', x: hundred(wheel - 4), y: 90 },
    { access: 'set-out', x: hundred(wheel + 74), y: 90 },
    { access: 'alternator-apart', x: hundred(right - 8), y: 90 },
    { access: 'alternator-end', x: hundred(right + 54), y: 56 },
    { access: 'boat-side', x: hundred(Math.max(24, left - 240)), y: 26 },
  ]
}
