/**
 * Words of the faults room.
 *
 * @module
 */

export const words = {
  title: 'What is wrong',
  preparing: { say: 'Opening the list of faults.', lead: 'It is fetched once from the program.' },
  readOnly: 'A demonstration boat cannot be written to: a case can be begun for a boat of your own.',
  problem: 'That was not written:',

  start: {
    title: 'What is wrong?',
    says: 'A case can be left at any time and gone on with, on this machine or another.',
    say: 'Say it in your words, and begin.',
    about: 'What it does, or does not do',
    idle: 'Days it had stood before, if that is known',
    begin: 'Begin',
    again: 'Begin another case',
  },

  first: {
    title: 'Before anything else',
    says: (left: number) =>
      left === 1 ? 'The last question of these.' : `${left} questions; most are a no.`,
    yes: 'Yes',
    no: 'No',
    noneOfThese: 'None of these is so',
    also: 'Also asked:',
  },

  back: 'Back',

  stops: {
    title: 'Stop',
    says: 'Nothing else is asked of what it touches before it is cleared.',
    who: (who: string) => `By ${who}.`,
    how: 'How it was cleared',
    cleared: 'All of this holds: cleared',
    tick: 'Tick each when it holds',
    overrule: 'Overrule it',
    because: 'Your reason; it stays on every sheet',
    overruled: (hazard: string, because: string) => `${hazard} overruled: ${because}`,
    inLog: 'The log holds this open apart from the case, and no answer here clears it:',
    toProof: 'To the tests that close it',
  },

  seen: {
    title: 'What do you see?',
    says: 'In plain words: “no water”, “will not start”, “smoke stings”.',
    search: 'What is seen, heard, smelt or felt',
    there: 'It is there',
    none: 'Nothing on the list fits these words. Try fewer.',
    more: 'Tell something else that is seen',
  },

  ask: {
    title: 'Next question',
    says: 'A question costs nothing. “Don’t know” is an answer.',
    there: 'Yes, it is there',
    absent: 'I looked: no',
    unknown: 'Don’t know',
    skip: 'On to the next look instead',
  },

  look: {
    title: 'Next look',
    says: (minutes: string, risk: string) => `${minutes}, ${risk}.`,
    gate: 'Is all of this so?',
    live: 'Read every step first. Put the screen down, do it, stop the set, then answer.',
    yes: 'Yes, all of it',
    notYet: 'Not yet, or not sure',
    opens: 'Opens when the stop is answered.',
    tools: (list: string) => `Tools: ${list}.`,
    couldNot: 'Couldn’t do it',
    number: (what: string) => `Or what was read: ${what}`,
    against: (what: string) => `Held against: ${what}`,
    winding: 'How warm the winding was, °C',
    take: 'Take the number',
    rather: 'Or rather',
    why: (of: { outcome: string; chance: string; leads: string; leadsChance: string }) =>
      `${of.outcome} (${of.chance}): then most likely ${of.leads}, ${of.leadsChance}.`,
    barred: (name: string, lines: string) => `${name}: barred until this is cleared: ${lines}.`,
    none: 'No look is left that would tell anything.',
  },

  maybe: {
    title: 'What it may be',
    says: 'In 100 sets like this, with what you saw.',
    prior: 'Nothing answered yet: this is how often each happens on a set like this.',
    why: 'Why',
    silent: 'Nothing answered speaks for it or against it.',
    times: (times: string) => `${times} times for it`,
    timesAgainst: (times: string) => `${times} times against it`,
    nothing: 'says nothing of it',
    alike: (name: string, chance: string) => `Would look the same: ${name}, ${chance}`,
    apart: (check: string) => `; told apart by: ${check}`,
    brings: (list: string) => `Run on, it may bring: ${list}.`,
    drags: (part: string, chance: string, what: string) => `Run on, ${chance}: ${part}. ${what}`,
    mend: (mend: string) => `${mend}.`,
    second: (name: string, chance: string) => `There may be a second fault: ${name}, ${chance}.`,
    unexplained: 'Nothing on the list explains the answers: it may be something that is not listed.',
    caption: 'Fault and chance',
  },

  cheapest: {
    look: (name: string, cost: string, now: string) =>
      `Cheapest to a working set: ${name} first, about ${cost}; mending by the list at once, about ${now}.`,
    mend: (mend: string, cost: string) => `Cheaper than another look: ${mend}, about ${cost} until it works.`,
    hand: (cost: string) =>
      `Cheapest to a working set: let a mechanic find it, about ${cost} with what mends it.`,
    stops: ' Open stop lines come first all the same.',
  },

  asked: {
    title: 'Asked so far',
    head: 'Question',
    says: 'Answer',
    change: 'Change',
    changes: (name: string) => `Change: ${name}`,
    is: { present: 'There', absent: 'Looked for, not there', 'not-known': 'Not known' },
  },

  close: {
    title: 'What it really was',
    says: 'Closing writes what was seen as findings and readings, and sharpens the next case of this set.',
    other: 'Something else',
    unknown: 'Nobody knows',
    was: 'In your words',
    close: 'Close the case',
    which: 'It was',
  },

  closed: {
    title: 'Closed',
    was: (name: string) => `It was: ${name}.`,
    unknown: 'Nobody knows what it was.',
    place: (place: number, chance: string) =>
      place === 1
        ? `It stood first in the list then, ${chance}.`
        : `It stood at place ${place} in the list then, ${chance}.`,
    todo: (mend: string) => `To do: ${mend}.`,
    tests: (list: string) => `To be tried again until it comes out right: ${list}.`,
    proofs: (list: string) =>
      `Owed once that is done, before it is trusted: ${list}. Proof follows the work in the log.`,
    lines: (list: string) => `Still open, before it runs or is energised: ${list}.`,
  },

  cases: {
    title: 'Cases of this set',
    says: 'Where the truth had stood in the list when it came out.',
    head: ['Case', 'Began', 'It was', 'Place', 'Chance'],
    open: 'open',
    goOn: (name: string) => `Open ${name}`,
  },

  sheet: {
    title: 'Look next',
    print: 'This page prints as a sheet for a mechanic, A4 or Letter.',
    act: 'Print the sheet',
    really: 'It really was',
  },

  caution:
    'A list of what may be wrong, and no leave to touch it. Licensed people and local rules come first; chances are practice until closed cases of your own say better.',
} as const
