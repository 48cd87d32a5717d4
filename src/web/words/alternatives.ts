/**
 * Words of the page of alternatives.
 *
 * @module
 */

export const words = {
  title: 'What to do now',
  asOf: (date: string) => `as of ${date}`,
  followingLog: 'The log has changed; the figures follow.',
  preparing: {
    say: 'Reading the log and working out what could be done.',
    lead: 'The first figures stand here in a moment; then they get sharper while you read.',
  },
  failed: {
    say: 'Cannot tell: the reckoning failed.',
    lead: 'The log itself is untouched. What the program said of it:',
    again: 'Try again',
  },
  refining: (done: string, wanted: string) => `refining, ${done} of ${wanted}`,
  reading: 'reading the log',
  rough: 'First figures: from few lives, without a used set, and mending whatever fails.',
  roughFollows: 'better ones follow in a moment',
  choosing: 'refining: at which price a later repair is no longer worth it',
  refiningTitle: (done: string) => `${done} histories`,

  ifQuoteStays: (price: string) => `if the quote stays under ${price}`,
  unlessQuoteFalls: (price: string) => `unless the quote falls to ${price}`,
  notEvenFree: 'the job that is quoted would not pay even for nothing',
  nothingElse: 'nothing else is open',
  tooClose: (best: string, next: string) => `Too close to call: ${best}, or ${next}.`,
  quoteStands: {
    under: (quote: string, spare: string) => `Your quote is ${quote}, so there is ${spare} to spare.`,
    over: (quote: string, over: string) => `Your quote is ${quote}, which is ${over} too much.`,
    none: 'No quote is in hand. Once one is in the log, the price to walk away from stands here.',
  },
  clearness: { clear: 'Clear', leaning: 'Leaning, not clear' },
  saves: (of: { saving: string; years: string; next: string; cases: string }) =>
    `it saves ${of.saving} over ${of.years} against the next best (${of.next}), and in ${of.cases} cases of 100 nothing you could still learn would change that.`,
  apart: (apart: string) => `A toss-up: ${apart} apart.`,
  differs: {
    days: (a: string, b: string) => `days without power: ${a} a year against ${b}`,
    stops: (a: string, b: string) => `stops: ${a} a year against ${b}`,
    year: (a: string, b: string) => `the dearest year: ${a} against ${b}`,
    dangers: (a: string, b: string) => `dangerous events: ${a} against ${b}`,
    intro: 'Besides money they differ in ',
    nothing: 'Nor do they differ much in anything else.',
  },
  moreDanger: (own: string, other: string) =>
    `It carries more danger: a dangerous event ${own}, against ${other}.`,

  laterJobs: (of: { low: string; high?: string; instead: string }) =>
    `A later job dearer than ${of.high === undefined ? of.low : `${of.low} to ${of.high}, by when it comes,`} is not mended any more: ${of.instead}.`,
  doWithout: 'do without from then on',
  fit: (what: string) => `fit ${what}`,

  ruler: {
    sign: 'Sign',
    walkAway: 'Walk away',
    quote: (amount: string) => `Your quote ${amount}`,
    control: 'Quote, tax in',
    drawing: (of: { price: string; low: string; high: string; quote: string }) =>
      `A scale of money. Walk away above ${of.price}; finding out could make that ${of.low} to ${of.high}. The quote is ${of.quote}.`,
    finding: (span: string) =>
      `Likely between ${span} once you know what can be known before signing: the thin line, 10 to 90 in 100.`,
    simulation: (span: string) =>
      `The simulation alone leaves ${span}: the thick part, 90 in 100. More running narrows this one only.`,
    below: 'The scale begins at nothing, and the price to walk away from lies below it.',
    telephone: 'For the telephone',
    spread: (low: string, high: string) => `finding out could make it ${low} to ${high}, 10 and 90 in 100`,
    priceName: 'Price to walk away from',
    priceFrom:
      'What the next best without this job costs, less what the job’s own course costs with the quote left out, over what a unit on the quote comes to on the bill.',
    priceMoves: (otherwise: string) => `Above it: ${otherwise}.`,
  },

  stops: {
    title: 'Before it is started',
    enterReading: 'Enter a reading',
    enterSafe: 'Enter that it is made safe',
    putAway: 'Leave it for now',
    written: 'Written. The stop follows it.',
    closes: 'This closes with an entry that shows it put right, not with a date.',
    toLinks: 'To the winding links',
    toCase: 'To the case',
    toTests: 'To the tests that close it',
    passedOver: 'Passed over, and bars nothing',
    reason: (date: string) => `The reason of ${date}`,
  },

  list: {
    title: 'Alternatives',
    says: (years: string) => `${years}, money of today, nothing already spent counted.`,
    name: 'Alternative',
    axis: (years: string, currency: string) => `All it will cost over ${years}, ${currency} thousand`,
    expected: (sign: string) => `Expected, ${sign}, and dearer by`,
    stops: 'Stops a year',
    days: 'Days without power, a year',
    dangers: 'Dangers in 100 years',
    expectedShort: 'Expected',
    againstShort: 'Dearer by',
    stopsShort: 'Stops/y',
    daysShort: 'Days without',
    dangersShort: 'Dangers',
    best: 'Best in money',
    barred: 'Barred',
    canBeChosen: 'It can be chosen when that is put right.',
    stopAbove: 'It runs on past the stop above, and can be chosen when that is answered.',
    range: 'eight histories in ten fall between the ends; bar, even chance; ring, expected',
    mark: 'the best one’s expected cost',
    drawing: (of: { name: string; low: string; middle: string; high: string }) =>
      `${of.name}: one in ten below ${of.low}, even chance ${of.middle}, one in ten above ${of.high}`,
    behind: 'The table behind the picture',
    working: 'How it was worked out',
    add: 'Add an alternative of your own',
    change: 'Change it',
    errorNote: (histories: string) =>
      `± is what ${histories} histories leave open, 90 in 100. The ranges are the world’s doubt, not the simulation’s; no amount of running narrows them.`,
    followedFrom: (list: string) => `The first one’s expected cost is made of: ${list}.`,
    costName: (name: string) => `${name}: expected cost`,
    costFrom: (histories: string) =>
      `the mean of ${histories} histories, each with the same weather and luck for every alternative; discounted at your real rate`,
    costMoves:
      'Each price, life and chance in it can be set by you: open it on the set’s and the forecast’s pages, or move a price below.',
  },

  table: {
    name: (sign: string) => `Alternative, ${sign}`,
    low: '10 in 100 below',
    middle: 'Even chance',
    high: '10 in 100 above',
    worst: 'Worst tenth, mean',
    perYear: 'Even payment a year',
    largest: 'Dearest year, mean',
    overMost: (most: string) => `Over ${most} in one year, in 100`,
    replaced: 'Set replaced, in 100',
  },

  headings: {
    now: 'done now',
    failures: 'failures',
    planned: 'planned repairs',
    upkeep: 'upkeep',
    fuel: 'fuel',
    power: 'days without power',
    intrusion: 'faults that work puts in',
    replacement: 'another set',
    giveUp: 'doing without',
    resale: 'resale',
  },
  headingsName: 'What each is made of',

  tried: {
    title: 'Change and see',
    says: 'The answer moves as you move. A tick marks where another alternative takes over.',
    names: {
      yearsKept: { name: 'Years you will keep the boat', unit: 'years' },
      perDay: { name: 'One more day without power', unit: 'a day, once days add up' },
      ownPerHour: { name: 'Your own hour', unit: 'an hour' },
      paidPerHour: { name: 'A paid hour', unit: 'an hour' },
      travelPerTrip: { name: 'A workshop’s visit', unit: 'a visit' },
      mostInOneYear: { name: 'The most you can pay in one year', unit: '' },
      fuelPerLitre: { name: 'Fuel', unit: '' },
      doWithoutPrice: { name: 'Without a set: what stands in for it', unit: '' },
      doWithoutPerYear: { name: 'Without a set: cost of a year', unit: 'a year' },
    },
    fuel: (measure: string) => ({ name: `Fuel, ${measure}`, unit: '' }),
    nothingChanges: 'No price on this track changes the first choice.',
    answer: {
      now: 'As it stands here: ',
      alone: (cost: string) => `, ${cost}.`,
      against: (of: { cost: string; saving: string; next: string }) =>
        `, ${of.cost}; ${of.saving} less than the next (${of.next}).`,
    },
    takesOver: (of: { at: string; name: string }) => `From ${of.at}: ${of.name}.`,
    takesOverUnder: (of: { at: string; name: string }) => `Under ${of.at}: ${of.name}.`,
    yearsBehind: {
      name: 'Where other years change the advice',
      comesFrom: 'other years, played on the same histories; as exact as the track, no more',
      moves: 'Which alternative is the first choice.',
    },
    yearsNote: 'Other years are other histories: they are played anew, the first figures at once.',
    keep: 'Keep these in the log',
    back: 'Back to the log’s own',
    moved: 'Moved, not in the log: ',
    kept: 'Written into the log.',
    readOnly: 'A demonstration boat: you can move everything, and nothing is written.',
    because: 'Tried on the page of alternatives.',
    givenOn: (date: string) => `your entry of ${date}`,
    assumed: 'nobody said: taken for granted',
    fromName: 'Where it comes from',
    linear: 'All histories played are weighed anew at the price; what a repair limit chose beforehand stays.',
  },

  rests: {
    title: 'What it rests on',
    entries: (count: string, parts: string) =>
      `The catalogue, and ${count} of your entries, on ${parts} of the set. The most:`,
    catalogueOnly: 'The catalogue only: no entry bears on any part of the set yet.',
    ofTheSet: 'parts of the set',
    histories: (count: string) => `${count}, each the same weather and luck for every alternative.`,
    ofHistories: (count: string) => `${count}\u00a0histories`,
    fails: (of: { times: string; span: string }) =>
      `The set’s own record: it fails ${of.times} times as often as the catalogue’s average (${of.span}).`,
    overrun: (of: { mean: string; high: string }) =>
      `What bills come to over what was quoted or estimated: ${of.mean} on average, one in ten above ${of.high}.`,
    assumed: 'Taken for granted because nobody said',
    refused: 'Figures of yours that could not be used',
  },

  edit: {
    title: (name: string) => `Change: ${name}`,
    titleNew: 'An alternative of your own',
    nows: {
      leave: 'Leave it, and mend what fails',
      mend: 'Put parts right',
      replace: 'Fit another set',
      'give-up': 'Do without a set',
    },
    atQuote: (job: string, price: string) => `${job}, ${price}`,
    leftEmpty: 'Left empty: the price as the parts’ own repairs come to, the days as the work comes to.',
    leaveOut: 'Leave it out of the list',
    write: 'Write it into the log',
    cancel: 'Leave it as it was',
    nothingChosen: 'Choose at least one part.',
    readOnly:
      'A demonstration boat cannot be written to. Enter a boat of your own to lay out your own alternatives.',
  },

  cautions: {
    title: 'Cautions',
    says: 'For any work named on this page. Local rules and licensed people come first.',
    list: [
      {
        hazard: 'Carbon monoxide',
        says: 'Never run the set with any part of the exhaust loose or leaking. When an alarm sounds: everyone out into the air, then stop the set.',
      },
      {
        hazard: 'Electric shock',
        says: 'Set stopped and locked out, shore lead out, inverter off, before a terminal cover comes off. Nobody swims near a boat that is connected or generating.',
      },
      {
        hazard: 'Stored charge',
        says: 'Capacitors hold theirs after a stop. Wait, then prove dead with a meter that was proved on something live.',
      },
      {
        hazard: 'Heat, pressure and turning parts',
        says: 'Let it cool before the coolant cap or the exhaust is touched. Fuel under injection pressure goes through skin. No sleeve, hair or hand near belt and fan.',
      },
      {
        hazard: 'Lifting',
        says: 'Alternator ends and whole sets weigh more than they look. Tackle made for it, two people, nobody’s hand beneath.',
      },
    ],
  },
} as const
