/**
 * Words of the page on which a job is taken apart and put back.
 *
 * @module
 */

export const words = {
  title: 'Taking apart',
  says: 'One step at a time: pictures, labels, then the spanner. Each step is in the log as soon as it is written.',
  print: 'Print this page with your browser: both lists come out, with the pictures.',
  count: (done: number, all: number) => `${done} of ${all} steps are apart`,
  backCount: (back: number, of: number) => `${back} of ${of} are back`,
  allBack: 'Everything is back.',
  toProof: 'What was opened is proved before it is turned, energised and left alone.',
  proof: 'The tests that are owed',
  nothing: {
    before: 'Neither parts nor steps: ',
    bold: 'nothing can be proposed.',
    lead: 'A quote or a decision names the parts of a job. Steps of your own can be written all the same.',
  },
  readOnly: 'A demonstration boat is only read: the steps are shown, and nothing can be written.',
  links: 'Leads of the windings are drawn on their own page too:',
  toLinks: 'winding links',
  out: 'The set leaves the boat for it',
  stop: (hazard: string) => `${hazard}: first answer this.`,
  stopSays: 'The step opens when every line is ticked. It holds for today.',
  notSo: (when: string) => `Not so: ${when}`,
  step: {
    title: 'Next step',
    says: 'What is typed and chosen is kept from the first letter, unsent too. After a reload it goes on from here.',
    ownTitle: 'A step of your own',
    own: 'Write a step of your own instead',
    proposed: 'Back to the step that is proposed',
    what: 'What is undone',
    pictures: 'Pictures before anything is touched',
    another: 'Another picture',
    leads: (marks: string) => `Leads that come off here: ${marks}. Label each before the first one is off.`,
    leadsUnknown: 'Leads come off here: label each before the first one is off.',
    fields: 'Leads, bag, torque, remark',
    write: 'It is apart: write it in',
    notNeeded: 'Not on this set, or stays as it is',
    busy: 'Writing…',
    written: (what: string) => `Written: ${what}.`,
    torqueRule: 'A torque only with where it is from: the place in the manual of the set.',
  },
  picture: {
    choose: (slot: string) => `Picture: ${slot}`,
    drop: 'Take it away',
    addArrow: 'Add an arrow',
    tip: (n: number, x: number, y: number) =>
      `Tip of arrow ${n}: ${x} from the left, ${y} from the top, of 100`,
    tail: (n: number, x: number, y: number) =>
      `Tail of arrow ${n}: ${x} from the left, ${y} from the top, of 100`,
    label: (n: number) => `What arrow ${n} shows`,
    dropArrow: (n: number) => `Take arrow ${n} away`,
    how: 'Drag an end, or go to it and use the arrow keys; with Shift in large steps.',
    noDrawing: 'HEIC: it is kept, and cannot be drawn on here.',
    pointing: (labels: string) => `, arrows to ${labels}`,
  },
  order: {
    title: 'Order of undoing',
    says: 'As it was done; below, what is still proposed. A step is corrected or taken back in the logbook.',
    done: (day: string) => `apart ${day}`,
    back: (day: string) => `back ${day}`,
    notNeeded: 'not needed',
    toCome: 'to come',
    leads: (said: string) => `Leads: ${said}`,
    joined: (said: string) => `Joined: ${said}`,
    pictureFirst: (said: string) => `Picture first: ${said}`,
  },
  back: {
    title: 'Putting back',
    says: 'The same list reversed. The picture from before stands beside the new one.',
    none: 'Nothing is apart yet.',
    next: (what: string) => `Put back: ${what}`,
    before: 'Before',
    now: 'Now',
    noBefore: 'No picture from before.',
    torque: (said: string) => `Torque: ${said}`,
    tick: 'It is back as it was: write it in',
    fields: 'Torque, remark, what differs',
  },
  wayOut: {
    title: 'Out of the boat',
    says: 'Largest rigid piece, openings, weight. Usual sizes are practice: measure before the first bolt.',
    measure: 'Measure',
    lift: 'Lifting',
  },
  picturesTitle: 'Pictures',
  leadsTitle: 'Labelling leads',
  loose: (count: number) =>
    count === 1
      ? 'One entry puts a step back that is not in the log any more.'
      : `${count} entries put steps back that are not in the log any more.`,
  shared: (places: string) => `Two steps claim the same place: ${places}. The one noted first stands first.`,
  cautions: [
    {
      hazard: 'The manual of the set comes first.',
      says: 'Steps and pictures here are practice, and no torque is from here.',
    },
    {
      hazard: 'Licensed people and local rules.',
      says: 'Fuel and electrical work, lifting and old lagging are theirs where rules say so.',
    },
  ],
} as const
