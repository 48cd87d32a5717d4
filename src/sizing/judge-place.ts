import { fuelLitresPerHour } from '../catalogue/whole-set.js'
import type { SpaceFacts } from '../register/load-facts.js'
import { alternatorEfficiency } from './alternator-rating.js'
import { sweptLitresOf } from './engine-size.js'
import {
  columnKPa,
  combustionM3PerHour,
  coolingM3PerHour,
  liftM,
  openingCm2,
  seaWater,
} from './heat-and-air.js'
import { coolantLitresPerMinute, exchangerLitresPerMinute } from './judge-heat.js'
import type { PlaceBook } from './judged-set.js'
import { levelAt, levelTogether, levelWithout } from './noise.js'
import { tightest } from './passage.js'
import { type CheckId, measured, type SizeCheck } from './size-check.js'
import type { SizedSet } from './sized-set.js'

/** Everything about the place that can be told. */
export function judgePlace(
  book: PlaceBook,
  { set, space }: { readonly set: SizedSet; readonly space: SpaceFacts },
): SizeCheck[] {
  return [
    rawWater(book, set, space),
    exhaustHose(book, set, space),
    exhaustLift(book, set, space),
    ventilation(book, set, space),
    engineSpace(book, space),
    ...noise(set, space),
    ...wayOut(set, space),
  ]
}

/** What must be at least so much. */
function atLeast(check: CheckId, found: number | undefined, limit: number, unit: string): SizeCheck {
  if (found === undefined) return { check, verdict: 'cannot-tell', limit, unit }
  return {
    check,
    verdict: found >= limit - 1e-9 ? 'passes' : 'fails',
    found,
    limit,
    unit,
    by: limit / found - 1,
  }
}

function atMost(check: CheckId, found: number | undefined, limit: number, unit: string): SizeCheck {
  return found === undefined
    ? { check, verdict: 'cannot-tell', limit, unit }
    : measured(check, found, limit, unit)
}

function insideFor(
  rows: readonly { readonly upToKW: number; readonly insideMm: number }[],
  ratingKW: number,
): number {
  return (rows.find(({ upToKW }) => ratingKW <= upToKW) ?? rows.at(-1)!).insideMm
}

/** Hose for the sea water that a set of this size is cooled and its exhaust wetted with. */
function rawWater(book: PlaceBook, { ratingKW }: SizedSet, { rawWaterHoseMm }: SpaceFacts): SizeCheck {
  const sea = Math.round(exchangerLitresPerMinute(book, ratingKW))
  const coolant = Math.round(coolantLitresPerMinute(book, ratingKW))
  return {
    ...atLeast('raw-water', rawWaterHoseMm, insideFor(book.wholeSet.seaWater.hose, ratingKW), 'mm'),
    about: `${sea} l/min of sea water and ${coolant} of coolant`,
    limitPath: 'wholeSet.seaWater.hose',
  }
}

function exhaustHose(
  { wholeSet }: PlaceBook,
  { ratingKW }: SizedSet,
  { exhaustHoseMm }: SpaceFacts,
): SizeCheck {
  return {
    ...atLeast('exhaust-hose', exhaustHoseMm, insideFor(wholeSet.exhaust.hose, ratingKW), 'mm'),
    limitPath: 'wholeSet.exhaust.hose',
  }
}

/** A full column of sea water as high as the exhaust lifts, against the back pressure that the engine bears. */
function exhaustLift(
  { sizing }: PlaceBook,
  { aspiration }: SizedSet,
  { exhaustRiseMm }: SpaceFacts,
): SizeCheck {
  const natural = aspiration === 'natural' || aspiration === 'natural-thermal'
  const limit = natural ? sizing.exhaust.naturalKPa : sizing.exhaust.turboKPa
  const found =
    exhaustRiseMm === undefined ? undefined : columnKPa(seaWater(sizing.water), exhaustRiseMm / 1000)
  const limitPath = natural ? 'sizing.exhaust.naturalKPa' : 'sizing.exhaust.turboKPa'
  const mostM = liftM(seaWater(sizing.water), limit)
  return { ...atMost('exhaust-lift', found, limit, 'kPa'), about: `at most ${mostM.toFixed(2)} m`, limitPath }
}

/** Openings for the air that the engine burns and that carries its heat out. */
function ventilation({ sizing, wholeSet }: PlaceBook, set: SizedSet, { ventCm2 }: SpaceFacts): SizeCheck {
  const { volumetricEfficiency, riseK, openingMPerS } = sizing.ventilation
  const { radiationShare, fuelKWhPerLitre } = sizing.heat
  const efficiency = alternatorEfficiency(sizing.alternator, set.ratingKW)
  const litres = fuelLitresPerHour(wholeSet, {
    ratingKW: set.ratingKW,
    loadKW: set.ratingKW,
    condition: 'healthy',
  })
  const heatKW = radiationShare * litres * fuelKWhPerLitre + set.ratingKW * (1 / efficiency - 1)
  const m3PerHour =
    combustionM3PerHour({ sweptLitres: sweptLitresOf(sizing, set), rpm: set.rpm, volumetricEfficiency }) +
    coolingM3PerHour({ heatKW, riseK })
  const check = atLeast(
    'ventilation',
    ventCm2,
    openingCm2({ m3PerHour, metresPerSecond: openingMPerS }),
    'cm²',
  )
  return {
    ...check,
    limitPath: 'sizing.ventilation.openingMPerS',
    ...(set.sweptLitres === undefined ? { usual: ['sweptLitres'] } : {}),
  }
}

function engineSpace({ sizing }: PlaceBook, { engineSpaceC }: SpaceFacts): SizeCheck {
  const limitPath = 'sizing.ventilation.engineSpaceMostC'
  return { ...atMost('engine-space', engineSpaceC, sizing.ventilation.engineSpaceMostC, '°C'), limitPath }
}

/** A place that must be quiet is as far away, where nobody says. [m] Practice: the next boat. */
const usualQuietM = 7

/** The set alone where it must be quiet, against what is left for it beside what is there. Asked only where quiet is wanted. */
function noise(
  { noise: told }: SizedSet,
  { quietDb, quietAtM = usualQuietM, backgroundDb }: SpaceFacts,
): SizeCheck[] {
  if (quietDb === undefined) return []
  const left =
    backgroundDb === undefined ? quietDb : levelWithout({ together: quietDb, background: backgroundDb })
  if (left === undefined) {
    return [{ check: 'noise', verdict: 'cannot-tell', unit: 'dB', about: 'as loud without any set' }]
  }
  if (told === undefined) return [{ check: 'noise', verdict: 'cannot-tell', limit: left, unit: 'dB' }]
  const found = levelAt(told, quietAtM)
  const heard = levelTogether([found, ...(backgroundDb === undefined ? [] : [backgroundDb])])
  const verdict = found <= left ? 'passes' : 'fails'
  const about = `${quietAtM} m away; ${heard.toFixed(0)} dB in all`
  return [{ check: 'noise', verdict, found, limit: left, unit: 'dB', about }]
}

/** The largest piece against every opening, and its weight against what can be lifted. */
function wayOut(set: SizedSet, { wayOut: openings, liftKg }: SpaceFacts): SizeCheck[] {
  const edges = set.piece?.edges ?? set.edges
  const weight = set.piece?.weightKg ?? set.weightKg
  const unknown = set.piece === undefined && set.usual.includes('edges')
  const narrow = tightest(edges, openings ?? [])
  const passage: SizeCheck =
    narrow === undefined
      ? { check: 'way-out', verdict: 'cannot-tell', unit: 'mm' }
      : {
          check: 'way-out',
          // A usual size that is too large says nothing of a set that may come apart.
          verdict: narrow.overMm <= 0 ? 'passes' : unknown ? 'cannot-tell' : 'fails',
          found: Math.round(narrow.overMm),
          limit: 0,
          unit: 'mm',
          about: narrow.opening.name ?? `${narrow.opening.widthMm} × ${narrow.opening.heightMm} mm`,
          ...(unknown ? { usual: ['edges'] } : {}),
        }
  return [passage, atMost('lift', liftKg === undefined ? undefined : weight, liftKg ?? weight, 'kg')]
}
