/**
 * Steps of taking apart and of putting back, in a line of words.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'

/** "3. End cover off; leads F1 (white sleeve), F2; bag "end cover": 6, M6 x 20" */
export function sayApartStep({ n, what, leads = [], joined = [], bag, torque }: Body<'apart-step'>): string {
  return [
    `${n}. ${what}`,
    ...(leads.length === 0
      ? []
      : [`leads ${leads.map(({ lead, label }) => `${lead} (${label})`).join(', ')}`]),
    ...(joined.length === 0 ? [] : [`joined ${joined.join(', ')}`]),
    ...(bag === undefined ? [] : [sayBag(bag)]),
    ...(torque === undefined ? [] : [`${torque.nm} N·m (${torque.source})`]),
  ].join('; ')
}

/** 'bag "end cover": 6, M6 x 20' */
export function sayBag({ label, count, size }: NonNullable<Body<'apart-step'>['bag']>): string {
  const held = [count, size].filter((one) => one !== undefined)
  return `bag "${label}"${held.length === 0 ? '' : `: ${held.join(', ')}`}`
}

export function sayRefitStep({ torqueNm, differs }: Body<'refit-step'>): string {
  return [
    'put back',
    ...(torqueNm === undefined ? [] : [`tightened to ${torqueNm} N·m`]),
    ...(differs === undefined ? [] : [`otherwise than found: ${differs}`]),
  ].join('; ')
}
