/**
 * Fields of work: done, offered, paid, ordered, decided, planned.
 *
 * @module
 */

import { activityStates, needed, weekdays } from '../../../logbook/bodies-activity.js'
import { orderStates } from '../../../logbook/bodies-order.js'
import { qualities } from '../../../logbook/bodies-set.js'
import { deeds, leavable, paymentStages } from '../../../logbook/bodies-work.js'
import {
  choice,
  type FieldsByKind,
  lines,
  meter,
  mode,
  money,
  more,
  number,
  part,
  percent,
  type Rows,
  remark,
  tax,
  text,
  texts,
  yesNo,
} from './field.js'

/** What is put right in an alternative. */
export const alternativeParts: Rows = {
  key: 'parts',
  rows: [
    part(),
    choice('outcome', ['renewed', 'reconditioned', 'cleared', 'patched']),
    more(mode()),
    more(number('quality')),
    more(percent('agesLess')),
  ],
  least: 1,
}

export const workFields: FieldsByKind = {
  work: [
    {
      key: 'parts',
      rows: [
        part(),
        choice('did', deeds),
        choice('was', ['failed', 'defective', 'sound']),
        more(choice('quality', qualities)),
        more(mode()),
      ],
      least: 1,
    },
    choice('by', ['owner', 'workshop', 'both']),
    choice('why', ['failed', 'found', 'preventive', 'not-known']),
    lines('what'),
    money('cost'),
    more(number('workHours.owner', 'h')),
    more(number('workHours.paid', 'h')),
    more({ key: 'job', takes: { as: 'name' } }),
    meter,
    remark,
  ],
  quote: [
    { key: 'job', takes: { as: 'name' } },
    money('amount'),
    choice('firmness', ['firm', 'estimate']),
    yesNo('subjectToStripDown'),
    { key: 'covers.parts', rows: [part(), choice('did', deeds)], least: 1 },
    { key: 'excludes', takes: { as: 'several', options: leavable } },
    lines('what'),
    text('offeredBy'),
    more({ key: 'includes', takes: { as: 'several', options: leavable, perhaps: true } }),
    more(lines('alsoExcludes')),
    ...tax,
    more(number('days', 'd')),
    more({ key: 'readyBy', takes: { as: 'date' } }),
    more(number('daysOut', 'd')),
    more(number('guaranteeMonths', 'months')),
    more({ key: 'validUntil', takes: { as: 'date' } }),
    more({
      key: 'stagePayments',
      rows: [
        choice('when', paymentStages),
        percent('share'),
        money('amount'),
        { key: 'at', takes: { as: 'date' } },
      ],
      least: 0,
    }),
    more(text('currency')),
    remark,
  ],
  bill: [
    money('amount'),
    text('what'),
    text('billedBy'),
    ...tax,
    more({ key: 'parts', takes: { as: 'parts' } }),
    more({ key: 'job', takes: { as: 'name' } }),
    remark,
  ],
  particulars: [
    part(),
    text('number'),
    { key: 'answers', rows: [{ key: 'question', takes: { as: 'name' } }, text('answer')], least: 1 },
    more({ key: 'piece', takes: { as: 'name' } }),
    remark,
  ],
  order: [
    choice('state', orderStates),
    {
      key: 'lines',
      rows: [
        part(),
        { key: 'piece', takes: { as: 'name' } },
        number('count'),
        text('number'),
        yesNo('fits'),
        text('differs'),
      ],
      least: 1,
    },
    text('supplier'),
    { key: 'expected', takes: { as: 'date' } },
    money('price'),
    ...tax,
    more({ key: 'job', takes: { as: 'name' } }),
    remark,
  ],
  decision: [
    lines('choice'),
    lines('because'),
    money('walkAwayPrice'),
    more({ key: 'job', takes: { as: 'name' } }),
    more({ key: 'parts', rows: [part(), choice('did', deeds)], least: 0 }),
    remark,
  ],
  activity: [
    { key: 'job', takes: { as: 'name' } },
    { key: 'name', takes: { as: 'name' } },
    text('what'),
    texts('after'),
    ...['low', 'usual', 'high'].map((end) => number(`days.${end}`, 'd')),
    { key: 'needs', takes: { as: 'several', options: needed, perhaps: true } },
    yesNo('inOneRun'),
    choice('state', activityStates),
    remark,
  ],
  'free-days': [
    choice('who', needed),
    { key: 'weekdays', takes: { as: 'several', options: weekdays, perhaps: true } },
    texts('days'),
    texts('notDays'),
    more({ key: 'months', rows: [{ key: 'month', takes: { as: 'month' } }, percent('share')], least: 0 }),
    remark,
  ],
  alternative: [
    text('name'),
    choice('now', ['leave', 'mend', 'replace', 'give-up']),
    alternativeParts,
    { key: 'job', takes: { as: 'name' } },
    money('besides'),
    money('price'),
    number('days'),
    text('replaceWith'),
    number('later.year', 'years'),
    text('later.with'),
    remark,
  ],
}
