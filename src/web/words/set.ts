/**
 * Words of the set's page.
 *
 * @module
 */

export const words = {
  title: 'The set',
  parts: (count: string) => `${count}, by what must be opened.`,
  found: (of: { count: string; covers: string }) => ({
    before: `${of.count} found`,
    after: `, behind ${of.covers}.`,
  }),
  foundNothing: { bold: 'Nothing is found against it', after: ', as far as the log knows.' },
  suspectedOnly: { bold: 'Something is suspected', after: (list: string) => `: ${list}.` },
  numbers: [
    'No things',
    'One thing',
    'Two things',
    'Three things',
    'Four things',
    'Five things',
    'Six things',
    'Seven things',
    'Eight things',
    'Nine things',
  ],
  things: (count: number) => `${count} things`,
  covers: (count: number) =>
    count === 1
      ? 'one cover'
      : `${['no', 'one', 'two', 'three', 'four', 'five', 'six'][count] ?? count} covers`,
  lead: (of: { found: string; unknown: string; silent: string }) =>
    `${of.found}Of the parts, ${of.unknown} with no fitting date in the log, and ${of.silent} that no entry names; the log’s silence is no proof, and is not counted as one.`,
  theFound: (list: string) => `${list}. `,
  following: 'The log has changed; the figures follow.',
  preparing: { say: 'Reading the log.', lead: 'Where each part stands is worked out in a moment.' },

  side: {
    title: 'From its service side',
    says: 'Letters are ways in; each leads to its parts below. Hatched with a heavy outline: found. Hatched with a thin one: suspected, may be this or another.',
    drawing: (of: { found: string; suspected: string }) =>
      `The set seen from its service side. Found: ${of.found || 'nothing'}. Suspected: ${of.suspected || 'nothing'}.`,
    foundIn: (count: number) => `${count} found`,
    nothingToOpen: 'Nothing to open',
    readAndFeel: 'read and feel only',
    toOpen: (time: string) => `${time} to open`,
    partsIn: (count: string) => count,
    letters: 'Ways in',
  },

  groups: {
    title: 'By what must be opened',
    says: [
      'Within each, what goes first stands first.',
      'The bar is the age now; the upright, in one line down the page, the age by which half of such parts have gone.',
    ],
    standsBroken: (date: string) => `stands broken, entered ${date}`,
    seen: (what: string, date: string) => `${what}, seen ${date}`,
    seenPlain: 'a defect',
    maybe: (what: string, date: string) => `may be behind: ${what}, ${date}`,
    nothingSeen: (date: string) => `looked at, nothing seen, ${date}`,
    did: (did: string, date: string) => `${did} ${date}`,
    silent: 'no entry names it; catalogue only',
    entries: (count: string) => `${count} in the log`,
    removed: 'taken out',
    deeds: {
      renewed: 'renewed',
      reconditioned: 'reconditioned',
      cleaned: 'cleaned',
      freed: 'freed',
      adjusted: 'adjusted',
      'topped-up': 'topped up',
      patched: 'patched',
      relinked: 'relinked',
      opened: 'opened',
      tested: 'tested',
      removed: 'taken out',
    } as Readonly<Record<string, string>>,
  },

  dangers: {
    title: 'Dangers',
    says: 'Events in 100 years of use as now. Never priced.',
    what: 'What could happen',
    through: 'Likeliest through',
    heed: 'What to heed',
    rate: 'In 100 years',
    foundOpen: 'Found, not made safe',
    value: (number: string) => `${number} in 100 years`,
    from: (chance: string) =>
      `failures that carry it, of all parts, in the year ahead; of such failures ${chance} becomes the event itself`,
    moves: 'It moves no money: it bars, and it is named with every choice that carries more of it.',
  },

  protections: {
    title: 'Protections',
    says: 'Being in service proves nothing; only a test does.',
    name: 'Protection',
    tested: 'Last tested',
    asleep: 'May be asleep',
    never: 'never, as far as the log knows',
    notFitted: 'not fitted',
    notKnown: 'nobody said whether it is fitted',
    noOdds: '–',
    moves: 'What other failures do while it sleeps: see what each takes with it on the forecast’s page.',
    none: 'The log names no protection.',
  },

  money: {
    title: 'Spent so far',
    says: 'What is spent never argues in a choice.',
    before: (year: string) => `before ${year}`,
    total: (amount: string) => `${amount} in all`,
    year: 'Year',
    amount: 'Amount',
  },
} as const
