/**
 * A shop sheet as one page of HTML that needs nothing else.
 *
 * @module
 */

import type { ShopSheet } from '../proof/shop-sheet.js'
import type { SheetBlock, SheetPassage } from '../proof/shop-sheet-blocks.js'
import { type EmbeddedPicture, figuresHtml } from './job-apart-html.js'
import { linkStyle, linkSvg } from './links-html.js'
import { pageHtml, safe } from './page-html.js'

/** `after`: HTML that follows the passages; `pictures`: photographs by their digest, as far as they are here. */
export function shopSheetHtml(
  sheet: ShopSheet,
  { after = '', pictures = new Map() }: { readonly after?: string; readonly pictures?: Pictures } = {},
): string {
  const { title, boatName, invented, day, passages, colophon } = sheet
  const head = `${title}, ${boatName}`
  return pageHtml({
    title: head,
    style: linkStyle + sheetStyle,
    body: `<header><h1>${safe(head)}</h1><p>${safe([day, invented].filter(Boolean).join('; '))}</p></header>
<main>
${passages.map((passage) => passageHtml(passage, pictures)).join('\n')}
${after}</main>
<footer><p>${safe(colophon)}</p></footer>`,
  })
}

type Pictures = ReadonlyMap<string, Pick<EmbeddedPicture, 'bytes' | 'type'>>

function passageHtml({ title, says, blocks }: SheetPassage, pictures: Pictures): string {
  const margin = `<div class="margin"><h2>${safe(title)}</h2>${says === undefined ? '' : `<p>${safe(says)}</p>`}</div>`
  return `<section>${margin}<div>${blocks.map((block) => blockHtml(block, pictures)).join('')}</div></section>`
}

function blockHtml(block: SheetBlock, pictures: Pictures): string {
  switch (block.is) {
    case 'text':
      return `<p>${block.bold === undefined ? '' : `<b>${safe(block.bold)}</b> `}${safe(block.text)}</p>`
    case 'stop':
      return `<div class="stop"><p><span class="tag">Stop</span> <b>${safe(block.text)}</b></p></div>`
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${safe(item)}</li>`).join('')}</ul>`
    case 'blanks':
      return `<ul class="blanks">${block.names.map((name) => `<li><span>${safe(name)}</span></li>`).join('')}</ul>`
    case 'table':
      return tableHtml(block)
    case 'pictures':
      return picturesOfBlock(block, pictures)
    case 'drawings':
      return `<div class="${block.drawings.length > 1 ? 'link-beside' : 'link-one'}">${block.drawings.map(linkSvg).join('')}</div>`
    case 'signatures':
      return `<ul class="signatures">${block.lines.map((line) => `<li>${safe(line)}</li>`).join('')}</ul>`
  }
}

/** Those that are here as pictures, the others by their names. */
function picturesOfBlock(block: Extract<SheetBlock, { is: 'pictures' }>, here: Pictures): string {
  const shown = block.pictures.flatMap(({ sha256, shows = '', arrows = [] }) => {
    const picture = here.get(sha256)
    return picture === undefined ? [] : [{ ...picture, says: shows, arrows }]
  })
  const named = block.pictures.filter(({ sha256 }) => !here.has(sha256))
  return `${shown.length === 0 ? '' : figuresHtml(shown)}${named.length === 0 ? '' : `<ul>${named.map(({ shows = '', sha256 }) => `<li>${safe(shows)} (${sha256.slice(0, 8)}, not at hand)</li>`).join('')}</ul>`}`
}

function tableHtml({ heads, rows }: Extract<SheetBlock, { is: 'table' }>): string {
  const head = heads.every((one) => one === '')
    ? ''
    : `<thead><tr>${heads.map((one) => (one === '' ? '<td></td>' : `<th scope="col">${safe(one)}</th>`)).join('')}</tr></thead>`
  const body = rows.map(
    ([first = '', ...cells]) =>
      `<tr><th scope="row">${safe(first)}</th>${cells.map((cell) => `<td>${safe(cell)}</td>`).join('')}</tr>`,
  )
  return `<table${heads.length > 3 ? ' class="fill"' : ''}>${head}<tbody>${body.join('')}</tbody></table>`
}

const sheetStyle = `
.blanks li { display: flex; gap: 10px; align-items: baseline; margin-top: 5px }
.blanks li::after { content: ''; flex: 1; border-bottom: 1px solid #000; min-width: 30% }
.blanks + p, p + .blanks { margin-top: 6px }
.link-beside { display: grid; grid-template-columns: 3fr 2fr; gap: 18px; align-items: center }
.link-one { max-width: 420px }
section > div > * + * { margin-top: 6px }
table:not(.ranges) td:last-child { white-space: normal }
table.fill td:last-child { width: 15%; border-left: 1px solid #bbb }
@media print { section { break-inside: avoid } .link-one { max-width: 100mm } .blanks li { margin-top: 7px } }
`
