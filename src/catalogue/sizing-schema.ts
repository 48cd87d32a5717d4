/**
 * Form of the limits and constants by which a set is judged for a boat.
 *
 * @module
 */

import * as z from 'zod'

const share = z.number().min(0).max(1)
const positive = z.number().positive()

/** How an engine gets its air, and what limits it: a natural one its excess of air, or its temperatures. */
export const aspirations = ['natural', 'natural-thermal', 'turbo', 'turbo-cooled'] as const
export type Aspiration = (typeof aspirations)[number]

export const sizingSchema = z.strictObject({
  engine: z.strictObject({
    reference: z.strictObject({
      pressureKPa: positive,
      temperatureC: z.number(),
      humidity: share,
      chargeCoolantC: z.number(),
    }),
    mechanicalEfficiency: z.strictObject({ typical: share }),
    /** Exponents of ISO 3046-1, and the share of the water vapour that is taken off the pressure. */
    derating: z.array(
      z.strictObject({
        id: z.enum(aspirations),
        humidityShare: share,
        pressure: positive,
        temperature: positive,
        chargeCoolant: z.number().min(0),
      }),
    ),
    usualMeanPressureBar: z.strictObject({ natural: positive, turbo: positive, turboCooled: positive }),
    /** Correction of engine tests (SAE J1349, ISO 1585), a second opinion on the derating. */
    testCorrection: z.strictObject({
      dryPressureKPa: positive,
      temperatureC: z.number(),
      /** Engine factor: slope and what is taken off, by the fuel of a cycle [mg/l], and its values beyond both ends. */
      fuelSlope: positive,
      fuelLess: positive,
      fuelFrom: positive,
      fuelTo: positive,
      factorBelow: positive,
      factorAbove: positive,
      validFrom: positive,
      validTo: positive,
      exponents: z.array(
        z.strictObject({ id: z.enum(aspirations), pressure: positive, temperature: positive }),
      ),
    }),
  }),
  alternator: z.strictObject({
    efficiencyAt5KW: share,
    efficiencyAt25KW: share,
    ratedPowerFactor: share,
    heat: z.strictObject({ aboveC: z.number(), perStepShare: share, stepK: positive }),
    height: z.strictObject({ aboveM: z.number(), perStepShare: share, stepM: positive }),
    classRiseK: z.strictObject({ f: positive, h: positive }),
    /** Of a three-phase end joined for one phase, where its manual says nothing. */
    singlePhaseShare: z.strictObject({ usual: share }),
    reactance: z.strictObject({ regulated: share, capacitor: share }),
    capacitorStartTimesRating: z.strictObject({ most: positive }),
  }),
  voltageDip: z.strictObject({ aim: share, most: share }),
  load: z.strictObject({
    p99ShareOfRating: share,
    lowBelow: share,
    lowShareMost: share,
    meanShareMost: share,
  }),
  firstStep: z.strictObject({ fullUpToBar: positive }),
  frequency: z.strictObject({ dipMost: share, inertiaSeconds: positive, governorSeconds: positive }),
  exhaust: z.strictObject({
    naturalKPa: positive,
    turboKPa: positive,
    /** Behind the engine at full load. */
    gasC: positive,
    gasKJPerKgK: positive,
    hoseAimC: positive,
    hoseMostC: positive,
  }),
  heat: z.strictObject({
    jacketShare: share,
    radiationShare: share,
    exchangerRiseK: positive,
    fuelKWhPerLitre: positive,
  }),
  fuel: z.strictObject({ kgPerLitre: positive, co2KgPerLitre: positive }),
  /** Of coolant to sea water: as made, as it fouls, and what it is made for. */
  exchanger: z.strictObject({
    cleanKWPerM2K: positive,
    seaFoulingM2KPerKW: positive,
    jacketFoulingM2KPerKW: positive,
    coolantMostC: positive,
    /** What the coolant loses on its way through, at full load. */
    coolantDropK: positive,
    /** Sea water in which it still carries the heat of the rating when fouled. */
    warmSeaC: z.number(),
  }),
  water: z.strictObject({
    seaKJPerKgK: positive,
    seaKgPerM3: positive,
    freshKJPerKgK: positive,
    freshKgPerM3: positive,
  }),
  ventilation: z.strictObject({
    volumetricEfficiency: share,
    riseK: positive,
    openingMPerS: positive,
    engineSpaceMostC: positive,
  }),
})

export type SizingLimits = Readonly<z.infer<typeof sizingSchema>>
