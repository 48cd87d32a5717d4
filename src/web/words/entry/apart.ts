/**
 * Fields of leads, and of taking apart and putting back.
 *
 * @module
 */

/** What a field is asked as, by its key; by kind and key where it differs between kinds. */
export const apartFields: Readonly<Record<string, string>> = {
  leads: 'Leads brought out',
  links: 'How they are linked',
  state: 'When they were so',
  winding: 'Winding',
  marks: 'How the leads are marked',
  joined: 'Leads that are joined',
  lines: 'What goes out from which lead',
  sensing: 'Where the regulator looks',
  labels: 'What is written on the leads',
  'bag.label': 'Bag of its fasteners: what is written on it',
  'bag.count': 'How many are in it',
  'bag.size': 'Their sizes',
  'torque.nm': 'Tightened to',
  'torque.source': 'Torque: where that is from',
  torqueNm: 'Tightened to',
  n: 'Place in the order',
  step: 'The step, by the id of its entry',
  access: 'Way in',
  lead: 'Lead',
  label: 'What is written on it',
  coils: 'Coils of its own',

  'apart-step.leads': 'Leads that came off',
  'apart-step.from': 'Where it was',
  'refit-step.differs': 'Otherwise than found',
  'apart-step.what': 'What was taken off',
}
