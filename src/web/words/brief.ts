/**
 * Words of the page of the decision brief; what it says itself comes with it.
 *
 * @module
 */

export const words = {
  title: 'Decision brief',
  link: 'Decision brief',
  waiting: {
    say: 'The brief waits until the answer stands.',
    answer: 'The histories are being played; then what bears on the answer is worked out.',
    stopped: 'It was stopped before all of it stood. Let it go on, and the brief follows.',
    word: 'working it out',
    bearing:
      'The answer stands. What is worth finding out, what would change it and when to replace are being worked out.',
    parts: (done: number) => `${done} of 3 are there.`,
  },
  failed: {
    say: 'Cannot tell: the reckoning failed.',
    lead: 'The log itself is untouched. What the program said of it:',
    again: 'Try again',
  },
  print: 'Two pages of A4 or Letter: print this page with your browser.',
  following: 'The log has changed; the brief follows.',
  ranges: 'Alternatives compared',
  stop: 'Stop',
  back: 'To the alternatives',
} as const
