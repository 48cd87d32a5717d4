/**
 * Troubles and their causes as public manuals of generating sets pair them, as far as the fault model has both.
 *
 * The list was fixed before the model was first asked. `held` says whether the pair was read in the manual or is
 * remembered of its table. Manuals of sets cooled by air or a radiator say nothing of raw water and wet exhausts; a fouled
 * radiator stands as the fouled exchanger.
 *
 * @module
 */

export interface TroublePair {
  readonly trouble: string
  readonly cause: string
  readonly manual: string
  readonly held: 'seen' | 'recalled'
}

function pairs(
  manual: string,
  held: TroublePair['held'],
  table: Readonly<Record<string, readonly string[]>>,
): TroublePair[] {
  return Object.entries(table).flatMap(([trouble, causes]) =>
    causes.map((cause) => ({ trouble, cause, manual, held })),
  )
}

export const troublePairs: readonly TroublePair[] = [
  ...pairs('TM 5-6115-585-34, 8-2, test on equipment', 'seen', {
    'no-volts': ['regulator-dead'],
    'a-few-volts': ['diode-shorted', 'diode-open', 'regulator-dead'],
    'volts-low-unloaded': ['diode-open', 'diode-shorted'],
  }),
  ...pairs('TM 9-6115-464-34, speed control', 'seen', { hunts: ['governor-sticks'] }),
  ...pairs('TM 55-1905-223-24-3, generator assembly', 'seen', { 'a-few-volts': ['exciter-open'] }),
  ...pairs('TM 9-6115-644-10, table 2-3', 'seen', { 'white-smoke': ['light-load'] }),
  ...pairs('TM 5-6115-584 and 5-6115-585, trouble tables of engine and generator', 'recalled', {
    'no-crank': ['battery-weak', 'battery-cable-bad', 'start-relay-open', 'starter-worn'],
    'cranks-slowly': ['battery-weak', 'battery-cable-bad', 'starter-worn'],
    'cranks-no-fire': [
      'fuel-filter-clogged',
      'fuel-air',
      'fuel-solenoid-drops',
      'preheat-dead',
      'lift-pump-weak',
    ],
    'hard-start-cold': ['preheat-dead', 'battery-weak', 'compression-low', 'injector-bad'],
    'dies-as-if-starved': ['fuel-filter-clogged', 'tank-pickup-blocked', 'fuel-air', 'lift-pump-weak'],
    hunts: ['fuel-air', 'fuel-filter-clogged', 'fuel-dirty'],
    'speed-drops-on-load': ['overload', 'fuel-filter-clogged', 'air-starved', 'injection-pump-worn'],
    'hot-on-load': ['coolant-low', 'belt-slack', 'thermostat-stuck', 'exchanger-fouled', 'overload'],
    'oil-pressure-low': ['oil-low', 'oil-switch-false', 'oil-pressure-lost', 'oil-diluted'],
    'black-smoke': ['air-starved', 'overload', 'injector-bad'],
    'blue-smoke': ['compression-low', 'light-load', 'oil-low'],
    'white-smoke': ['preheat-dead', 'injector-bad', 'fuel-dirty'],
    vibrates: ['mounts-gone', 'coupling-cracked', 'bearing-worn', 'injector-bad'],
    'battery-goes-flat': ['charging-dead', 'belt-slack', 'battery-weak', 'battery-cable-bad'],
    'no-volts': ['residual-lost'],
    'a-few-volts': ['rotor-open'],
    'volts-low-unloaded': ['regulator-setting', 'speed-set-wrong'],
    'volts-high': ['regulator-full-on', 'regulator-setting'],
    flicker: ['regulator-setting', 'link-loose', 'governor-sticks'],
    'hot-varnish': ['overload', 'alternator-airless', 'stator-shorted-turns'],
    growls: ['bearing-worn', 'coupling-cracked'],
    'breaker-trips': ['overload', 'breaker-weak', 'stator-to-earth'],
    'stops-in-seconds': ['oil-switch-false', 'oil-low', 'speed-signal-lost', 'control-contact'],
    'stops-when-hot': ['coolant-low', 'exchanger-fouled', 'heat-switch-false'],
    'oil-rises': ['oil-diluted', 'injector-bad'],
    'milky-oil': ['head-gasket'],
    'coolant-lost': ['coolant-low', 'head-gasket'],
  }),
]
