/**
 * A kit as one page of HTML to print or send: a passage for each kind of supplier, a line for each piece.
 *
 * @module
 */

import type { Kit, Need } from '../job/kit.js'
import type { SupplierList } from '../job/kit-message.js'
import { inSentence, sayCount, sayHold, sayLack, sayNeed } from '../job/kit-words.js'
import { pageHtml, safe } from './page-html.js'

export interface KitPage {
  readonly kit: Kit
  readonly lists: readonly SupplierList[]
  readonly nameOf: (part: string) => string
  readonly boatName: string
  readonly asOf: string
  readonly invented: boolean
}

export function kitHtml({ kit, lists, nameOf, boatName, asOf, invented }: KitPage): string {
  const title = `Kit${kit.job === undefined ? '' : ` for ${kit.job.replaceAll('-', ' ')}`}, ${boatName}`
  const passages = [
    passage(
      'Before it is begun',
      'Nothing is taken apart before this is empty.',
      `<div class="${kit.stops.length === 0 ? '' : 'stop'}"><p><b>${safe(sayHold(kit, nameOf))}</b></p></div>${kit.stops.length === 0 ? '' : needsHtml(kit.stops, nameOf)}`,
    ),
    ...lists.map((list) => passage(list.name, 'What must be told with each piece.', listHtml(list))),
    passage(
      'To have ready',
      undefined,
      `<ul>${kit.ready.map(({ name, for: of }) => `<li>${safe(name)}, for ${safe(of.map((part) => inSentence(nameOf(part))).join(', '))}</li>`).join('')}</ul>`,
    ),
  ]
  return pageHtml({
    title,
    style: kitStyle,
    body: `<header><h1>${safe(title)}</h1><p>${safe(asOf)}${invented ? '; an invented boat' : ''}</p></header>
<main>
${passages.join('\n')}
</main>
<footer><p>Counts and questions are practice; count and measure the old ones. Gensettle.</p></footer>`,
  })
}

function passage(title: string, says: string | undefined, matter: string): string {
  const margin = `<h2>${safe(title)}</h2>${says === undefined ? '' : `<p>${safe(says)}</p>`}`
  return `<section><div class="margin">${margin}</div><div>${matter}</div></section>`
}

function needsHtml(needs: readonly Need[], nameOf: (part: string) => string): string {
  const rows = needs.map(
    (need) =>
      `<tr><th scope="row">${safe(sayNeed(need, nameOf))}</th><td>${safe(sayCount(need))}</td><td>${safe(sayLack(need))}</td></tr>`,
  )
  return `<table><tbody>${rows.join('')}</tbody></table>`
}

function listHtml({ lines, stuff, supplier }: SupplierList): string {
  const rows = lines.map(({ name, told, open, ...counts }) => {
    const known = told.map(({ tell, answer }) => `${safe(tell)}: <b>${safe(answer)}</b>`)
    const blanks = open.map((tell) => `<span class="blank">${safe(tell)}</span>`)
    const count = supplier === 'winding' ? '' : safe(sayCount(counts))
    return `<tr><th scope="row">${safe(name)}</th><td>${count}</td><td>${[...known, ...blanks].join('<br>')}</td></tr>`
  })
  const more = stuff.map((name) => `<tr><th scope="row">${safe(name)}</th><td></td><td></td></tr>`)
  return `<table><thead><tr><th scope="col">Piece</th><th scope="col">How many</th><th scope="col">To be told</th></tr></thead><tbody>${[...rows, ...more].join('')}</tbody></table>`
}

const kitStyle = `
table:not(.ranges) td:last-child { white-space: normal; width: 55% }
.blank { display: flex; gap: 8px; align-items: baseline }
.blank::after { content: ''; flex: 1; min-width: 24%; border-bottom: 1px solid #000 }
section { break-inside: auto }
thead { display: table-header-group }
`
