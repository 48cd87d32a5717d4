/**
 * An alternator's winding as coils whose ends are brought out.
 *
 * @module
 */

/** One coil, or one half of a phase: its start stands above its end by its EMF. */
export interface Coil {
  readonly name: string
  /** Mark of the lead at its start, and of that at its end. */
  readonly start: string
  readonly end: string
  /** By which its EMF is ahead of the first phase's. [°] */
  readonly degrees: number
}

export interface Winding {
  readonly coils: readonly Coil[]
}

/** What is known of each coil, all being alike. */
export interface CoilValues {
  /** EMF of one coil. Left out: 1, and volts are multiples of it. [V] */
  readonly emfV?: number
  /** [Ω] */
  readonly resistanceOhm?: number
  /** [Ω] */
  readonly reactanceOhm?: number
  /** What one coil may carry for ever. Left out: 1, and amps are multiples of it. [A] */
  readonly amps?: number
}

/** A lead that goes out under a name: a line, the neutral, or a lead of the regulator. */
export interface Outlet {
  readonly name: string
  readonly lead: string
}

/** How the leads are joined, which of them go out, and where the regulator looks. */
export interface Joined {
  /** Leads that are joined to one another; those named nowhere are alone. */
  readonly joints: readonly (readonly string[])[]
  readonly lines: readonly Outlet[]
  readonly sensing: readonly Outlet[]
}

/** Marks of all leads, starts and ends, as they are counted: T1, T2, T3 … */
export function leadsOf({ coils }: Winding): readonly string[] {
  const marks = [...coils.map(({ start }) => start), ...coils.map(({ end }) => end)]
  return marks.sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
}
