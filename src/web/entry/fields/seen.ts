/**
 * Fields of what was read, seen and stopped.
 *
 * @module
 */

import {
  choice,
  type FieldsByKind,
  lines,
  meter,
  mode,
  more,
  number,
  part,
  remark,
  type Single,
  text,
  yesNo,
} from './field.js'

const measured: readonly Single[] = [text('name'), number('value'), { key: 'unit', takes: { as: 'unit' } }]

export const seenFields: FieldsByKind = {
  hours: [number('meterHours', 'h'), more(number('starts')), remark],
  'meter-changed': [number('newMeterHours', 'h'), number('oldMeterHours', 'h'), remark],
  finding: [
    { key: 'about', rows: [part(), mode()], least: 1 },
    choice('verdict', ['nothing-seen', 'defect-seen', 'unsure']),
    lines('seen'),
    more({ key: 'check', takes: { as: 'check' } }),
    meter,
    remark,
  ],
  reading: [
    { key: 'test', takes: { as: 'check' } },
    part(),
    { key: 'values', rows: measured, least: 1 },
    more({ key: 'conditions', rows: measured, least: 0 }),
    more({ key: 'answers', rows: [text('name'), text('is')], least: 0 }),
    more(text('testedBy')),
    more(text('instrument')),
    meter,
    remark,
  ],
  'passed-over': [text('about'), lines('because'), remark],
  stop: [
    number('daysWithoutPower'),
    yesNo('curedSameDay', 'no'),
    part('cause.part'),
    mode('cause.mode', 'cause.part'),
    lines('seen'),
    meter,
    remark,
  ],
  note: [lines('text')],
  letdowns: [number('times'), number('years', 'years'), remark],
  complete: [{ key: 'of', takes: { as: 'several', options: ['stops', 'work'] } }, remark],
  'danger-safe': [{ key: 'danger', takes: { as: 'danger' } }, lines('how'), part('at.part'), remark],
}
