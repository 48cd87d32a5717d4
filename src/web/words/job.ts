/**
 * Words of the pages of a job that all of them share, and of the first of them.
 *
 * @module
 */

export const words = {
  preparing: { say: 'Reading the log.', lead: 'What it says of the job follows.' },
  way: 'Pages of the job',
  which: 'Job',
  option: (name: string, state: string) => `${name.replaceAll('-', ' ')}, ${state}`,
  states: {
    declined: 'declined',
    offered: 'offered',
    decided: 'decided',
    ordered: 'being ordered',
    apart: 'apart',
    done: 'done',
    proved: 'proved',
  },
  notFound: (name: string) => `The log speaks of no job called “${name}”.`,
  notFoundNext: 'Choose one that it does speak of above.',
  none: {
    say: 'No job yet.',
    lead: 'A job begins with a decision, or with a quote that somebody offers. Its parts, pieces, days and tests then have pages of their own here.',
    decide: 'Settle what to do',
    write: 'Write a quote into the log',
  },
  head: {
    title: 'Job',
    says: 'One job from the offer to the proof. Where it stands follows from the entries that name it.',
    states: {
      declined: 'something else was settled on',
      offered: 'a price is offered, and nothing is settled',
      decided: 'it is settled',
      ordered: 'it is being ordered',
      apart: 'the set is apart',
      done: 'the work is done, and not proved yet',
      proved: 'done and proved',
    },
    next: {
      declined: 'Another quote, or another decision, opens it again.',
      offered: 'Next: whether to take it. The alternatives tell the quote above which to walk away.',
      decided: 'Next: what belongs with it, and the pieces to order before anything is undone.',
      ordered: 'Next: hold each piece against the old one before the set is opened.',
      apart: 'Next: put back in the order in which it came apart, then the tests.',
      done: 'Next: the tests that are owed before it is turned, energised and left alone.',
      proved: 'What it took, against what was thought, stands below as far as it was written down.',
    },
    to: {
      quotes: 'The offers side by side',
      kit: 'The pieces that it needs',
      apart: 'Taking apart and putting back',
      proof: 'The tests that are owed',
    },
  },
  parts: {
    title: 'What it is to do',
    says: 'As decided, else as quoted.',
    none: 'Neither a quote nor a decision names its parts.',
    isDone: 'Done',
    toBe: (did: string) => `to be ${did}`,
  },
  entries: { title: 'In the log', says: 'Every entry that names the job.' },
  cautionsTitle: 'Cautions',
  cautions: [
    {
      hazard: 'Before a hand goes in',
      says: 'Stop the set, lock it out, close the sea-cock and let it cool. Hot coolant and exhaust scald, stored charge and fuel under injection pressure injure.',
    },
    {
      hazard: 'Licensed work',
      says: 'Electrical and gas work, and whatever local rules name, is for licensed people. Where they say otherwise than this tool, they are right.',
    },
  ],
} as const

/** What belongs with a job. */
export const plan = {
  title: 'While it is open',
  says: 'Parts whose renewal now costs less than leaving them, over the years the boat is kept. Ways in that several share are paid once.',
  working: 'Playing what each further part would save…',
  word: 'playing',
  choosing: 'Choosing…',
  failed: (why: string) => `It could not be worked out: ${why}`,
  nothing: 'Nothing else is worth renewing now.',
  renew: 'Renew as well: ',
  costs: (price: string) => `. That is ${price} now.`,
  together: (saves: string, error: string, years: string) =>
    `Played together it saves ${saves} ± ${error} beyond that over ${years} years.`,
  second: (choice: string, behind: string) => `Next best: ${choice}, ${behind} behind.`,
  heads: { part: 'Renew too', now: 'Now', why: 'Why' },
  own: (price: string, behind: string) =>
    `As ticked: ${price} now, ${behind} behind the best. Each part counts by itself in this sum.`,
  others: (count: number) => (count === 1 ? 'One more that was played' : `${count} more that were played`),
  take: 'Take these into the job',
  readOnly: 'A demonstration boat: nothing is written.',
  notWritten: 'It could not be written. What is ticked stays.',
  choice: (what: string, more: string) => `${what}; with it: ${more}`,
  mostMoney: (currency: string) => `At most, ${currency}`,
  mostDays: 'At most, days of work',
  behind: 'How it was worked out',
  opening: (way: string, price: string) => `${way}: ${price} to open and close, once.`,
  tooSmall: (count: string) =>
    `${count} parts were left out: all that their failures cost is less than renewing them.`,
  unplayed: (count: string) => `${count} more might be worth it and were not played.`,
  cautious:
    'Each part counts for one standard error less than it saves in the histories, so that luck renews nothing. The choice is proved the least of all choices.',
  price: {
    name: (part: string) => `${part}, renewed along with the job`,
    value: (saves: string, error: string, left: string, renewed: string) =>
      `saves ${saves} ± ${error}; failures over the years kept: ${left} if left, ${renewed} if renewed`,
    from: 'the usual price of piece and hands with the mean overrun, without opening; what it saves from 800 histories played with and without it, on the same luck',
    moves: 'Rates and the price of a day without power, in the settings; ages and findings, in the log.',
  },
} as const

/** The sheet of a job; its sentences come from the core. */
export const sheet = {
  print: 'Print this page with your browser, on A4 or Letter.',
} as const

/** What jobs took, against what was expected. */
export const took = {
  title: 'What it took',
  says: 'Bills and hours under the job’s name, against its quote or against usual prices and hours.',
  money: {
    quote: (expected: string, usual: string, came: string) =>
      `Quoted, with what it left out: ${expected}; such quotes usually come to ${usual}. It came to ${came}.`,
    catalogue: (expected: string, usual: string, came: string) =>
      `At usual prices: ${expected}, and such jobs usually come to ${usual}. It came to ${came}, own hours at their price.`,
  },
  noMoney: 'No bill and no cost is written down under its name.',
  hours: (expected: string, used: string) => `Usual hours: ${expected}. Used: ${used}.`,
  noHours: 'Nobody wrote down hours, or none are usual.',
  heads: ['Kind of job', 'Jobs', 'Came to, times the usual', 'Taken as'],
  few: ', too few to speak for themselves',
  heard: 'Take it into what work is expected to come to',
  heardSays:
    'A kind with few jobs is held close to all the others. Where it is heard, forecast and alternatives say so beside what else they take for granted.',
  notWritten: 'It could not be written.',
  readOnly: 'A demonstration boat: nothing is written.',
} as const

/** Writing down that it is done. */
export const done = {
  title: 'When it is done',
  says: 'Work with its hours, under the job’s name. A bill is an entry of its own, with the same name.',
  which: 'Done',
  by: 'Who did it',
  why: 'Why',
  own: 'Your own hours',
  paid: 'Paid hours',
  cost: (currency: string) => `Paid where no bill comes${currency === '' ? '' : `, ${currency}`}`,
  notANumber: (name: string) => `${name}: a number such as 2.5 is wanted.`,
  write: 'Write the work into the log',
} as const
