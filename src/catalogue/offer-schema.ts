/**
 * Form of what brings offers to one scope: usual prices of what prices leave out, and how promises and payments come out.
 *
 * @module
 */

import * as z from 'zod'
import { spreadSchema } from './part-schema.js'

const chance = z.number().min(0).max(1)
const logSd = z.number().min(0).max(3)
const factor = z.number().min(1).max(10)
const priced = z.strictObject({ price: spreadSchema })

export const offerSchema = z.strictObject({
  /** Of the hours that opening and closing take: the share of opening. */
  openingShare: chance,
  /** Where nothing says what must be opened. */
  removal: z.strictObject({ hours: spreadSchema }),
  refitting: z.strictObject({ hours: spreadSchema }),
  testing: z.strictObject({ hours: spreadSchema }),
  /** Of a piece that stays within the boat; a set that leaves her is lifted as a new one is. */
  lifting: priced,
  carriage: priced,
  consumables: priced,
  disposal: priced,
  /** Visits, where nothing is done ashore, and where something goes to a shop and comes back. */
  visits: z.strictObject({ aboard: z.number().min(1).max(20), toShop: z.number().min(1).max(20) }),
  /** Pieces, as a share of the price, where the catalogue prices none of them. */
  pieces: z.strictObject({ share: chance, logSd }),
  /** Spread of the hours that opening and closing take. */
  hoursLogSd: logSd,
  /** Days that come of days promised. */
  promised: z.strictObject({ daysFactor: factor, logSd }),
  /** What a price that has run out is asked at again. */
  lapsed: z.strictObject({ priceFactor: factor }),
  guarantee: z.strictObject({
    /** What is usual, in months, and the chance that one who said nothing gives it. */
    usualMonths: z.number().min(0).max(120),
    givenChance: chance,
    /** Of what it covers: the share that is really put right at no cost. */
    honouredShare: chance,
    /** Chance within a year that work of this kind has to be done again, where the life model has none of it. */
    againChance: chance,
  }),
  stages: z.strictObject({
    /** Share of the work that is done when each stage is reached. */
    done: z.strictObject({
      orderShare: chance,
      startShare: chance,
      strippedShare: chance,
      halfWayShare: chance,
      finishedShare: chance,
      testedShare: chance,
    }),
    /** Chance that what was paid ahead of the work is lost. */
    lostChance: chance,
  }),
  /** Of what was not said: the chance that it turns out against the owner. */
  unsaid: z.strictObject({
    removalChance: chance,
    refittingChance: chance,
    liftingChance: chance,
    testingChance: chance,
    carriageChance: chance,
    travelChance: chance,
    partsChance: chance,
    consumablesChance: chance,
    haulOutChance: chance,
    disposalChance: chance,
    /** Where another offer for the same job leaves it out. */
    otherLeavesOutChance: chance,
    taxChance: chance,
    /** That one who offers will make an estimate firm, or leave out "subject to strip-down". */
    firmChance: chance,
    /** That one who said nothing of stages wants a deposit, and which share of the price. */
    depositChance: chance,
    depositShare: chance,
    /** That a price which has run out is still held to. */
    heldChance: chance,
  }),
})

export type CatalogueOffers = Readonly<z.infer<typeof offerSchema>>
