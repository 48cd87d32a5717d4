/**
 * Words of what bears on an answer.
 *
 * @module
 */

export const bearing = {
  waits: 'This is worked out once the figures above stand.',
  working: 'Being worked out: further histories are played, and the page stays usable meanwhile.',
  word: 'working it out',
  following: 'These are figures of the prices before; those of the new ones follow.',
  failed: (problem: string) => `This could not be worked out: ${problem}.`,

  finding: {
    title: 'Worth finding out first',
    says: 'What a look saves on average by choosing after it, and what it takes. Only looks that surely pay are listed here.',
    look: 'Look',
    takes: 'Takes',
    worth: 'Worth',
    after: 'And then',
    others: 'Looks that do not pay, and what it would be worth to know a price or a wait',
    tooSmall: (count: string) => `${count} other looks cannot be worth what they take.`,
    quantity: 'To know for certain',
    atMost: 'Worth at most',
    how: 'How it could be known better',
    none: 'not worth asking for',
    figure: {
      name: (look: string) => `${look}: what it is worth`,
      from: 'simulated: each history weighed by the chance of what the look shows in it; chosen on one half of the histories, valued on the other, and the other way round',
      moves: 'How good the check is, what failures cost, and the price of a day without power.',
    },
    taking: {
      name: (look: string) => `${look}: what it takes`,
      from: 'hands, opening and trips at their rates, and the fault that it may put in; the catalogue says how long a check takes, as common practice',
      moves: 'Your own hour, a paid hour and a visit of a workshop, under “Change and see”.',
    },
    knowing: {
      name: 'What it would be worth to know it',
      from: 'simulated: the cost of each alternative fitted to it on one half of the histories, valued on the other',
      moves: 'At most, because nobody learns it for certain.',
    },
  },

  changes: {
    title: 'What would change it',
    says: 'Each input tried by itself, all else as it is. The line runs from how far ahead the first choice is at the low value (ring) to the high one (bar); left of nought another alternative is ahead.',
    input: 'Input',
    now: 'now',
    ahead: 'First choice ahead by',
    turns: 'Where it changes hands',
    behind: 'The numbers behind',
    low: 'At the low value',
    high: 'At the high value',
    drawing: (of: { input: string; low: string; high: string }) =>
      `${of.input}: at its low value the first choice is ahead by ${of.low}, at its high value by ${of.high}`,
    keyLow: 'at the low value',
    keyHigh: 'at the high value',
    keyNought: 'a tie: left of it another alternative is ahead',
    one: 'Only one alternative is open: nothing can change the answer.',
    maps: 'Two inputs at once',
    map: (across: string, down: string) => `${across}, against ${down}`,
    here: 'you are here',
    mapDrawing: (of: { across: string; down: string; rows: string }) =>
      `Best alternative by ${of.across} and ${of.down}. ${of.rows}`,
    mapRow: (down: string, first: string) => `${down}: ${first}`,
    mapFrom: (at: string, name: string) => `from ${at} ${name}`,
    leadFigure: {
      name: (input: string) => `${input}: how far ahead the first choice is`,
      from: 'simulated on the same draws as the figures above; where the input bears in a straight line, the same histories weighed anew',
    },
  },

  when: {
    title: 'When to replace, if not now',
    says: 'The old set year by year against another one kept for as long as it is cheapest.',
    none: 'No other set is among the alternatives.',
    behind: 'Year by year',
    year: 'Year',
    marginal: 'A further year with the old set',
    limit: 'Jobs mended up to',
    adds: 'Replacing after it adds',
    always: 'always mended',
    figures: {
      marginal: {
        name: (year: string) => `Year ${year} with the old set`,
        from: 'simulated: what keeping the old set through this year as well costs over parting with it before',
        moves: 'Prices, the years you keep the boat, and what the log says of the set.',
      },
      limit: {
        name: (year: string) => `Year ${year}: jobs mended up to`,
        from: 'the limit that came out cheapest when jobs above it led to another set, on histories of its own',
        moves: 'The price of another set, and of a day without power.',
      },
      adds: {
        name: (year: string) => `Replacing after year ${year}, against the best choice`,
        from: 'simulated on the same histories as keeping it; ± is one standard error',
        moves: 'The price of another set, and how long it takes to come.',
      },
    },
  },
} as const
