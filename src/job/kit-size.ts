/**
 * What a size or standard number of a piece tells of it, by the standards that many makes follow.
 *
 * @module
 */

/** A rolling bearing: deep groove, one row, of series 60, 62 or 63. */
export interface BearingSize {
  readonly is: 'bearing'
  readonly boreMm: number
  readonly outsideMm: number
  readonly widthMm: number
  /** As its marks tell; none: the usual clearance, open, no groove. */
  readonly clearance: string
  readonly closed: string
  readonly groove: string
  /** Marks that no list of ours tells. */
  readonly unread: readonly string[]
}

/** A radial shaft seal. */
export interface SealSize {
  readonly is: 'seal'
  readonly shaftMm: number
  readonly housingMm: number
  readonly widthMm: number
}

export interface RingSize {
  readonly is: 'o-ring'
  readonly insideMm: number
  readonly thicknessMm: number
}

/** A V-belt, by the length of its middle. */
export interface BeltSize {
  readonly is: 'belt'
  readonly section: string
  readonly topMm: number
  readonly datumMm: number
  /** Raw-edged and notched. */
  readonly notched: boolean
}

export interface ThreadSize {
  readonly is: 'thread'
  readonly form: 'metric' | 'parallel pipe' | 'tapered pipe' | 'American pipe'
  /** As it is written: M8, 1/2. */
  readonly size: string
  readonly pitchMm: number
  readonly lengthMm?: number
}

export interface HoseSize {
  readonly is: 'hose'
  readonly boreMm: number
}

export interface CapacitorSize {
  readonly is: 'capacitor'
  readonly microfarads: number
  readonly volts?: number
  readonly operation?: string
}

export interface BatterySize {
  readonly is: 'battery'
  readonly volts?: number
  readonly ampereHours?: number
  readonly crankingA?: number
  readonly lengthMm?: number
  readonly widthMm?: number
  readonly heightMm?: number
  readonly positive?: 'left' | 'right'
}

export type PieceSize =
  | BearingSize
  | SealSize
  | RingSize
  | BeltSize
  | ThreadSize
  | HoseSize
  | CapacitorSize
  | BatterySize
