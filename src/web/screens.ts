/**
 * The screens by their page, each fetched when it is first gone to.
 *
 * @module
 */

import { type ComponentType, lazy } from 'react'
import { screenFiles } from './screen-files.js'

type Files = typeof screenFiles
export type Screens = { readonly [Page in keyof Files]: Awaited<ReturnType<Files[Page]>> }

export const screens = Object.fromEntries(
  Object.entries(screenFiles).map(([page, load]) => [
    page,
    lazy(async () => ({ default: (await load()) as ComponentType<unknown> })),
  ]),
) as unknown as Screens
