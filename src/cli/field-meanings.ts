/**
 * What each field of an entry means to the owner who types it; its form is taken from the schema.
 *
 * @module
 */

import type { Kind } from '../logbook/kinds.js'

/** Fields that mean the same in every kind. */
const anywhere: Readonly<Record<string, string>> = {
  remark: 'anything else about it',
  'meter-hours': 'what the hour meter showed',
}

const tax = {
  'tax-included': 'whether the tax is in the amount',
  'tax-percent': 'the rate of the tax',
}

const meanings: Readonly<Record<Kind, Readonly<Record<string, string>>>> = {
  boat: {
    name: 'what she is called',
    'length-m': 'her length in metres',
    water: 'the water that she lies in',
    currency: 'the currency of every amount in the log',
    'price-factor': 'how much dearer things are here than in the catalogue',
    'months-in-use': 'the months in which she is used at all',
    words: 'earth and RCD, or ground and GFCI',
    'units-temperature': 'temperatures as you speak of them',
    'units-volume': 'volumes as you speak of them',
    'units-pressure': 'pressures as you speak of them',
    'units-length': 'lengths as you speak of them',
    'units-power': 'powers as you speak of them',
  },
  set: {
    name: 'what it is called',
    'rating-kw': 'what it is rated at',
    volts: 'its voltages as it is linked, highest first',
    hertz: 'its frequency',
    phases: 'its phases',
    rpm: 'the speed that it runs at',
    excitation: 'how the alternator is excited',
    bearings: 'bearings of the alternator: with one, the engine carries the other end',
    governor: 'the kind of governor',
    'fuel-solenoid': 'what the solenoid on the fuel does',
    leads: 'ends of the windings brought out to the terminals',
    links: 'how these are joined',
    built: 'when it was built',
    'aboard-since': 'when it came aboard; left out: new in the year it was built',
    'hours-when-aboard': 'what its meter showed then',
    has: 'protections and other parts that not every set has, and this one has',
    'has-not': 'those that this one has not',
    standing: 'whether it is in use',
  },
  fitted: {
    part: 'the part',
    quality: 'what was fitted',
    'original-to-set': 'it came with the set when it was built',
    'part-number': 'the number on it',
  },
  hours: { starts: 'starts so far, where a counter shows them' },
  'meter-changed': {
    'old-meter-hours': 'what the old meter showed last',
    'new-meter-hours': 'what the new one showed first',
  },
  use: { months: 'months of a usual year; those left out: not at all' },
  terms: {
    'years-kept': 'years for which you will keep the boat',
    'years-kept-at-least': 'nine times in ten it will be at least so many',
    'years-kept-at-most': 'nine times in ten it will be at most so many',
    'own-per-hour': 'what an hour of your own work is worth to you',
    'paid-per-hour': 'what a paid hour costs, tax in',
    'travel-per-trip': 'what each visit of a workshop costs before work begins',
    'fuel-per-litre': 'what a litre of fuel costs',
    'without-power': 'the price of being without power: months, and points of days and price',
    'do-without-price':
      'without a set: what stands in for it (inverter, batteries, shore power) costs to set up',
    'do-without-per-year': 'without a set: what stands in for it costs in a year',
    'do-without-short-percent':
      'without a set: days on which power still falls short, of a hundred that want it',
    'most-in-one-year': 'the most that you can pay in one year',
    'real-interest-percent': 'interest above the rise of prices',
    'owner-does': 'depth of work that you do yourself',
    'owner-also-does': 'parts that you do besides',
    'owner-never-does': 'parts that you never do',
    diligence: 'share of the checks and services due that are done',
    'tax-percent': 'the usual rate of tax',
  },
  overrule: {
    path: 'the figure',
    value: 'what you know it to be',
    because: 'how you know',
  },
  finding: {
    about: 'what was looked at',
    verdict: 'what came of it',
    seen: 'what was seen',
    check: 'by which check',
  },
  reading: {
    test: 'the test',
    part: 'the part that was measured',
    values: 'what was measured',
    conditions: 'what it was measured under: temperatures, load, voltage of the tester',
  },
  stop: {
    'days-without-power': 'days on which power was wanted and there was none',
    'cured-same-day': 'whether it was cured aboard within the day',
    cause: 'the part that caused it',
    seen: 'what was seen',
  },
  letdowns: {
    times: 'how often power was wanted and there was none',
    years: 'in how many years before the date of the entry',
  },
  complete: { of: 'what is all in the log for that span' },
  'danger-safe': {
    danger: 'the danger',
    at: 'the part that it came from',
    found: 'the id of the entry in which it was found',
    how: 'how it was made safe',
  },
  work: {
    parts: 'what was done to which part, what was fitted, and how the old one proved to be',
    by: 'who did it',
    why: 'why it was done',
    'work-hours-owner': 'hours of your own',
    'work-hours-paid': 'paid hours',
    cost: 'what was paid, tax in, where no bill is entered for it',
    what: 'in your own words',
    job: 'the job that it belongs to, as its quote names it',
  },
  quote: {
    job: 'a name for the job, by which bills and work are put to it',
    what: 'what is offered',
    'offered-by': 'who offers it',
    amount: 'the price',
    ...tax,
    firmness: 'whether the price is fixed',
    'subject-to-strip-down': 'whether it may change when the set is opened',
    excludes: 'what the price leaves out',
    'also-excludes': 'what else it leaves out',
    'guarantee-months': 'months of guarantee on the work',
    'valid-until': 'how long it holds',
    'covers-parts': 'the parts that the price is for, and what is done to them',
    'covers-access': 'ways in that are opened and closed within the price',
    'covers-new-set': 'where another set is supplied: its rating, and whether it is used',
  },
  bill: {
    amount: 'what is asked for',
    ...tax,
    what: 'for what',
    'billed-by': 'who asks for it',
    quote: 'the id of the quote that it follows',
    work: 'the id of the work that it is for',
    job: 'the job that it belongs to',
    parts: 'the parts that it is for',
    'split-parts': 'how much of it is pieces',
    'split-labour': 'how much of it is labour',
    'split-travel': 'how much of it is travel',
    'split-other': 'how much of it is anything else',
  },
  alternative: {
    id: 'a name of its own; that of one laid out from the log puts it in the place of that',
    'left-out': 'it is not to be laid out at all',
    name: 'what you call it',
    now: 'what is done now',
    parts: 'what is put right, as one job',
    price: 'what the whole job may cost, tax in',
    job: 'the job whose open quote it is done at, in the place of a price',
    besides: 'money on top of the quote',
    days: 'days that the work takes',
    'replace-with': 'the set that is fitted, such as new-same, new-smaller, new-larger or used-same',
    'later-year': 'another set is fitted in so many years',
    'later-with': 'which one; left out: new-same',
  },
  decision: {
    choice: 'what you settled',
    because: 'why',
    job: 'the job that it is about',
    alternative: 'the id of the alternative that you took',
    'walk-away-price': 'the walk-away price that was shown',
  },
  note: { text: 'whatever it is' },
  'photograph-removed': {
    sha256: 'the digest of the photograph, as the entry that names it shows',
    because: 'why',
  },
}

/** What a field means; undefined where that was forgotten, which a test finds. */
export function meaningOf(kind: Kind, flag: string): string | undefined {
  return meanings[kind][flag] ?? anywhere[flag]
}
