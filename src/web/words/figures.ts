/**
 * Words of what stands behind figures.
 *
 * @module
 */

export const figures = {
  simulated: (of: { histories: string; error?: string }) =>
    `simulated: the mean of ${of.histories} histories${of.error === undefined ? '' : `, ± ${of.error} of them alone (90 in 100)`}`,
  hundredth: (of: { share: string; histories: string }) =>
    `simulated: ${of.share} of ${of.histories} histories; its doubt is the world’s, not the simulation’s`,
  played: (of: { lives: string; error: string }) =>
    `simulated: ${of.lives} lives of the part, with what the log says of it, ± ${of.error} of them alone (90 in 100)`,
  entry: (number: string) => `entry ${number} of the log`,
  entries: (list: string, more: number) => `entries ${list}${more > 0 ? ` and ${more} more` : ''} of the log`,
  entryUnsent: 'an entry that is not sent yet',
  givenOn: (entry: string, day: string) => `${entry}, of ${day}`,
  assumed: 'nobody said: taken for granted',
  catalogueOnly: 'the catalogue only; no entry bears on it',
  andCatalogue: (entries: string) => `the catalogue, and ${entries}`,
  correctIt: 'Correct the entry in the logbook: the figures follow it.',
  counted: 'counted from the log and the catalogue',
  livesMove: 'Lives and prices of the parts: each opens on the forecast’s page, with a field to set it.',
  looking: 'Looking it up…',
  inCatalogue: (value: string) => `catalogue ${value}`,

  quote: {
    name: 'The quote in hand',
    moves: 'The answer, and which alternative is best: move the pointer on the scale to try others.',
    strip: 'subject to strip-down',
    estimate: 'an estimate',
    firm: 'firm',
    taxUnknown: 'nobody said whether tax is in it: taken as in',
  },
  spare: {
    name: 'The quote against the price to walk away from',
    from: 'one less the other; as doubtful as the price',
  },
  saving: {
    name: (best: string, next: string) => `${best}, against ${next}`,
    from: (histories: string) =>
      `the same weather and luck for both: the mean of ${histories} differences, history by history`,
  },
  cases: {
    name: 'How sure the first choice is',
    value: (cases: string) => `${cases} of 100 cases`,
    from: (histories: string) =>
      `${histories} histories: how often it stays the first choice, over all that could still be learnt before signing`,
    moves: 'Looks and readings: what is found out takes doubt away.',
  },
  limit: {
    name: 'The dearest job still mended',
    from: 'tried out on histories of their own: the limit with the lowest cost, year by year',
    moves: 'The price of another set, and the years the boat is kept.',
  },
  price: { simulation: (low: string, high: string) => `the simulation alone: ${low} to ${high}, 90 in 100` },
  row: {
    cost: (name: string) => `${name}: expected cost`,
    spread: (low: string, middle: string, high: string) =>
      `One history in ten below ${low}, half below ${middle}, one in ten above ${high}.`,
    against: (name: string, best: string) => `${name}, against ${best}`,
    stops: (name: string) => `${name}: stops of a day or longer, a year`,
    sameDay: (number: string) => `besides ${number} a year that are over the same day`,
    days: (name: string) => `${name}: days without power, a year`,
    dangers: (name: string) => `${name}: dangerous events in 100 years`,
    dangerFrom: (histories: string) =>
      `simulated: failures in ${histories} histories, each times the chance that it becomes the event`,
    dangerMoves: 'It moves no money: it bars, and is named with every choice that carries more of it.',
    power: 'What a day without power costs you, and the lives of the parts.',
    worst: (name: string) => `${name}: mean of the dearest tenth`,
    perYear: (name: string) => `${name}: even payment a year`,
    perYearFrom: 'the expected cost, spread evenly over the years at your real rate',
    largest: (name: string) => `${name}: dearest single year`,
    largestHigh: (high: string) => `one history in ten above ${high}`,
    overMost: (name: string) => `${name}: more than can be paid in one year`,
    replaced: (name: string) => `${name}: set replaced before the end`,
    low: (name: string) => `${name}: one in ten below`,
    middle: (name: string) => `${name}: even chance`,
    high: (name: string) => `${name}: one in ten above`,
    shares: { low: 'the 10th hundredth', middle: 'the middle', high: 'the 90th hundredth' },
    worstShare: 'the dearest tenth',
  },
  handover: {
    name: 'Where the advice changes hands',
    from: (histories: string) =>
      `where the mean costs of two alternatives cross, over ${histories} histories weighed anew`,
  },
  fails: {
    name: 'How often this set fails',
    value: (times: string, low: string, high: string) =>
      `${times} times the catalogue’s average; ${low} to ${high}, 10 and 90 in 100`,
    from: (entries: string) => `what the set has lived through and what failed: ${entries}`,
    moves: 'Every life of every part.',
  },
  overrun: {
    name: 'Bill over quote',
    value: (mean: string, high: string) => `${mean} on average, one in ten above ${high}`,
    from: 'common practice, corrected by quotes of yours that were billed',
    moves: 'Every price of work that is not paid by your own hand.',
  },
  histories: {
    name: 'Histories played',
    from: 'a seed, so that the same log gives the same figures again',
    moves: 'More of them narrow what stands behind ±, and nothing else.',
  },
  entriesName: (part: string) => `Entries on the ${part}`,
  entriesMove: 'Lives, and in what state the part is held to be.',

  chance: {
    stop: 'At least one stop within 12 months',
    spread: (low: string, high: string) => `of a good set ${low}, of a poor one ${high}`,
    stopFrom: (parts: string) =>
      `simulated: the odds of ${parts} played together, at each goodness that such a set may have`,
    failures: 'Failures of any kind in the year ahead',
    failuresFrom: 'the sum over all parts; each opens below',
    cost: 'Pieces and work for them in the year ahead',
    costFrom: 'each failure times what mending it costs with what it drags down; days lost are not in it',
    byMonth: (month: string) => `At least one stop by the end of ${month}`,
    within: (part: string, months: number) => `${part}: fails within ${months} months`,
    stopping: (part: string) => `${part}: stops the set within 12 months`,
    defective: (part: string) => `${part}: something wrong with it already`,
    asleep: (part: string) => `${part}: has failed and nobody knows`,
    partCost: (part: string) => `${part}: cost of the year ahead`,
    half: (part: string) => `${part}: half gone by`,
    halfValue: (of: { tenth: string; half: string; ninth: string }) =>
      `half of such parts on this set by ${of.half}; one in ten by ${of.tenth}, nine in ten by ${of.ninth}`,
    drags: (cause: string, part: string) => `${part}, when the ${cause} fails`,
    dragsValue: (chance: string, cost: string) => `${chance}; ${cost} each time`,
    dragsFrom:
      'the chance in the catalogue that one brings the other, less what a working shutdown takes away; the price with the work',
    danger: (part: string, danger: string) => `${danger}, through the ${part}`,
    dangerFrom: 'failures in the year ahead, times the chance that one becomes the event',
  },
  set: {
    unknown: 'Parts with no fitting date',
    silent: 'Parts that no entry names',
    none: 'none',
    moves: 'A date or a look narrows the odds of the part; the logbook asks for those that matter most.',
    open: (way: string) => `To open and close: ${way}`,
    openFrom: 'this way with all that it includes',
    openMoves: 'The hours of every job that needs it, and what jobs share.',
    spent: 'Spent so far',
    spentIn: (year: string) => `Spent in ${year}`,
    spentBefore: (year: string) => `Spent before ${year}`,
    spentFrom: 'bills, and the cost of work without one:',
    spentMoves: 'Nothing: what is spent never argues.',
  },
  sharpen: {
    name: (part: string) => `What hangs on the age of the ${part}`,
    value: (ifNew: string, ifOld: string) =>
      `fails within a year: ${ifNew} if new, ${ifOld} if as old as the set`,
    from: 'lives of the catalogue; the difference of the two chances, times what the part costs with its work',
  },
  sums: {
    name: (year: string) => `What ${year} comes to`,
    from: 'added up from the entries of the year; hours as the meter moved on between readings',
    moves: 'Nothing by itself: each entry does.',
  },
  names: {
    'wholeSet.labour.ratePerHour.typical': 'A paid hour',
    'wholeSet.newSet.priceAt1KW': 'A new set, price at 1 kW',
    'wholeSet.resale.shareOfNew': 'Resale, share of new',
    'wholeSet.intrusion.minorRepairChance': 'Fault put in by a small repair',
    'wholeSet.intrusion.majorRepairChance': 'Fault put in by a deep repair',
    'wholeSet.fuel.dockPrice.typical': 'Fuel',
  } as Readonly<Record<string, string>>,
  ofPart: {
    life: (mode: string) => `${mode}: age by which 63 in 100 have failed`,
    price: 'Price of the piece',
    paidHours: 'Paid hours of the job',
    ownHours: 'Your own hours of the job',
  },
  becomes: (danger: string) => `Chance that a failure becomes it: ${danger}`,
} as const
