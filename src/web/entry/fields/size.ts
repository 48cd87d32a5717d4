/**
 * Fields of what draws power and of sets that could be fitted.
 *
 * @module
 */

import { excitationKinds } from '../../../logbook/bodies-set.js'
import {
  choice,
  type FieldsByKind,
  money,
  more,
  number,
  percent,
  remark,
  type Single,
  text,
  yesNo,
} from './field.js'

/** Hours of a day by what is going on aboard. */
const hoursOf = (key: string): readonly Single[] =>
  ['day', 'evening', 'night', 'cooking', 'laundry', 'charging'].map((occasion) =>
    number(`${key}.${occasion}`, 'h'),
  )

export const sizeFields: FieldsByKind = {
  load: [
    { key: 'id', takes: { as: 'name' } },
    { key: 'is', takes: { as: 'name' } },
    text('name'),
    number('runW', 'W'),
    number('powerFactor'),
    number('lockedRotorA', 'A'),
    choice('basis', ['nameplate', 'measured']),
    yesNo('softStarter'),
    number('shed'),
    more(number('count')),
    more(number('volts', 'V')),
    more(choice('leg', ['one', 'two', 'both'])),
    more(number('horsepower', 'hp')),
    more(choice('codeLetter', [...'ABCDEFGHJKLMNPRSTUV'])),
    more(percent('duty')),
    more(choice('season', ['all', 'cooling', 'heating', 'with-climate'])),
    ...hoursOf('hours').map(more),
    remark,
  ],
  habits: [
    ...hoursOf('setHours'),
    ...['hot', 'warm', 'mild', 'cold'].map((season) => number(`days.${season}`, 'd')),
    remark,
  ],
  space: [
    number('engineSpaceC', 'C'),
    number('altitudeM', 'm'),
    percent('humidity'),
    number('seaWaterC', 'C'),
    {
      key: 'wayOut',
      rows: [text('name'), number('widthMm', 'mm'), number('heightMm', 'mm')],
      least: 1,
    },
    number('liftKg', 'kg'),
    number('exhaustHoseMm', 'mm'),
    number('exhaustRiseMm', 'mm'),
    number('rawWaterHoseMm', 'mm'),
    number('ventCm2', 'cm²'),
    more(number('quietDb', 'dB')),
    more(number('quietAtM', 'm')),
    more(number('backgroundDb', 'dB')),
    remark,
  ],
  candidate: [
    { key: 'id', takes: { as: 'name' } },
    text('name'),
    number('ratingKw', 'kW'),
    money('price'),
    money('fitting'),
    number('weightKg', 'kg'),
    ...['lengthMm', 'widthMm', 'heightMm'].map((edge) => number(edge, 'mm')),
    more(number('ratingKva', 'kVA')),
    more(number('rpm', 'rpm')),
    more(choice('excitation', excitationKinds)),
    more(choice('aspiration', ['natural', 'turbo', 'turbo-cooled'])),
    more(number('sweptLitres', 'l')),
    more(number('transientReactancePercent', '%')),
    more(number('noiseDb', 'dB')),
    more(number('noiseAtM', 'm')),
    ...['lengthMm', 'widthMm', 'heightMm'].map((edge) => more(number(`largestPiece.${edge}`, 'mm'))),
    more(number('largestPiece.weightKg', 'kg')),
    more(number('deliveryDays', 'd')),
    more(number('fittingDays', 'd')),
    more(number('guaranteeYears', 'years')),
    more(number('used.years', 'years')),
    more(number('used.hours', 'h')),
    remark,
  ],
}
