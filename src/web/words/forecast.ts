/**
 * Words of the forecast.
 *
 * @module
 */

export const words = {
  title: 'What is coming',
  span: (from: string, to: string) => `${from} to ${to}, ordinary care, no work done first.`,
  following: 'The log has changed; the forecast follows.',
  preparing: {
    say: 'Reading the log and playing each part ahead.',
    lead: 'It takes a moment, and is kept: coming back costs nothing.',
  },
  failed: {
    say: 'Cannot tell: the reckoning failed.',
    lead: 'The log itself is untouched. What the program said of it:',
  },

  say: {
    surely: 'It will almost surely let you down within a year',
    likely: 'It will likely let you down within a year',
    even: 'An even chance that it lets you down within a year',
    maybe: 'It may let you down within a year',
    seldom: 'It will likely see the year through',
    by: (part: string) => `most likely by the ${part}`,
    first: (part: string) => `and if not, the ${part} is the likeliest reason`,
    in: (month: string) => `, and in ${month}`,
  },
  lead: (of: { chance: string; span: string; failures: string; cost: string }) =>
    `That is ${of.chance} of at least one stop within 12 months; for as good and as bad as such sets are, ${of.span}. Expect ${of.failures} failures of any kind, and ${of.cost} of pieces and work for them and what they drag down.`,

  over: {
    title: 'At least one stop',
    says: 'In 100. Dotted lines: 10 and 90 in 100, because nobody knows how good this one set is.',
    laidUp: 'laid up',
    top: '100',
    byLayUp: 'by the lay-up',
    byEnd: (month: string) => `by the end of ${month}`,
    drawing: (of: { chance: string; month: string }) =>
      `Chance of at least one stop, month by month: ${of.chance} by the end of ${of.month}.`,
    behind: 'The table behind the picture',
    month: 'By the end of',
    expected: 'Expected, in 100',
    low: 'Good set, in 100',
    high: 'Poor set, in 100',
  },

  twenty: {
    title: 'What goes when',
    says: [
      'Twenty boats just like yours. A dot is one of the twenty, in the month that part fails her.',
      'No dot: it outlives the two years.',
    ],
    within: (months: number) => `within ${months} months`,
    of: (count: number) => `${count} of 20`,
    drawing: (of: { part: string; count: string; when: string }) =>
      `${of.part}: ${of.count} within the months shown${of.when}`,
    mostlyIn: (month: string) => `, most of them in ${month}`,
    catalogueOnly: 'catalogue only',
    entries: (count: string) => `catalogue and ${count} of yours`,
    error: (of: { lives: string }) =>
      `Each part was played ${of.lives} times: a chance of 10 in 100 is good to about ± 1.`,
    showAll: (count: number) => `Show all ${count} parts`,
    showFew: 'Show the likeliest only',
    openedName: (part: string) => `${part}: chance of failing`,
    value: (of: { three: string; twelve: string; twentyFour: string }) =>
      `${of.three} within 3 months, ${of.twelve} within 12, ${of.twentyFour} within 24`,
    nowDefective: (chance: string) => `Something wrong with it already: ${chance}.`,
    asleep: (chance: string) => `Failed without being noticed: ${chance}.`,
    moves: (cost: string) => `${cost} of the year ahead, with what it drags down.`,
  },

  units: {
    y: 'years',
    h: 'hours',
    d: 'days',
    start: 'starts',
    relinking: 'relinkings',
    min: 'minutes',
    '1': '',
  } as Readonly<Record<string, string>>,

  lives: {
    title: 'Ages, half gone on one line',
    says: [
      'The bar is the age now. The upright, in one line down the page, is the age by which half of such parts on this set have failed.',
      'The bracket runs from one in ten gone to nine in ten.',
    ],
    half: 'half gone by',
    unknown: 'age not known',
    age: (years: string) => `${years} old`,
    drawing: (of: { part: string; age: string; tenth: string; half: string; ninth: string }) =>
      `${of.part}: ${of.age}; one in ten gone by ${of.tenth}, half by ${of.half}, nine in ten by ${of.ninth}`,
    key: {
      age: 'age now',
      unknown: 'age not known, at most',
      half: 'half gone; one and nine in ten at the ends',
      look: 'looked at, nothing seen',
      found: 'something seen',
    },
  },

  knock: {
    title: 'What it takes with it',
    says: 'The thicker the line, the oftener, when the part fails.',
    from: (of: { chance: string }) => `fails within a year: ${of.chance}`,
    of: (of: { chance: string; cost: string }) => `${of.chance}, ${of.cost} each time`,
    starts: 'begins to fail',
    danger: 'Danger',
    never: (rate: string) => `${rate}, never priced`,
    often: 'often, 1 in 2 or more',
    some: 'sometimes',
    seldom: 'seldom, under 1 in 10',
    none: 'Nothing that is likely to fail takes much with it.',
  },

  table: {
    title: 'All parts, in figures',
    part: 'Part',
    months: (months: number) => `Fails within ${months} months, in 100`,
    stopping: 'Stops the set within 12, in 100',
    defective: 'Wrong already, in 100',
    cost: 'A year, with what it drags down',
    half: 'Half gone by',
  },

  rests: {
    title: 'What it rests on',
    says: (of: { entries: string; parts: string; alone: string }) =>
      `The catalogue and ${of.entries} of your entries, on ${of.parts}. ${of.alone} rest on the catalogue only.`,
    ofCatalogue:
      'The catalogue only: no entry bears on a part yet. What was seen, read and done sharpens it.',
    often:
      'A forecast tells how often, never when. The ranges are the world’s doubt; more running does not narrow them.',
    letDowns: (times: string, years: string) =>
      `Your answer that it left you without power ${times} in ${years}.`,
  },
} as const
