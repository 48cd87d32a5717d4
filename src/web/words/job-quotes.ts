/**
 * Words of the page of the offers for a job.
 *
 * @module
 */

export const words = {
  title: 'Offers',
  says: 'All offers for the job brought to one scope: what each leaves out, waits for and promises, in money.',
  none: {
    say: 'Nothing was offered for this job yet.',
    lead: 'Write each offer as a quote under the name of this job, with who offers it. What it leaves out, its days, its guarantee and its stages can be said there; what is not said is asked about here.',
    write: 'Write an offer',
  },
  walkAway: (of: { cost: string; low: string; high: string; from: string; moves: boolean }) =>
    `Walk away where all that the job costs comes to more than ${of.cost} (${of.from}${of.moves ? `; what could still be found out moves it from ${of.low} to ${of.high}` : ''}).`,
  notEvenFree: (from: string) => `Not even free: every price is too much (${from}).`,
  otherwise: (name: string) => ` Then: ${name}.`,
  from: {
    kept: 'kept with your decision',
    entered: 'entered with your decision',
    reckoned: 'reckoned with the quote in hand',
  },
  reckoning: 'The price to walk away from is being reckoned.',
  notInHand: (job: string) =>
    `The price to walk away from is reckoned for the quote in hand, which is for ${job}. Kept with a decision on this job, it stands here.`,
  noWalkAway:
    'No price to walk away from is known for this job: none was kept, and its offers are no longer open.',
  sideBySide: 'Side by side',
  sideBySideSays:
    'Line: eight cases in ten; bar: even chance; ring: expected. What offers share comes out alike for all of them, so the chance to be the cheapest says more than the lines.',
  heads: {
    offer: 'Offer',
    axis: (sign: string) => `In all, ${sign} thousand`,
    all: 'In all',
    cheapest: 'Cheapest',
    walkAway: 'Walk away above',
  },
  range: 'one in ten below, even chance, one in ten above; ring: expected',
  mark: 'expected of the best',
  best: 'Best in money',
  lapsed: 'Lapsed',
  asOffered: (money: string, day: string) => `${money} as offered, ${day}`,
  inPlaceOf: (count: number) =>
    count === 1 ? 'in place of an earlier one' : `in place of ${count} earlier ones`,
  notEvenFreeShort: 'not even free',
  drawing: (of: { name: string; low: string; middle: string; high: string }) =>
    `${of.name}: one in ten below ${of.low}, even chance ${of.middle}, one in ten above ${of.high}`,
  lines: 'Line by line',
  linesSay:
    'Each line is its mean. A figure that is dotted opens to what it rests on, and can be set by you.',
  line: 'Line',
  money: 'Money',
  why: 'Why',
  inAll: 'In all',
  restsOn: (source: string, place: string, held: string) => `${source}, ${place}; ${held}`,
  comesFromLog: 'your log and your terms',
  figures: {
    opening: (way: string) => `Hours to open: ${way.charAt(0).toLowerCase()}${way.slice(1)}`,
    hands: (part: string) => `Hours of a paid hand: ${part}`,
    piece: (part: string) => `Usual price: ${part}`,
    named: {
      'offers.openingShare': 'Share of opening in opening and closing',
      'offers.removal.hours.typical': 'Usual hours of removal',
      'offers.refitting.hours.typical': 'Usual hours of refitting',
      'offers.testing.hours.typical': 'Usual hours of testing',
      'offers.lifting.price.typical': 'Usual price of lifting a piece',
      'offers.carriage.price.typical': 'Usual price of carriage',
      'offers.consumables.price.typical': 'Usual price of consumables',
      'offers.disposal.price.typical': 'Usual price of disposal',
      'offers.visits.aboard': 'Visits, where all is done aboard',
      'offers.visits.toShop': 'Visits, where something goes to a shop',
      'offers.pieces.share': 'Share of pieces in such a price',
      'offers.promised.daysFactor': 'Days that come of a day promised',
      'offers.promised.logSd': 'Spread of promised days',
      'offers.lapsed.priceFactor': 'Price asked for again, over the lapsed one',
      'offers.guarantee.honouredShare': 'Share of what a guarantee covers that is put right',
      'offers.guarantee.againChance': 'Chance in a year that such work is done again',
      'offers.stages.lostChance': 'Chance that money ahead of the work is lost',
      'wholeSet.installation.likeForLikeHours.typical': 'Usual hours to fit a set in place of one alike',
      'wholeSet.installation.lifting.typical': 'Usual price of lifting a set',
      'wholeSet.installation.haulOut.typical': 'Usual price of a haul-out',
    } as Readonly<Record<string, string>>,
  },
  ask: 'Still to be asked',
  askSays:
    'What an offer leaves unsaid that could change the choice, what asking is worth first. What no answer to could change anything is left out.',
  askNone: 'Nothing that the offers leave unsaid could change the choice.',
  message: (name: string) => `The message to ${name}`,
  copy: 'Copy the message',
  copied: 'Copied.',
  notCopied: 'This browser does not let it be copied: mark the text and copy it.',
  ahead: 'Paid ahead of the work',
  aheadSays:
    'What is paid before the work is done is lost where the work is never done. Pay as late as you can agree on.',
  stage: 'When',
  paid: 'Paid',
  atRisk: 'Ahead of the work then',
  before: (money: string) => `${money} is paid before any work.`,
  stages: {
    order: 'With the order',
    start: 'When work begins',
    stripped: 'When it is stripped down',
    'half-way': 'Half way',
    finished: 'When it is finished',
    tested: 'When it is tested',
  } as Readonly<Record<string, string>>,
  problems: 'Could not be used',
  problemsSay: 'Nothing is lost: correct the entry in the logbook, and it is used.',
  problem: {
    'other-money': 'It is in another money than the boat’s, and was left out.',
    'before-the-quote': 'A date lies before the day on which it was given, and was left out.',
    'for-something-else':
      'It is for something else than the others, and was left out: give it a job of its own.',
    'unreadable-answer':
      'The answer kept with the decision cannot be read; the price to walk away from is reckoned anew.',
  } as Readonly<Record<string, string>>,
  toLogbook: 'To the logbook',
} as const
