/**
 * Words of the page on sizing; what is worked out comes with its own.
 *
 * @module
 */

export const words = {
  title: 'Size',
  preparing: { say: 'Reading the log.', lead: 'What draws power together follows.' },
  nothing: {
    before: 'Cannot tell yet: ',
    bold: 'no load is in this log.',
    lead: 'Find below what draws power aboard and put it on the list. Ten things make a first answer; a nameplate or a clamp meter makes it yours.',
  },
  says: 'The smallest set that carries what is switched on, as it is switched on now. Chances of loads meeting, not their sum.',
  curve: {
    title: 'What is drawn',
    says: [
      'Along the foot, hours with the set running, the heaviest first; upward, what is drawn.',
      'Each size is a level line: what is left of it in the engine space. Where the curve stands above it, that set is asked for more than it has.',
    ],
    which: 'Occasion',
    drawing: (occasion: string, p50: string, p99: string, most: string) =>
      `Load and how long it lasts, ${occasion}: half of the time ${p50} kW or more, one hour in a hundred ${p99} kW or more, at the most ${most} kW.`,
    hours: (hours: string) => `${hours} h a year with the set running`,
    axis: 'share of the hours',
    table: 'What is drawn, by occasion and weather',
    heads: ['Occasion and weather', 'Hours a year', 'Mean', 'Half', '1 in 20', '1 in 100', 'All at once'],
  },
  sets: {
    title: 'What carries it',
    says: [
      'Every size was tried on every occasion. What nobody told is told as that: cannot tell.',
      'An offered set is fitted among the alternatives, at its own price.',
    ],
    verdicts: {
      passes: 'carries it',
      'cannot-tell': 'carries it',
      tight: 'carries it, barely or badly',
      fails: 'does not carry it',
    },
    place: 'does not suit the place',
    left: (left: string, second: string) => `Leaves ${left} there, by a second reckoning ${second}.`,
    burns: (fuel: string) => `Burns ${fuel}.`,
    madeFor: (hertz: string) => `Made for ${hertz} Hz and reckoned at the boat’s.`,
    light: (share: string) => `Below 30 % of its rating in ${share} of its hours.`,
    starts: (count: string) => `Asked for too much at ${count} starts a year.`,
    unshed: (count: string) => `With what may be shed switched off: ${count}.`,
    behind: (name: string, count: number) =>
      `${name}: ${count === 1 ? 'one thing' : `${count} things`} that speak against it or cannot be told`,
    also: (occasions: string) => `also ${occasions}`,
    heads: ['What', 'Verdict', 'Found', 'Where'],
    whole: (name: string) => `${name}: every check, passed ones too, and each occasion`,
    byOccasion: 'On each occasion',
    occasionHeads: [
      'Occasion',
      'Verdict',
      'Engine, one hour in a hundred',
      'Alternator',
      'Starts too many a year',
      'Dips too deep a year',
      'Below 30 %',
    ],
    ofTheYear: 'Whatever the occasion',
    alternatives: 'What each would cost over the years: the alternatives',
  },
  replace: {
    title: 'Replace, and at what size: what each costs over the years',
    working: 'Playing histories.',
    barred: 'barred by a stop line',
    heads: [
      'What is done',
      'Expected cost',
      'Eight times in ten',
      'The loads as they are now',
      'Below 30 % of its rating',
    ],
    between: (low: string, high: string) => `${low} to ${high}`,
    says: (histories: string, years: string) =>
      `Cheapest first, over ${years} years, from ${histories} histories each, ± what chance in drawing them leaves; with failures, fuel, days without power and what it fetches in the end. Their ranges, and how clear it is, stand on the page of alternatives.`,
  },
  trades: {
    title: 'What a smaller one asks',
    says: 'The fewest rules of the house and soft starters with which each size does, proved, and of those the ones with the least waiting. Choose one.',
    working: 'Trying rules.',
    heads: ['Rules', 'Smallest set', 'What it asks', 'Waiting a year', 'Starts too many a year', 'Saves'],
    none: 'None of these sizes does, with six rules or fewer.',
    failed: 'The rules could not be worked out.',
    saves: (years: number) =>
      `Saved in the ${years} years the boat is kept, against the set that asks for no rule: price, and fuel that a larger set burns for nothing.`,
    each: 'What each rule is worth',
    eachHeads: ['Rule', 'Set needed without it', 'Which costs more'],
    blocked: 'Sizes that no rules help',
    keep: 'Keep to these rules',
  },
  loads: {
    title: 'What draws power',
    says: [
      'What is not entered is taken from the catalogue, at the set’s voltage and frequency.',
      'Enter what a nameplate or a clamp meter says by writing an entry of a load.',
    ],
    heads: ['Load', 'Draws', 'Starts with', 'Switched on a day', 'From'],
    correctedHeads: [
      'Load',
      'Draws',
      'Starts with',
      'Switched on a day, as entered',
      'As the recording corrects it',
      'From',
    ],
    basis: { catalogue: 'catalogue', nameplate: 'nameplate', measured: 'measured' },
    search: 'Find a load in the catalogue',
    found: (count: number) => (count === 1 ? 'One load' : `${count} loads`),
    add: (name: string) => `Put on the list: ${name}`,
    added: 'It is on the list.',
    newRule: 'A rule of the house',
    never: 'Never',
    with: 'together with',
    choose: 'choose',
    writeRule: 'Write the rule into the log',
    forms: {
      load: 'Enter a load with your own figures',
      habits: 'Say when the set runs',
      space: 'Say where it stands',
      candidate: 'Enter a set that is offered',
    },
    rules: 'Rules of the house',
    rule: (loads: string, atMost: number) => `Of ${loads} at most ${atMost} at once.`,
    takeOff: 'Take something off the list',
    takeOffOne: (name: string) => `Take off: ${name}`,
    readOnly: 'A demonstration boat cannot be written to.',
    problems: 'Not reckoned with',
  },
  rests: {
    title: 'What it rests on',
    says: 'Taken for granted until you say it.',
    nothing: 'Nothing was taken for granted.',
    sources:
      'Running power of the catalogue varies by a fifth between makes, hours by two fifths. Limits and where they come from open under their names with “gensettle size --json”.',
  },
  cautionsTitle: 'Cautions',
  cautions: [
    {
      hazard: 'Wiring',
      says: 'A set that is too large for its cables, breaker or shore inlet is a fire. A licensed electrician and the local rules settle them.',
    },
    {
      hazard: 'Exhaust',
      says: 'Too small a hose or too high a lift floods an engine and fills a cabin with carbon monoxide.',
    },
    { hazard: 'Lifting', says: 'Weigh before you lift; nobody stands beneath.' },
  ],
} as const
