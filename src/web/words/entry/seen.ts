/**
 * Fields of what was read, seen and stopped.
 *
 * @module
 */

/** What a field is asked as, by its key; by kind and key where it differs between kinds. */
export const seenFields: Readonly<Record<string, string>> = {
  meterHours: 'Hours on the meter',
  starts: 'Starts counted',
  newMeterHours: 'The new meter showed',
  oldMeterHours: 'The old one showed last',
  about: 'Looked at',
  part: 'Part',
  mode: 'How it fails, if that is known',
  verdict: 'What the look showed',
  seen: 'What was seen, in your words',
  check: 'By which check',
  remark: 'Remark',
  test: 'Test',
  values: 'Measured',
  conditions: 'Under these conditions',
  name: 'What was measured',
  value: 'Value',
  unit: 'Unit',
  daysWithoutPower: 'Days you wanted power and had none',
  curedSameDay: 'Cured aboard within the day',
  'cause.part': 'What failed, if known',
  'cause.mode': 'How it failed',
  text: 'In your words',
  times: 'Times',
  years: 'Within',
  of: 'Everything is in the log of',
  danger: 'Danger',
  how: 'How it was made safe',
  'at.part': 'At which part',

  'note.text': 'In your words',
  'reading.part': 'Of which part',
  'reading.answers': 'Told in words',
  'reading.is': 'Answer',
  'reading.testedBy': 'Who measured it',
  'reading.instrument': 'With what',
  'passed-over.about': 'Stop line or test, by its name in the program',
}
