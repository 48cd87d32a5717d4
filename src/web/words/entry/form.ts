/**
 * Words of the form for an entry.
 *
 * @module
 */

export const form = {
  kind: 'Kind of entry',
  day: 'Day',
  stoppedOn: 'Stopped on',
  ranAgain: 'Ran again',
  began: 'Begun on',
  ended: 'Done on',
  between: 'Or up to',
  dayHelp: 'A day, a month or a year: 25 Nov 2026, Nov 2026, 2026.',
  more: 'Say more',
  addRow: 'One more',
  /** By the list, where a word of its own says more. */
  addRowOf: {
    withoutPower: 'Another season',
    'use.months': 'One more month',
    'alternative.parts': 'One more part',
    'work.parts': 'One more part',
    'covers.parts': 'One more part',
    'order.lines': 'One more piece',
    'particulars.answers': 'One more answer',
    about: 'One more part',
  } as Readonly<Record<string, string>>,
  addPoint: 'One more length',
  pointDays: 'After so many days',
  pointPrice: 'it has cost in all',
  dropRow: 'Take this one away',
  nothingChosen: 'Not said',
  choosePart: 'Choose a part',
  pictures: 'Pictures',
  picturesHelp:
    'JPEG, PNG or WebP, at most 50 MB each. Kept as they are; where they were taken stays in this log.',
  pictureWrong: (name: string, why: 'empty' | 'too-large' | 'no-picture' | 'unreadable') =>
    `${name} is not taken: ${
      {
        empty: 'the file is empty; take it or copy it again.',
        'too-large': 'it is larger than 50 MB.',
        'no-picture': 'it is no JPEG, PNG or WebP.',
        unreadable: 'this browser cannot read it; copy it to this machine first.',
      }[why]
    }`,
  pictureHeic: (name: string) =>
    `${name} is HEIC: it is kept as it is, but neither shown nor printed here. Set the phone to JPEG (“most compatible”) for the next ones, and attach this one as JPEG as well.`,
  picturesChosen: 'Pictures chosen',
  dropPicture: 'Take it away',
  write: 'Write it in',
  writeCorrection: 'Write the correction in',
  sendAgain: 'Send it again',
  reason: 'Why it is corrected',
  takeBack: 'Take it back: it never happened',
  takeBackReason: 'Why it is taken back',
  written: (what: string) => `Written: ${what}`,
  clear: 'Clear the form',
  kept: 'Everything typed is kept on this machine from the first letter, even unsent.',
  notKept: 'This browser will not keep what is typed: do not leave the page before it is written.',
  lastRead: (hours: string, day: string) => `Last read ${hours} on ${day}.`,
  readOnly: 'A demonstration boat is only read. Enter your own boat, and write there.',
  wrong: (count: number) =>
    count === 1
      ? 'One thing is to be mended before it is written.'
      : `${count} things are to be mended before it is written.`,
  noNumber: 'Type a number, such as 1,200 or 0.4.',
  noDate: 'Type a date, such as 25 Nov 2026, Nov 2026 or 2026.',
  chooseOne: 'Choose one.',
  atLeastOne: 'At least one is needed.',
  missing: (allowed: string) => `Missing: ${allowed}.`,
  yesOrNo: 'Choose yes or no.',
  nameIt: 'Give it a short name.',
  needed: 'This is needed.',
  allowed: (found: string, allowed: string) => `Found ${found}; allowed is ${allowed}.`,
  typedIn: (unit: string) => (unit === '' ? '' : `, ${unit}`),
} as const
