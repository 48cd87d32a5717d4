/**
 * Fields of leads, and of taking apart and putting back.
 *
 * @module
 */

import { choice, type FieldsByKind, lines, more, number, remark, text, texts } from './field.js'

export const apartFields: FieldsByKind = {
  links: [
    choice('state', ['as-found', 'as-left']),
    choice('winding', ['four-leads', 'twelve-leads', 'own']),
    texts('joined'),
    texts('lines'),
    texts('sensing'),
    texts('labels'),
    more(choice('marks', ['nema', 'iec'])),
    more(texts('coils')),
    remark,
  ],
  'apart-step': [
    { key: 'job', takes: { as: 'name' } },
    number('n'),
    lines('what'),
    { key: 'leads', rows: [text('lead'), text('label'), text('from')], least: 0 },
    texts('joined'),
    text('bag.label'),
    number('bag.count'),
    text('bag.size'),
    more(number('torque.nm', 'N·m')),
    more(text('torque.source')),
    more(text('access')),
    remark,
  ],
  'refit-step': [
    { key: 'job', takes: { as: 'name' } },
    text('step'),
    number('torqueNm', 'N·m'),
    lines('differs'),
    remark,
  ],
}
