/**
 * Fields of the set, the boat, her use and what her owner reckons with.
 *
 * @module
 */

import { excitationKinds, qualities } from '../../../logbook/bodies-set.js'
import {
  choice,
  type FieldsByKind,
  lines,
  meter,
  money,
  more,
  number,
  part,
  percent,
  remark,
  text,
  yesNo,
} from './field.js'

export const setFields: FieldsByKind = {
  fitted: [part(), choice('quality', qualities), meter, more(text('partNumber')), remark],
  overrule: [text('path'), number('value'), lines('because')],
  set: [
    text('name'),
    number('ratingKw', 'kW'),
    { key: 'volts', takes: { as: 'numbers' } },
    number('hertz', 'Hz'),
    number('rpm', 'rpm'),
    choice('excitation', excitationKinds),
    { key: 'built', takes: { as: 'date' } },
    more({ key: 'aboardSince', takes: { as: 'date' } }),
    more(number('hoursWhenAboard', 'h')),
    more(choice('governor', ['mechanical', 'electronic'])),
    more(choice('fuelSolenoid', ['energised-to-run', 'energised-to-stop'])),
    more({ key: 'has', takes: { as: 'parts' } }),
    more({ key: 'hasNot', takes: { as: 'parts' } }),
    choice('standing', ['in-use', 'spare', 'gone']),
    remark,
  ],
  boat: [
    text('name'),
    number('lengthM', 'm'),
    choice('water', ['salt', 'fresh']),
    number('priceFactor'),
    { key: 'monthsInUse', takes: { as: 'months' } },
    remark,
  ],
  terms: [
    number('yearsKept', 'years'),
    number('yearsKeptAtLeast', 'years'),
    number('yearsKeptAtMost', 'years'),
    money('ownPerHour'),
    money('paidPerHour'),
    money('travelPerTrip'),
    money('mostInOneYear'),
    money('doWithoutPrice'),
    money('doWithoutPerYear'),
    number('doWithoutShortPercent', '%'),
    number('taxPercent', '%'),
    money('fuelPerLitre'),
    number('realInterestPercent', '%'),
    percent('diligence'),
    yesNo('learnFromJobs'),
    {
      key: 'withoutPower',
      rows: [
        { key: 'months', takes: { as: 'months' } },
        { key: 'curve', takes: { as: 'points' } },
      ],
      least: 1,
    },
    remark,
  ],
  use: [
    {
      key: 'months',
      rows: [
        { key: 'month', takes: { as: 'month' } },
        number('hours', 'h'),
        number('starts'),
        percent('needShare'),
        percent('lowLoadShare'),
      ],
      least: 1,
    },
    remark,
  ],
}
