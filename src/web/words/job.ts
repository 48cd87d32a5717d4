/**
 * Words of the pages of a job that all of them share, and of the first of them.
 *
 * @module
 */

export const words = {
  preparing: { say: 'Reading the log.', lead: 'What it says of the job follows.' },
  way: 'Pages of the job',
  which: 'Job',
  option: (name: string, state: string) => `${name.replaceAll('-', ' ')}, ${state}`,
  states: {
    offered: 'offered',
    decided: 'decided',
    ordered: 'being ordered',
    apart: 'apart',
    done: 'done',
    proved: 'proved',
  },
  notFound: (name: string) => `The log speaks of no job called “${name}”.`,
  notFoundNext: 'Choose one that it does speak of above.',
  none: {
    say: 'No job yet.',
    lead: 'A job begins with a decision, or with a quote that somebody offers. Its parts, pieces, days and tests then have pages of their own here.',
    decide: 'Settle what to do',
    write: 'Write a quote into the log',
  },
  head: {
    title: 'Job',
    says: 'One job from the offer to the proof. Where it stands follows from the entries that name it.',
    states: {
      offered: 'a price is offered, and nothing is settled',
      decided: 'it is settled',
      ordered: 'it is being ordered',
      apart: 'the set is apart',
      done: 'the work is done, and not proved yet',
      proved: 'done and proved',
    },
    next: {
      offered: 'Next: whether to take it. The alternatives tell the quote above which to walk away.',
      decided: 'Next: what belongs with it, and the pieces to order before anything is undone.',
      ordered: 'Next: hold each piece against the old one before the set is opened.',
      apart: 'Next: put back in the order in which it came apart, then the tests.',
      done: 'Next: the tests that are owed before it is turned, energised and left alone.',
      proved: 'What it took, against what was thought, stands below as far as it was written down.',
    },
    toProof: 'The tests that are owed',
  },
  parts: {
    title: 'What it is to do',
    says: 'As decided, else as quoted.',
    none: 'Neither a quote nor a decision names its parts.',
    isDone: 'Done',
  },
  entries: { title: 'In the log', says: 'Every entry that names the job.' },
} as const
