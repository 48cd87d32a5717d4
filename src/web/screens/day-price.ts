/**
 * What one more day without power costs, for pages: the module that the workers have it in brings the simulator with it.
 *
 * @module
 */

import type { LifeModel } from '../../forecast/life-model.js'

/** The last slope of the price of being without power. */
export function dayPriceOf({ powerLoss }: Pick<LifeModel, 'powerLoss'>): number {
  const { days, cost } = powerLoss.curve.at(-1)!
  const before = powerLoss.curve.at(-2) ?? { days: 0, cost: 0 }
  return days > before.days ? (cost - before.cost) / (days - before.days) : 0
}
