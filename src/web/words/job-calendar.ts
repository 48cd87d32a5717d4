/**
 * Words of the page on the calendar of a job.
 *
 * @module
 */

export const words = {
  title: 'Calendar',
  preparing: { say: 'Working out the days.', lead: 'The day by which it can be ready follows.' },
  says: 'Two thousand courses that the work could take, on your free days, the helper’s and the weather’s. The ranges are the world’s doubt: no amount of running narrows them.',
  failed: 'The days could not be worked out.',
  done: { bold: 'All of it is done', after: '.' },
  never: { bold: 'Not ready within three years', after: ' as things stand.' },
  likely: (date: string) => ({ bold: `Ready by ${date}`, after: ', eight times in ten.' }),
  asked: (date: string, chance: string) => ({ bold: `Ready by ${date}: ${chance}`, after: '.' }),
  error: (error: string) => ` Give or take ${error} in 100 for the playing alone.`,
  lead: (of: { readonly low: string; readonly middle: string; readonly high: string }) =>
    `Even chance: ${of.middle}. One time in ten it is ready by ${of.low}, nine times in ten by ${of.high}.`,
  alsoLikely: (date: string) => ` Eight times in ten by ${date}.`,
  holds: (what: string, chance: string) => `What holds it up most: ${what} (${chance}).`,
  plan: (date: string) => `With usual days alone it would be ${date}: that is too early, as such sums are.`,
  noDay: 'no day within three years',
  readyBy: 'To be ready by',
  readyByHint: 'a day, such as 1 Apr 2027',
  noDate: 'This is no day. A day such as 1 Apr 2027 is wanted.',
  file: 'The days as a file for your calendar',
  fileSays:
    'Whole days, no times, no place, nothing that rings. A later file takes the place of an earlier one. What is not sent yet from this page is not in it.',
  wrong: {
    say: { bold: 'It cannot be worked out yet', after: '.' },
    says: 'Nothing is lost: put this right, and the days follow.',
    allowed: (allowed: string) => `; allowed is ${allowed}`,
    toLogbook: 'To the entries, to correct one or take it back',
  },
  orders: {
    title: 'To order',
    says: 'The wait begins with the order. A week’s delay with one alone, all else as soon as can be.',
    none: 'Nothing is left to be ordered.',
    today: (list: string) => ({ bold: `Order today: ${list}`, after: '.' }),
    notToday: { bold: 'Nothing has to be ordered today', after: '.' },
    heads: { what: 'What', by: 'At the latest', later: 'A week later' },
    tooLate: 'no day keeps the chance',
    later: (days: string) => `ready ${days} later`,
    nothing: 'ready no later',
    price: (money: string) => `, ${money} more for days without power`,
  },
  list: {
    title: 'What must be done first',
    says: 'By the last day that keeps the chance. Dots: from when it may begin. Line: over by, 1 to 9 times in 10, a bar at the even chance; heavy where it is on the longest way. The upright is today, the point above the last day.',
    by: (date: string) => `by ${date}`,
    orderBy: (date: string) => `order by ${date}`,
    tooLate: 'too late',
    holdsUp: (chance: string) => `holds up the rest: ${chance}`,
    slack: (days: string) => `${days} to spare`,
    noSlack: 'nothing to spare',
    begun: (date: string) => `begun ${date}`,
    doneOn: (date: string) => `${date}`,
    done: (count: number) => `What is done (${count})`,
    drawing: (of: {
      readonly what: string
      readonly begins: string
      readonly low: string
      readonly middle: string
      readonly high: string
      readonly by: string
    }) =>
      `${of.what}: begins about ${of.begins}, over by ${of.low} one time in ten, ${of.middle} at even chance, ${of.high} nine times in ten; at the latest ${of.by}.`,
    more: 'Days, order, who',
    moreOf: (what: string) => `, ${what}`,
    days: (low: string, usual: string, high: string) =>
      `At least ${low}, as a rule ${usual}, at most ${high} days of work.`,
    delivery: (low: string, usual: string, high: string) =>
      `One time in ten within ${low} days, half the time within ${usual}, nine times in ten within ${high}.`,
    run: 'Its days must follow one another.',
    after: (list: string) => `After: ${list}.`,
    first: 'It follows nothing.',
    needs: (list: string) => `Needs: ${list}.`,
    nobody: 'It needs nobody.',
    proposed: 'Proposed from the job; its days are practice until you say better.',
    own: 'From the log.',
    beginToday: 'Begun today',
    doneToday: 'Done today',
    leaveOut: 'Leave it out',
    change: 'Change it',
    close: 'Close',
    written: 'Written into the log.',
    readOnly: 'She is only to be read: days of your own boat can be changed here.',
  },
  who: {
    owner: 'you',
    helper: 'the helper',
    workshop: 'the workshop',
    supplier: 'the supplier',
    yard: 'the yard',
    weather: 'weather for outside work',
  },
  power: {
    title: 'Power meanwhile',
    says: 'Of a day in a month that wants power: the chance that the set gives it.',
    none: 'No power is wanted in the months that it takes.',
    price: (whole: string, more: string) =>
      `The days without power cost ${whole} on the mean; one day more costs ${more}.`,
    heads: ['Month', 'Power'],
  },
  add: {
    title: 'Days and people',
    says: 'Of whom nothing is said is free every day. What you write is an entry like any other.',
    act: 'Something more to be done',
    free: 'When somebody is free',
  },
  rests: {
    title: 'What it rests on',
    formula: (chain: string, met: string) =>
      `By the published formulas, every day a working day: ${chain} along the longest chain, ${met} with what meetings of chains add.`,
    spread: (mean: string, sd: string) => `${mean} ± ${sd} days`,
    law: 'Work is drawn from the beta distribution whose mean is (fewest + 4 × usual + most)/6; deliveries as the forecast has them, once more where the wrong piece came.',
    turned: (found: string, allowed: string) => `${found}; allowed is ${allowed}.`,
  },
} as const
