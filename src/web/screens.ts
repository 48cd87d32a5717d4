/**
 * The screens by their page, each fetched when it is first gone to. A page that is not listed here is linked from nowhere.
 *
 * @module
 */

import { type ComponentType, lazy } from 'react'
import type { OfSet } from './of-set.js'

export type { OfSet }

export interface WriteEntryProps extends OfSet {
  /** Written, or left for now. */
  readonly onDone: () => void
}

export interface Screens {
  boats?: ComponentType
  new?: ComponentType
  logbook?: ComponentType<OfSet>
  set?: ComponentType<OfSet>
  forecast?: ComponentType<OfSet>
  alternatives?: ComponentType<OfSet>
  brief?: ComponentType<OfSet>
  settings?: ComponentType<OfSet>
  'looking-back'?: ComponentType<OfSet>
  /** The form for an entry, shown above whatever page is open. */
  writeEntry?: ComponentType<WriteEntryProps>
}

export const screens: Screens = {
  boats: screen(() => import('./screens/boats.js'), 'BoatsScreen'),
  new: screen(() => import('./screens/new-boat.js'), 'NewBoatScreen'),
  settings: screen(() => import('./screens/settings.js'), 'SettingsScreen'),
  logbook: screen(() => import('./screens/logbook.js'), 'LogbookScreen'),
  writeEntry: screen(() => import('./screens/write-entry.js'), 'WriteEntry'),
  set: screen(() => import('./screens/set.js'), 'SetScreen'),
  forecast: screen(() => import('./screens/forecast.js'), 'ForecastScreen'),
  alternatives: screen(() => import('./screens/alternatives.js'), 'AlternativesScreen'),
  brief: screen(() => import('./screens/brief.js'), 'BriefScreen'),
  'looking-back': screen(() => import('./screens/looking-back.js'), 'LookingBackScreen'),
}

/** A screen of a file, by its name: `screen(() => import('./screens/set.js'), 'SetScreen')`. */
export function screen<Name extends string, Props>(
  load: () => Promise<Record<Name, ComponentType<Props>>>,
  name: Name,
): ComponentType<Props> {
  return lazy(async () => ({
    default: (await load())[name] as ComponentType<unknown>,
  })) as unknown as ComponentType<Props>
}
