/**
 * Words about measured power.
 *
 * @module
 */

export const words = {
  title: 'Measured',
  says: 'What a meter or logger recorded: a table with a time and power, current or energy, or a recorded Signal K stream, one message a line. Its rows are folded, not kept.',
  choose: 'Recording',
  column: { time: 'Time is in', power: 'Power or current is in' },
  asRead: 'As its headings say',
  unit: 'Its unit',
  volts: 'Volts, where only current was measured',
  dates: 'Dates such as 3/4/2024',
  dayFirst: 'Day first',
  monthFirst: 'Month first',
  reading: (share: number) => `Reading, ${share} in 100`,
  wrong: 'It cannot be read yet:',
  found: (rows: string, hours: string, kWh: string, most: string) =>
    `${rows} rows, ${hours} h measured: ${kWh} kWh, at most ${most} kW.`,
  how: 'Read from',
  bad: (count: string) => `${count} rows were left out`,
  line: (line: number) => `line ${line}`,
  write: 'Write it into the log',
  written: 'Written. The plan follows it.',
  against: (measured: string, list: string) =>
    `While it runs the recording shows ${measured} kW on the mean, the list says ${list}.`,
  basis: {
    which: 'Reckon by',
    names: { list: 'The list of loads', recording: 'The recording', corrected: 'The list, corrected by it' },
  },
  curves: { recorded: 'as recorded', listed: 'as the list tells', corrected: 'the list, corrected' },
  signalPath: 'Signal K source, where there are several',
  curve: (p50: string, p95: string, p99: string) =>
    `Measured load and how long it lasts: half of the time ${p50} kW or more, one hour in twenty ${p95}, one in a hundred ${p99}.`,
  axis: 'share of the hours with power drawn',
} as const
