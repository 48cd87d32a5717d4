/**
 * Words of the list of boats, and of a new boat's five answers.
 *
 * @module
 */

export const boats = {
  title: 'Boats',
  says: 'Each boat keeps a log of her own. What the log holds is what every figure rests on.',
  none: {
    say: 'No boat of yours is here yet.',
    lead: 'Five answers make a first forecast: what the set is, when it was built, its hours, how the boat is used, and how often it let you down.',
  },
  demonstrations: 'To look at',
  demonstrationsSay:
    'Three invented boats with their logs. They are only read; nothing of them enters your figures.',
  enterNew: 'Enter your boat',
  another: 'Enter another boat',
  noSet: 'No set is entered yet.',
  reckoning: 'Reckoning the first answer…',
  waits: 'Reckoned after the one above.',
  cannotTell: 'Cannot tell yet: open the alternatives, which say why.',
  file: 'Boat file',
  of: (name: string) => `of ${name}`,
  failed: 'The list of boats cannot be read. The program on this machine is asked again by itself.',
  bring: {
    title: 'Bring a boat in',
    says: 'A boat file holds every entry and picture of one boat. It is taken whole or not at all; a boat that is here already is joined, entry by entry.',
    choose: 'Boat file, ending in .gensettle',
    reading: (share: string) => `Reading: ${share} sent. It can be stopped until the end.`,
    stop: 'Stop',
    stopped: 'Stopped. Nothing was written.',
    done: (boat: string, added: string, already: string, pictures: string) =>
      `${boat}: ${added} added, ${already} were here already, ${pictures}.`,
    wrong: (count: number) =>
      count === 1
        ? 'One thing is wrong with the file. Nothing was written.'
        : `${count} things are wrong with the file. Nothing was written.`,
  },
  notLetIn: {
    title: 'Not let in',
    say: 'This browser has not been let in.',
    lead: 'Open the address that the program printed when it started. Each address lets one browser in, once; start the program again for another, or ask for one under Settings in a browser that is in.',
    why: 'Any account on this machine can reach the program, so it shows a log only to a browser that was handed its address.',
    again: 'Try again',
  },
} as const

export const newBoat = {
  title: 'Your boat',
  says: 'Five answers for a first forecast. A guess will do: whatever you know better later goes into the log, and the figures follow.',
  say: 'Five answers, and a first forecast.',
  name: 'What do you call her?',
  currency: 'Money you pay in',
  five: {
    set: 'What is the set?',
    rating: 'Rating, kW',
    ratingHelp: 'On the plate; kVA times 0.8 where it gives only kVA.',
    electricity: 'What it makes',
    fifty: '230 V, 50 Hz',
    sixty: '120 and 240 V, 60 Hz',
    three: '400 V, 50 Hz, three phases',
    speed: 'How fast it runs',
    slow: 'Slow: 1,500 or 1,800 a minute',
    fast: 'Fast: 3,000 or 3,600 a minute',
    built: 'When was it built?',
    builtLabel: 'Year',
    builtHelp: 'The set, not the boat. The year it came aboard, if nothing else is known.',
    hours: 'How many hours has it run?',
    hoursLabel: 'Hours on the meter',
    hoursHelp: 'As the meter shows today. An estimate will do where there is no meter.',
    use: 'How is the boat used?',
    kinds: {
      weekends: 'Weekends and holidays',
      season: 'Lived aboard in the season',
      year: 'Lived aboard all year',
      charter: 'Let out, with guests',
    },
    months: 'In which months?',
    perYear: 'Hours the set runs in a usual year',
    perYearHelp: (hours: string) => `Left empty: ${hours}, as its hours and years come to.`,
    letdowns: 'How often did it let you down in the last three years?',
    letdownsLabel: 'Times you wanted power and had none',
    letdownsHelp: '0 is an answer too. What was put right the same day counts as well.',
  },
  write: 'Show the first forecast',
  wrong: (count: number) =>
    count === 1 ? 'One answer is still needed.' : `${count} answers are still needed.`,
  need: {
    name: 'A name with at least one letter.',
    taken: 'There is a boat of that name already.',
    rating: 'A rating from 0.5 to 100 kW.',
    built: 'A year from 1950 to this one.',
    hours: 'Hours from 0 to 200,000.',
    months: 'At least one month.',
    perYear: 'Hours from 1 to 8,760.',
    letdowns: 'A whole number, 0 or more.',
  },
  monthNames: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
} as const
