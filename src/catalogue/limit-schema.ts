/**
 * Form of the limits that tests are judged by.
 *
 * @module
 */

import * as z from 'zod'

/** One number that parts good from bad. Its `from` says where it comes from and how it is held. */
export const limitSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens'),
  /** What it limits, so that it can stand beside a figure. */
  name: z.string().min(1),
  unit: z.string().min(1),
  value: z.number(),
})

export type CatalogueLimit = Readonly<z.infer<typeof limitSchema>>
