/**
 * `gensettle log add KIND`: one command for each kind.
 *
 * @module
 */

import type { Command } from 'commander'
import { type Kind, kinds } from '../logbook/kind-names.js'
import { laidOutWhenCalled } from './program-parts.js'

const about: Readonly<Record<Kind, readonly [string, string]>> = {
  boat: ['particulars of the boat', 'boat --boat petrel --name Petrel --currency EUR --water salt'],
  set: [
    'particulars of a set',
    'set --set main --rating-kw 7 --rpm 1500 --volts 230 --hertz 50 --built 2004',
  ],
  fitted: ['a part was fitted', 'fitted sea-pump-impeller --quality original --from 2023-04'],
  hours: ['what the hour meter showed', 'hours 5240 --from 2024-05-12'],
  'meter-changed': ['another hour meter, or it was set back', 'meter-changed 0 --old-meter-hours 4100'],
  use: ['a usual year', 'use --months "5:60:40:0.9:0.3;6:80:50:0.9:0.3;7:80:50:1:0.3"'],
  terms: ['what you reckon with', 'terms --years-kept 8 --paid-per-hour 70 --own-per-hour 10'],
  overrule: [
    'a figure of the catalogue that you know better',
    'overrule parts.sea-pump-impeller.modes.wear.scale 900',
  ],
  finding: ['a look at parts', 'finding --part exhaust-elbow --defect-seen "salt crust at the joint"'],
  reading: [
    'what a test showed',
    'reading insulation --values resistance:1.8:Mohm --conditions winding:18:C',
  ],
  'passed-over': [
    'a stop line or a test that is owed, passed over with a reason',
    'passed-over vibration --because "no meter aboard until spring"',
  ],
  stop: [
    'the set stopped, or would not start',
    'stop --from 2024-07-02 --until 2024-07-05 --days 3 --cause sea-pump-impeller',
  ],
  case: [
    'a case of something wrong; "gensettle faults" writes it for you',
    'case case-1 --symptoms steam:present --checks impeller:vanes-gone --lines flooding:not-so',
  ],
  letdowns: ['how often the set let you down, from memory', 'letdowns 4 --years 3'],
  complete: ['a span of which everything is in the log', 'complete stops work --from 2019 --until 2024'],
  'danger-safe': ['a danger was made safe', 'danger-safe carbon-monoxide --how "hose renewed, alarm tested"'],
  work: ['work done', 'work --parts sea-pump-impeller:renewed --by owner --why preventive'],
  quote: [
    'a price offered',
    'quote rewind 2400 --firmness firm --subject-to-strip-down yes --covers-parts stator-winding:renewed',
  ],
  bill: ['money asked for', 'bill 180 --parts sea-pump-impeller'],
  particulars: [
    'what a part was found to be, before one is ordered',
    'particulars outboard-bearing 6305-2RS/C3 --answers "shaft-size:25 mm"',
  ],
  order: [
    'pieces that were ordered, came, or were checked against the old',
    'order ordered --lines "sea-pump-body::1:P-40;sea-pump-body:gasket:2" --expected 2026-12-04',
  ],
  activity: [
    'something that is to be done in a job, or that was begun or done',
    'activity elbow fit-elbow "Fit the elbow" --after get-elbow --days-low 0.5 --days-usual 1 --days-high 3 --needs owner',
  ],
  'free-days': [
    'days on which somebody can work, or the weather lets outside work go',
    'free-days owner saturday sunday --not-days 2026-12',
  ],
  links: [
    'how the leads of the alternator are joined, as found or as left',
    'links --state as-found --winding four-leads --joined T2-T3 --lines L=T1,N=T4 --sensing S1=T1,S2=T4',
  ],
  'apart-step': [
    'something taken off in a job, so that it goes back as it was; see "gensettle job apart"',
    'apart-step --job rewind --n 3 --what "end cover off" --bag-label "end cover" --bag-count 6 --bag-size "M6 x 20"',
  ],
  'refit-step': ['a step of a job put back', 'refit-step --job rewind --step 01J… --torque-nm 24'],
  alternative: [
    'something you could do, or one that is laid out changed or left out',
    'alternative elbow-only "Renew the elbow, and see" --now mend --parts exhaust-elbow:renewed --price 700',
  ],
  load: ['something that draws power', 'load galley-oven oven --run-w 2300 --basis measured --shed 1'],
  'house-rule': ['loads that are never on together', 'house-rule baking oven water-heater'],
  habits: ['when the set runs', 'habits --set-hours-evening 3 --set-hours-cooking 1.5 --days-warm 90'],
  space: ['where the set stands, and the way to it', 'space --engine-space-c 48 --way-out "hatch:600:700"'],
  candidate: ['a set that is offered', 'candidate smaller 5 --price 9200 --weight-kg 180'],
  decision: ['what you settled', 'decision "have it rewound" --job rewind'],
  measured: [
    'what a meter recorded; "gensettle measured" reads the recording and writes it',
    'measured --body \'{"of":"set", …}\'',
  ],
  note: ['anything else', 'note "runs rough when cold"'],
  'photograph-removed': [
    'the bytes of a photograph are to go',
    'photograph-removed <sha256> --because "shows a face"',
  ],
}

export function layOutAdd(add: Command): void {
  for (const kind of kinds) {
    const [description, example] = about[kind]
    laidOutWhenCalled(add, kind, description, async (made) =>
      (await import('./program-log-kind.js')).layOutKind(made, { kind, example }),
    )
  }
}
