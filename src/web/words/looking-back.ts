/**
 * Words of looking back.
 *
 * @module
 */

import { plural } from './say.js'

export const words = {
  title: 'Looking back',
  ofForecast: {
    title: 'Was it right before?',
    says: 'The same odds, told on past days with what the log held then.',
    link: 'Look back: what was told, and what came',
  },
  says: 'Forecasts on past days, each up to the next, against what the log says came.',
  asleep: {
    say: 'Was it right before? ',
    bold: 'Ask, and it is worked out.',
    lead: 'On each past day the whole forecast is made anew with the log of that day: a few seconds for each. Nothing starts by itself, and what comes out is kept.',
  },
  working: {
    say: 'Telling the past again, a day at a time.',
    lead: 'Everything else stays usable. Stopped, it goes on later from where it was.',
    word: (done: number, total: number) => `day ${done + 1} of ${total}`,
  },
  stopped: {
    say: 'Stopped before all days were told.',
    lead: (done: number, total: number) =>
      `${done} of ${total} days were told; these are remembered while this page is open.`,
  },
  failed: {
    say: 'Cannot tell: looking back failed.',
    lead: 'The log itself is untouched. What the program said of it:',
    again: 'Try again',
  },
  ask: {
    by: 'What was known then',
    bys: {
      noted: 'what had been noted by then',
      happened: 'all that had happened by then, whenever it was noted',
    },
    notedMeans:
      'As noted: entries typed in later are not used. It is what you would have been told, so this is the fair test.',
    happenedMeans:
      'By the day it happened: what was typed in, corrected or remembered later is used too. Nobody could have been told this at the time.',
    late: (late: number, of: number) =>
      `${late} of ${plural(of, 'entry', 'entries')} were noted more than two months after what they tell, as an old log is that was typed in at once.`,
    months: 'Each reaches over',
    monthsOf: (months: number) => `${months} months`,
    most: 'Past days',
    mostOf: (most: number) => `the last ${most}`,
    start: 'Look back',
  },
  none: {
    say: 'Cannot tell: ',
    noted: 'nothing was noted early enough.',
    happened: 'there was no such set then.',
    lead: (unknown: number) =>
      `On ${plural(unknown, 'past day')} no such set was in the log. What is noted from now on can be held against what comes.`,
    other: 'Go by the day things happened instead',
  },
  unscored: {
    say: 'Cannot tell: ',
    bold: 'no span of the log is declared complete.',
    lead: 'Where the log is not said to hold everything, nothing in it says that a part did not fail. If it does hold everything, write an entry of the kind “Complete”, for stops and for work.',
  },
  say: {
    'too-few': 'Too few events to judge by: ',
    'as-told': 'The odds held: ',
    'came-oftener': 'It failed oftener than told: ',
    'came-seldomer': 'It failed seldomer than told: ',
  },
  told: (of: { came: string; expected: string }) => `${of.came} failed where ${of.expected} were expected`,
  lead: (of: { dates: string; first: string; last: string; months: number; told: string; bounds: string }) =>
    `${of.dates} from ${of.first} to ${of.last}, each ${of.months} months on: ${of.told} for single parts. If they were right, ${of.bounds} failures were likely.`,
  set: (of: { stopped: string; spans: string; expected: string }) =>
    `The set as a whole stopped in ${of.stopped} of ${of.spans} declared complete; ${of.expected} were expected.`,
  open: (spans: number, of: { entered: number; expected: string }) =>
    `${plural(spans, 'span is', 'spans are')} not declared complete, and not scored: nothing says what did not fail in them. Failures of ${plural(of.entered, 'part')} were entered there all the same; ${of.expected} were expected.`,
  unknownThen: (days: number) => `On ${plural(days, 'more day')} there was no such set in the log.`,
  untold: (parts: string) =>
    `Not scored: the ${parts} failed, and no chance had been given, as the set of the time was not taken to have such a part.`,
  bands: {
    title: 'Told against came',
    says: [
      'Parts by the chance that they had been told. The line is the count that such chances lead one to expect, 90 in 100; the ring what is expected; the bar what came.',
      'A bar on its line is as told. With fewer than ten expected nothing is judged.',
    ],
    name: (from: string, to: string) => `${from} to ${to} in 100`,
    all: 'All together',
    row: (came: number, expected: string) => `${came} came, ${expected} expected`,
    drawing: (of: { name: string; low: number; high: number; expected: string; came: number }) =>
      `${of.name}: ${of.came} came; ${of.expected} expected, likely ${of.low} to ${of.high}`,
    judged: {
      'too-few': 'too few events',
      'as-told': 'as told',
      'came-oftener': 'oftener than told',
      'came-seldomer': 'seldomer than told',
    },
    behind: 'The table behind the picture',
    band: 'Chance told',
    heads: {
      told: 'Times told',
      expected: 'Expected',
      came: 'Came',
      likely: 'Likely count',
      share: 'Share behind it, in 100',
    },
    from: 'chances as they were told on each day, and the log as it stands now',
    means: {
      told: 'A part over one span counts once.',
      expected: 'The sum of the chances that were told.',
      came: 'Parts that a stop names, or that work found failed.',
      likely:
        '90 in 100, exact (Poisson-binomial). Parts hang together through the set, so true bounds are somewhat wider.',
      share: 'The share that such a count leaves possible, 90 in 100 (Clopper and Pearson).',
    },
  },
  score: {
    title: 'The score',
    says: 'Brier score: the mean of the squared miss. Nought: all foreseen.',
    parts: (of: Record<'score' | 'reliability' | 'resolution' | 'uncertainty' | 'within', string>) =>
      `The score is ${of.score}. Of that ${of.reliability} is for chances that were off in their band, ${of.uncertainty} for how uncertain such failures are at all, and ${of.within} for what differs within bands; ${of.resolution} is taken off for telling apart what fails and what does not.`,
    noSkill: 'Nothing failed, so there is nothing to have foreseen: skill cannot be told.',
    skill: (skill: string) =>
      `Against someone who names the share that failed, every time: ${skill} of 100 better. Nought is no better than that.`,
    leftOut: (why: string) => `Left out of single spans: ${why}.`,
    why: {
      'stood-broken': 'stood failed already',
      'day-not-known': 'failed on a day not known well enough',
      'renewed-sound': 'renewed while sound, though no service asks for it',
      'taken-off': 'taken off',
      'set-gone': 'the set went',
    },
  },
  dates: {
    title: 'Day by day',
    says: 'What was told on each past day for the time up to the next, and what came.',
    day: 'Told on',
    stop: 'A stop of the set',
    stopCame: 'It',
    stopped: 'stopped',
    held: 'did not stop',
    expected: 'Failures expected',
    came: 'What failed',
    nothing: 'nothing',
    failed: (of: { part: string; chance: string; place: number; of: number }) =>
      `${of.part}: ${of.chance}, place ${of.place} of ${of.of}`,
    notScored: 'not declared complete, not scored',
  },
  choices: {
    title: 'Choices, and what came after',
    says: 'Decisions, and quotes that no decision answers; up to two years after each.',
    none: 'No decision and no quote lies behind you yet. A decision that is kept on the page of alternatives is found here later, with what it rested on.',
    kinds: { decision: 'Decided', quote: 'Offered' },
    quoted: (amount: string) => `${amount} quoted`,
    said: (best: string, walkAway: string | undefined) =>
      `It said then: ${best}${walkAway === undefined ? '' : `, and to walk away above ${walkAway}`}.`,
    wouldHaveSaid: (verdict: string) => `It would have said then: ${verdict}`,
    isAsked: 'Working out what would have been said…',
    nothingKept: 'No answer was kept with it.',
    done: (what: string) => `Done: ${what}.`,
    nothingDone: 'nothing is entered',
    work: (of: { day: string; parts: string }) => `${of.day}, ${of.parts}`,
    setMoved: (of: { day: string; set: string }) => `${of.day}, the set “${of.set}” came or went`,
    after: (of: { until: string; failures: string; stops: string; days: string; paid: string }) =>
      `Up to ${of.until}: ${of.failures}; ${of.stops}, ${of.days} without power, ${of.paid} paid.`,
    noFailure: 'no failure',
    failures: (parts: string) => `failures: ${parts}`,
  },
} as const

export const decide = {
  title: 'Keep this decision',
  says: 'Written into the log with the whole answer it rests on: later it can be held against what came, and run again.',
  demonstration: 'A demonstration boat is only read: a decision is kept for a boat of your own.',
  waits: 'Opens when the answer has settled or was stopped.',
  tried:
    'Opens when the tried prices and years are put back: a decision is kept with the answer as the log stands.',
  what: 'What you do',
  because: 'Why',
  barred: (why: string) => `Stop: what you take is barred. ${why}`,
  write: 'Keep this decision',
  writing: 'Keeping it…',
  written: 'Kept. It stands in the logbook with its answer.',
  gone: 'There is no answer to keep yet. Let it work out first.',
} as const

export const kept = {
  behind: 'The answer it rested on',
  because: (why: string) => `Because: ${why}`,
  said: (of: { best: string; saving: string; next: string; chance: string }) =>
    `Best in money: ${of.best}, by ${of.saving} against ${of.next}. In ${of.chance} cases of 100 nothing that could still be learned would have changed that.`,
  alone: (best: string) => `Best in money: ${best}; nothing else was open.`,
  walkAway: (price: string, quote: string) => `Walk away above ${price}; ${quote} was quoted.`,
  alternative: 'Alternative',
  mean: 'Expected cost',
  error: 'Give or take',
  barred: 'barred',
  by: (of: { histories: string; seed: number; program: string; engine: string }) =>
    `${of.histories} histories, seed ${of.seed}, version ${of.program}, on ${of.engine}. “gensettle rerun” works it out again and compares every figure.`,
} as const
