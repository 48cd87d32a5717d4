/**
 * Words of the page on the run plan and on measured power.
 *
 * @module
 */

export const words = {
  title: 'Run plan',
  preparing: { say: 'Reading the log.', lead: 'The day as it could be follows.' },
  working: 'Looking for the best day…',
  failed: 'The plan could not be worked out.',
  says: 'What may wait is put into the fewest, well-loaded hours; what cannot wait keeps its time.',
  answer: (hours: string, starts: string, today: string) => ({
    bold: `${hours} h a day in ${starts} would do`,
    after: ` what takes ${today} h today.`,
  }),
  same: (hours: string) => ({
    bold: `Nothing to gain`,
    after: `: ${hours} h a day is about what it takes already.`,
  }),
  lead: (year: {
    readonly hours: string
    readonly litres: string
    readonly low: string
    readonly lowToday: string
  }) =>
    `Over a year ${year.hours} hours and ${year.litres} litres less. Hours at low load: ${year.low} in 100 of them, against ${year.lowToday} today.`,
  start: ['start', 'starts'],
  day: {
    title: 'The day',
    says: 'Each column is an hour: how much the set gives on the mean of many days. Outlined is today.',
    drawing: (plan: string, today: string) =>
      `The set by the hour of the day. Planned: ${plan}. Today: ${today}.`,
    axis: 'hour of the day',
    plan: 'planned',
    today: 'today',
    table: 'What runs when',
    heads: ['Hour', 'Set', 'What runs', 'Full as it ends, of 100'],
    must: 'what cannot wait',
  },
  against: {
    title: 'Against today',
    says: 'The same energy each day. A start, and an hour at low load, count as fuel.',
    heads: ['Day', 'Hours', 'Starts', 'At low load', 'Litres'],
    plan: 'The plan',
    habit: 'Today, as the list tells',
    recorded: 'Today, as recorded',
    beside: 'The plan, with the battery',
  },
  ask: {
    title: 'What can be moved',
    season: 'Weather',
    seasons: { '': 'That of most days', hot: 'Hot', warm: 'Warm', mild: 'Mild', cold: 'Cold' },
    quietFrom: 'Silent from',
    quietUntil: 'Silent until',
    none: 'none',
    keep: 'Keep it as the use from now on',
    kept: 'Written. Forecast and alternatives follow it; the years before stay as they were.',
    readOnly: 'A demonstration boat cannot be written to.',
    batterySays: (usable: string, price: string, perYear: string, years: string) =>
      `${usable} kWh of it can be used. About ${price} fitted, ${perYear} a year; the bank lasts ${years} years.`,
    alone: (kWh: string, wholeDay: string) =>
      `In place of the set, sun, shore and battery leave ${kWh} kWh a day uncarried; a bank of ${wholeDay} kWh would hold the whole day.`,
    aloneAll: 'In place of the set, sun, shore and battery carry the day.',
  },
  battery: {
    kWh: 'Battery, kWh rated',
    kind: 'What it is of',
    kinds: { lithium: 'Lithium iron phosphate', 'lead-sealed': 'Lead, sealed', 'lead-open': 'Lead, open' },
    inverter: 'Inverter, kW',
    charger: 'Charger, kW',
    sun: 'Panels, W',
    sunHours: 'Hours of full sun in a day',
    shore: 'Shore inlet',
    none: 'none',
    besideHours: 'Hour by hour with the battery beside the set',
    aloneHours: 'Hour by hour with the battery in place of the set',
    hourHeads: [
      'Hour',
      'Wanted, kW',
      'Set',
      'Sun',
      'Shore',
      'Out of it',
      'Into it',
      'Not carried',
      'In it, kWh',
    ],
  },
  rests: { title: 'What it rests on', says: 'Taken as usual, because nobody said otherwise.' },
  cautionsTitle: 'Cautions',
  cautions: [
    {
      hazard: 'Carbon monoxide',
      says: 'A set that runs while people sleep needs working alarms and a sound exhaust, whatever the plan says.',
    },
    {
      hazard: 'Batteries',
      says: 'Large banks burn and gas. Who may fit them, and how, the local rules and licensed people say.',
    },
  ],
} as const
