/**
 * A decision brief as lines of text.
 *
 * @module
 */

import type { Brief } from '../alternatives/brief.js'
import type { BriefBlock, BriefPassage } from '../alternatives/brief-blocks.js'
import { colours } from './colours.js'
import { figure, tableText } from './table.js'

/** Lines are broken here, so that they can be read on a screen and on paper. */
const width = 110
const cellWidth = 38

export function briefText({ title, boatName, setLine, invented, day, passages, colophon }: Brief): string {
  return [
    colours.bold(`${title}: ${boatName}`),
    `${setLine}; ${day}`,
    ...(invented === undefined ? [] : [invented]),
    ...passages.flatMap(passageText),
    '',
    ...broken(colophon),
  ].join('\n')
}

function passageText({ title, says, blocks }: BriefPassage): string[] {
  return ['', colours.bold(title), ...(says === undefined ? [] : broken(says)), ...blocks.flatMap(blockText)]
}

function blockText(block: BriefBlock): string[] {
  switch (block.is) {
    case 'say':
      return broken(`${block.text}${block.bold ?? ''}`)
    case 'text':
      return broken([block.bold, block.text].filter(Boolean).join(' '))
    case 'list':
      return block.items.flatMap((item) => broken(item, '- '))
    case 'stop':
      return [...broken(`Stop: ${block.title}`), ...broken(block.text, '  ')]
    case 'number':
      return [colours.bold(block.number), ...broken(block.text)]
    case 'table':
      return [
        '',
        tableText(
          block.heads.map((head) => ({ head, wrap: cellWidth })),
          block.rows,
        ),
      ]
    case 'ranges':
      return ['', rangesText(block)]
    case 'signatures':
      return block.lines.map((line) => `${line}: ${'.'.repeat(40)}`)
  }
}

function rangesText({ heads, rows }: Extract<BriefBlock, { is: 'ranges' }>): string {
  const [name = '', , ...cells] = heads
  return tableText(
    [
      { head: name, wrap: cellWidth },
      ...['10 in 100', '50', '90'].map((head) => ({ head, align: 'right' }) as const),
      ...cells.map((head) => ({ head, align: 'right', wrap: 14 }) as const),
    ],
    rows.map(({ name: row, tag, low, middle, high, cells: told }) => [
      tag === undefined ? row : `${row} [${tag}]`,
      ...[low, middle, high].map(figure),
      ...told,
    ]),
  )
}

/** A text in lines, the first after a mark and the others below what it marks. */
function broken(text: string, mark = ''): string[] {
  const lines = ['']
  for (const word of text.split(' ')) {
    const line = lines.at(-1)!
    if (line !== '' && line.length + word.length + 1 + mark.length > width) lines.push(word)
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`
  }
  return lines.map((line, i) => `${i === 0 ? mark : ' '.repeat(mark.length)}${line}`)
}
