/**
 * A decision brief as one file of HTML that needs nothing else and prints on two pages.
 *
 * @module
 */

import { type Brief, isShort } from '../alternatives/brief.js'
import type { BriefBlock, BriefPassage } from '../alternatives/brief-blocks.js'
import { type Drawing, rangeDrawings, type Shape, widthsDrawing } from '../alternatives/brief-drawing.js'
import { briefStyle } from './brief-style.js'
import { safe } from './page-html.js'

export function briefHtml(brief: Brief): string {
  const { title, boatName, setLine, invented, day, passages, colophon } = brief
  const head = `${title}, ${boatName}`
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(head)}</title>
<style>${briefStyle}</style>
</head>
<body${isShort(brief) ? ' class="roomy"' : ''}>
<header><h1>${safe(head)}</h1><p>${safe([setLine, day, invented].filter(Boolean).join('; '))}</p></header>
<main>
${passages.map(passageHtml).join('\n')}
</main>
<footer><p>${safe(colophon)}</p></footer>
</body>
</html>
`
}

function passageHtml({ title, says, fine, blocks }: BriefPassage): string {
  const wide = blocks.some(({ is }) => is === 'ranges')
  const look = wide ? ' class="wide"' : fine ? ' class="small"' : ''
  const margin = `<div class="margin"><h2>${safe(title)}</h2>${says === undefined ? '' : `<p>${safe(says)}</p>`}</div>`
  return `<section${look}>${margin}<div>${blocks.map(blockHtml).join('')}</div></section>`
}

function blockHtml(block: BriefBlock): string {
  switch (block.is) {
    case 'say':
      return `<p class="say">${safe(block.text)}<b>${safe(block.bold ?? '')}</b></p>`
    case 'text':
      return `<p>${block.bold === undefined ? '' : `<b>${safe(block.bold)}</b> `}${safe(block.text)}</p>`
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${safe(item)}</li>`).join('')}</ul>`
    case 'stop':
      return `<div class="stop"><p><span class="tag">Stop</span> <b>${safe(block.title)}</b></p><p>${safe(block.text)}</p></div>`
    case 'number': {
      const drawing = block.widths === undefined ? '' : drawn(widthsDrawing(block.widths))
      return `<p class="number">${safe(block.number)}</p>${drawing}<p>${safe(block.text)}</p>`
    }
    case 'table':
      return tableHtml(block)
    case 'ranges':
      return rangesHtml(block)
    case 'signatures':
      return `<ul class="signatures">${block.lines.map((line) => `<li>${safe(line)}</li>`).join('')}</ul>`
  }
}

function tableHtml({ heads, rows }: Extract<BriefBlock, { is: 'table' }>): string {
  const body = rows.map(([first = '', ...cells]) => {
    const others = cells.map((cell) => `<td>${safe(cell)}</td>`).join('')
    return `<tr><th scope="row">${safe(first)}</th>${others}</tr>`
  })
  return `<table>${headsHtml(heads)}<tbody>${body.join('')}</tbody></table>`
}

function rangesHtml({ heads, rows }: Extract<BriefBlock, { is: 'ranges' }>): string {
  const drawings = rangeDrawings(rows)
  const body = rows.map(({ name, tag, cells }, i) => {
    const word = tag === undefined ? '' : ` <span class="tag">${tag}</span>`
    const numbers = cells.map((cell) => `<td>${safe(cell)}</td>`).join('')
    return `<tr><th scope="row">${safe(name)}${word}</th><td class="draws">${drawn(drawings[i]!)}</td>${numbers}</tr>`
  })
  return `<table class="ranges">${headsHtml(heads)}<tbody>${body.join('')}</tbody></table>`
}

function headsHtml(heads: readonly string[]): string {
  const cells = heads.map((head) => (head === '' ? '<td></td>' : `<th scope="col">${safe(head)}</th>`))
  return `<thead><tr>${cells.join('')}</tr></thead>`
}

function drawn({ height, says, shapes }: Drawing): string {
  return `<svg role="img" aria-label="${safe(says)}" height="${height}">${shapes.map(shapeSvg).join('')}</svg>`
}

function shapeSvg(shape: Shape): string {
  if (shape.is === 'ring') return `<circle cx="${shape.x}%" cy="${shape.y}" r="${shape.r}"/>`
  if (shape.is === 'stroke') {
    const { look, x, y } = shape
    return `<line class="${look}" x1="${x[0]}%" x2="${x[1]}%" y1="${y[0]}" y2="${y[1]}"/>`
  }
  const { x, y, aside, anchor, text, bold } = shape
  return `<text x="${x}%" y="${y}" dx="${aside}" text-anchor="${anchor}"${bold ? ' class="bold"' : ''}>${safe(text)}</text>`
}
