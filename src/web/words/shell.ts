/**
 * Words of the frame around every page.
 *
 * @module
 */

export const shell = {
  program: 'Gensettle',
  skip: 'To the page',
  light: 'Light',
  lights: { day: 'Day', dark: 'Dark', red: 'Red' },
  loopName: 'Round the loop',
  pagesName: 'Pages',
  otherPages: 'other pages',
  writeEntry: 'Write an entry',
  stopWriting: 'Leave it for now',
  boats: 'Boats',
  settings: 'Settings',
  pages: {
    logbook: 'Logbook',
    set: 'Set',
    forecast: 'Forecast',
    alternatives: 'Alternatives',
    sizing: 'Size',
    plan: 'Run plan',
    faults: 'Faults',
    brief: 'Decision brief',
    'looking-back': 'Looking back',
    links: 'Winding links',
    'shop-sheet': 'Shop sheet',
    job: 'Job',
    proof: 'Proof',
    'proof-report': 'Proof report',
  },
  demonstration: 'Demonstration, invented',
  opening: 'Opening…',
  notFound: {
    title: 'No such page',
    say: 'There is no page at this address.',
    next: 'What was written is safe: it is in the logbook, whatever the address says.',
    back: 'To the boats',
  },
  noSet: {
    title: 'Nothing to reckon with yet',
    say: { before: 'Cannot tell yet: ', bold: 'nothing in this log says what the set is.' },
    next: 'Kind and rating, year, hours, how the boat is used, and how often it let you down: these five make a first forecast, and everything else sharpens it.',
    begin: 'Begin with five answers',
  },
  failed: {
    title: 'This page failed',
    say: 'Something in this page went wrong, and it cannot go on.',
    next: 'Nothing that was written is lost. What the program said of it stands below.',
    again: 'Open the page anew',
  },
  failedToRead:
    'Cannot read the log. Is the program still running where it was started? This page tries again by itself.',
  footer:
    'Odds and money only: nothing here makes electrical or engine work safe. Licensed people and local rules come first.',
  figure: {
    value: 'Value',
    comesFrom: 'Comes from',
    moves: 'Moves',
    overrule: 'Overrule',
    because: 'Because',
    write: 'Write it into the log',
    writing: 'Writing…',
    written: 'Written. All figures follow it.',
    readOnly: 'A demonstration boat cannot be written to.',
    notANumber: 'Type a number, such as 1,200.',
    opened: (name: string) => `${name}, opened`,
  },
  held: {
    seen: 'read in the document',
    quoted: 'read in a text that quotes it',
    recalled: 'from memory, to be checked',
    practice: 'common practice, no source',
    derived: 'worked out',
    owner: 'yours',
  },
  refining: { word: 'refining', stop: 'stop', stopped: 'stopped', goOn: 'go on', done: 'settled' },
  stop: 'Stop',
  asked: 'Asked',
  leaveIt: 'Leave it for now',
} as const
