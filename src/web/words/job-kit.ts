/**
 * Words of the page of the pieces of a job.
 *
 * @module
 */

export const words = {
  title: 'Kit',
  says: 'Every piece that must be in hand before anything is undone. It stands here until it is held against the old one.',
  preparing: { say: 'Reading what goes with each part.', lead: 'The pieces follow.' },
  begin: 'You can begin.',
  beginLead: 'All that the job cannot do without is here and like the old.',
  nothing: 'Nothing has to be in hand for it.',
  wrong: (of: { each: string; any: string | undefined }) =>
    `The chance that what is bought is the wrong one (practice): ${of.each}.${of.any === undefined ? '' : ` At least one of them: ${of.any}.`}`,
  wrongPart: (of: { part: string; chance: string; days: string; piece: string; price: string | undefined }) =>
    `${of.part} ${of.chance}, then about ${of.days} more${of.price === undefined ? '' : ` or ${of.price} without power`}, and ${of.piece} where it is not taken back`,
  days: (count: number) => (count === 1 ? '1 day' : `${count} days`),
  stop: (of: { piece: string; lack: string }) => `Do not begin: ${of.piece} ${of.lack}.`,
  stopMore: (count: number) =>
    count === 1
      ? 'One more piece is not ready; it stands below.'
      : `${count} more pieces are not ready; they stand below.`,
  pieces: 'The pieces',
  piecesSay:
    'By who deals in them. Without one the set cannot go back together, unless it is only a nuisance to lack.',
  misfit: 'Does not match',
  nuisance: 'Only a nuisance',
  alsoFor: (parts: string) => `Serves ${parts} too`,
  count: (of: { count: number; spares: number }) =>
    of.spares === 0 ? `${of.count}` : `${of.count} and ${of.spares} spare`,
  goesAway: 'goes to the shop once it is out; agreed beforehand',
  oldNumber: (number: string) => `On the old one: ${number}`,
  newNumber: (number: string) => `on the new one: ${number}`,
  fitsByNumber: 'By their numbers they go in place of one another',
  thinkByNumber: (differences: string) => `By their numbers it goes in, but ${differences}`,
  order: (supplier: string) =>
    `Write down what was ordered, or is aboard: ${supplier.charAt(0).toLowerCase()}${supplier.slice(1)}`,
  orderOf: 'Untick what it is not',
  numberHint: 'Number on it',
  writeAboard: 'Write: aboard, and like the old',
  numberOrdered: (piece: string) => `Number of the ${piece} ordered, where it has one`,
  supplier: 'From whom',
  expected: 'Expected',
  expectedHint: '4 Dec 2026',
  notADay: 'A day, a month or a year: 4 Dec 2026.',
  writeOrder: 'Write: ordered',
  came: 'It came',
  fits: 'It is like the old one',
  misfits: 'It differs',
  differs: 'What differs from the old one',
  writeDiffers: 'Write: it does not match',
  writing: 'Writing…',
  whatWasWrong: (problems: string) => `Not written: ${problems}.`,
  written: 'Written.',
  leaveIt: 'Leave it for now',
  besides: (list: string) => `Ordered for it beyond this list: ${list}.`,
  done: (list: string) => `Done already: ${list}.`,
  nothingFor: (list: string) => `Nothing is bought for ${list}.`,
  settle: 'To settle first',
  settleSays:
    'What a supplier asks, and why. What the log tells is filled in; what you find out is written into it, and is there the next time too.',
  settleNone: 'Nothing is open: all that is asked is known.',
  settleOf: (of: { part: string; open: number; all: number }) =>
    of.open === 0 ? `${of.part}: all settled` : `${of.part}: ${of.open} of ${of.all} open`,
  number: 'Number or size on the old one',
  numberWhy: 'By it the new one is held against the old as soon as it is ordered.',
  onceOpen: 'Shows once it is open.',
  noNeed: 'Write “not needed” where the set does without it.',
  countAsk: 'How many has yours?',
  countWhy: (of: { count: number; counted: boolean }) =>
    of.counted ? `You have counted ${of.count}.` : `A usual set has ${of.count} (practice); a whole number.`,
  known: (answer: string) => `In the log: ${answer}`,
  writeAnswers: 'Write them down',
  lists: 'For suppliers',
  listsSay: 'A line for each piece with what must be told. Copy it as a message, or print the page.',
  listsNone: 'Nothing is left to be ordered.',
  piece: 'Piece',
  howMany: 'How many',
  toTell: 'To be told',
  open: (list: string) => `Still open: ${list}`,
  copy: 'Copy as a message',
  copied: 'Copied.',
  notCopied: 'This browser does not let it be copied: take it from the message below.',
  message: (supplier: string) => `Message: ${supplier}`,
  ready: 'To have ready',
  readySays: 'Tools, what is used up, and what must be arranged. None of it is counted above.',
  readyIs: { tool: 'tool', stuff: 'used up', arrange: 'to be arranged' },
  readyFor: (of: { name: string; is: string; parts: string }) => `${of.name} (${of.is}), for ${of.parts}`,
  fitsTitle: 'Does it fit?',
  fitsSays:
    'Bearings, shaft seals, O-rings, belts, threads, hoses, capacitors and batteries by their own numbers and sizes. Sizes of standards that were not at hand are recalled: measure the old one too.',
  fitsOld: 'On the old one',
  fitsNew: 'On the new one',
  fitsOldHint: '6205-2RS/C3',
  fitsNewHint: '6205-ZZ',
  readOnly: 'An invented boat: nothing can be written here.',
} as const
