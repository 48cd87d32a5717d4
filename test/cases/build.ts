/**
 * Short ways of writing the life models of the cases.
 *
 * @module
 */

import type { LifeModelInput } from '../../src/forecast/life-model.js'

/** A set in use all the time. [h] */
export const hoursAYear = 8766

export type PartInput = LifeModelInput['parts'][number]
export type ModeInput = PartInput['modes'][number]

/** One part with one mode `fails`, mended at a price. */
export function part(
  id: string,
  mode: Omit<ModeInput, 'id'>,
  price: number,
  more: Partial<PartInput> = {},
): PartInput {
  return { id, repair: { price }, modes: [{ id: 'fails', ...mode }], ...more }
}

/** A target of damage that does not wear out by itself within any horizon here. */
export function lasting(id: string, price: number): PartInput {
  return part(id, { clock: 'hours', shape: 20, scale: 1e9 }, price)
}

export function model(fields: Omit<LifeModelInput, 'type' | 'version'>): LifeModelInput {
  return { type: 'gensettle/life-model', version: 1, ...fields }
}
