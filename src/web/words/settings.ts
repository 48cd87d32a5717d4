/**
 * Words of the settings.
 *
 * @module
 */

/** Money that the catalogue knows a rate for. */
export const currencies = [
  'EUR',
  'GBP',
  'USD',
  'CHF',
  'CAD',
  'AUD',
  'NZD',
  'SEK',
  'NOK',
  'DKK',
  'PLN',
  'JPY',
] as const

export const settings = {
  title: 'Settings',
  says: 'What is changed here is an entry of the log like any other: it can be corrected and taken back, and the figures follow it.',
  say: (boat: string) => `How things are said and reckoned aboard ${boat}.`,
  readOnly: 'A demonstration boat is only read. Enter your own boat to change this.',
  units: {
    title: 'Units',
    says: 'As spoken aboard. What is kept never changes with them.',
    names: {
      temperature: 'Temperature',
      volume: 'Volume',
      pressure: 'Pressure',
      length: 'Length',
      power: 'Power',
    },
    options: {
      temperature: { celsius: '°C', fahrenheit: '°F' },
      volume: { litre: 'litres', 'us-gallon': 'US gallons', 'imperial-gallon': 'imperial gallons' },
      pressure: { kilopascal: 'kPa', bar: 'bar', psi: 'psi' },
      length: { metre: 'metres', foot: 'feet' },
      power: { kilowatt: 'kW', horsepower: 'hp' },
    },
    notSaid: 'not said',
  },
  words: {
    title: 'Words',
    says: 'Whose words the program speaks of wiring.',
    british: 'Earth, RCD, spanner',
    american: 'Ground, GFCI or ELCI, wrench',
  },
  use: {
    title: 'Use',
    write: 'Write the use into the log',
    says: 'A usual year. Months left out: the set does not run in them.',
  },
  money: {
    title: 'Money',
    says: 'Prices of the catalogue are brought to your money, then multiplied by the price factor.',
    currency: 'Currency of every amount in the log',
    currencyHelp: 'Changing it changes no amount that is written: it says what they are in.',
    factor: 'Price factor',
    factorHelp: '1 is what things cost on average; 1.2 where everything is a fifth dearer.',
    terms: 'What you reckon with',
    termsSay: 'Left empty: the catalogue’s usual figure is taken.',
    write: 'Write it into the log',
    written: 'Written. All figures follow it.',
  },
  overruled: {
    title: 'Figures you set',
    says: 'Figures of the catalogue that you know better. Taken back, the catalogue’s own counts again.',
    none: 'None. Any figure on a page opens to its source, and to a field to set it yourself.',
    heads: { figure: 'Figure', yours: 'Yours', catalogue: 'Catalogue', because: 'Because', since: 'Since' },
    takeBack: 'Take it back',
    takenBack: 'Back to the catalogue’s figure.',
  },
  lessons: {
    title: 'Your boats’ lessons',
    says: 'For whoever keeps several boats. It holds for all of them, and stands in this data folder, in no boat’s log.',
    say: 'What the sets of your other boats have shown moves what is expected of this one before her own log is read: less the better her log tells. Nothing of it leaves this machine or goes into a boat file, and the boats that came with the program teach nothing.',
    heard: 'Let my boats hear one another’s lessons',
    shown: 'Where lessons were heard, forecast, alternatives and brief say so.',
  },
  browsers: {
    title: 'Another browser',
    says: 'Each browser on this machine is let in by an address that works once.',
    ask: 'Make an address for one more browser',
    address: 'Open this in the other browser; it works once:',
  },
} as const
