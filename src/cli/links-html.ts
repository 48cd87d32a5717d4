/**
 * Joined leads as one page of HTML that needs nothing else: the drawing, large, and what it gives.
 *
 * @module
 */

import { changedLeads, type LinksComparison, type LinksRecord } from '../proof/as-found.js'
import { type LinkDrawing, type LinkShape, linkDrawing } from '../proof/links/drawing.js'
import type { LinksAnswer } from '../proof/links/look-at-links.js'
import { phasorDrawing } from '../proof/links/phasor-drawing.js'
import {
  linksCaution,
  sayAmps,
  sayLoad,
  sayLoop,
  sayOhms,
  sayPower,
  saySensed,
  sayVolts,
} from '../proof/links/say-links.js'
import type { CoilValues, Joined, Winding } from '../proof/links/winding.js'
import { pageHtml, safe } from './page-html.js'

export function linksHtml({
  title,
  winding,
  joined,
  values,
  answer,
  from,
}: {
  readonly title: string
  /** Where this way of joining them comes from; left out: it is none of the catalogue's. */
  readonly from?: string | undefined
  readonly winding: Winding
  readonly joined: Joined
  readonly values: CoilValues
  readonly answer: LinksAnswer
}): string {
  const { units, outlets, loops, capacities, findings } = answer
  const sensed = saySensed(answer)
  const stops = [...findings.filter(({ stops }) => stops), ...(sensed?.stops ? [sensed] : [])]
  const capacityHtml = `<section><div class="margin"><h2>What may be drawn</h2><p>No coil above what it can carry.</p></div><div><table>${tableHead(['Load', 'Each line', 'Power'])}<tbody>${tableRows(capacities.map((one) => [sayLoad(one), sayAmps(one.lineAmps, units), sayPower(one, units)]))}</tbody></table></div></section>`
  const loopHtml = `<section><div class="margin"><h2>Current that goes round inside</h2><p>With nothing switched on.</p></div><div>${loops.map((loop) => `<p>${safe(sayLoop(loop, units))}</p>`).join('')}</div></section>`
  return pageHtml({
    title,
    style: linkStyle,
    body: `<header><h1>${safe(title)}</h1></header>
<main>
${stopsHtml(stops.map(({ says }) => says))}
<div class="link-large">${linkSvg(linkDrawing(winding, joined))}</div>
<section><div class="margin"><h2>Between the lines</h2><p>Volts with nothing switched on; ohms through the copper.</p></div><div><table>${tableHead(['Between', 'Volts', 'Ohms'])}<tbody>${tableRows(outlets.map((pair) => [`${pair.from} and ${pair.to}`, sayVolts(pair, units), sayOhms(pair, units)]))}</tbody></table></div></section>
${loops.length === 0 ? '' : loopHtml}
${capacities.length === 0 ? '' : capacityHtml}
<section><div class="margin"><h2>The coils added up</h2></div><div class="link-phasors">${linkSvg(phasorDrawing(winding, joined, { values }))}</div></section>
</main>
<footer>${from === undefined ? '' : `<p>This way of joining them is from: ${safe(from)}.</p>`}<p>${safe(linksCaution)}</p></footer>`,
  })
}

/** Leads as found and as left side by side: each joint that the other has not is heavy and bears its word. */
export function comparedHtml({
  found,
  left,
  values,
  comparison: { stops, leads, changes, lacks },
  titles,
}: {
  readonly found: LinksRecord
  readonly left: LinksRecord
  readonly values: CoilValues
  readonly comparison: LinksComparison
  readonly titles: readonly [string, string]
}): string {
  const [before, after] = [changedLeads(found, left), changedLeads(left, found)]
  const phasors = (record: LinksRecord) =>
    linkSvg(phasorDrawing(record.winding, record.joined, { values, longest: 80 }))
  const table = (heads: readonly string[], rows: readonly (readonly string[])[]) =>
    `<table>${tableHead(heads)}<tbody>${tableRows(rows)}</tbody></table>`
  return pageHtml({
    title: 'Leads as found and as left',
    style: linkStyle,
    body: `<header><h1>Leads as found and as left</h1></header>
<main>
${stopsHtml(stops)}
<div class="link-pair"><figure><figcaption><b>${safe(titles[0])}</b></figcaption>${linkSvg(linkDrawing(found.winding, found.joined, { changed: { leads: before, word: 'gone' } }))}${phasors(found)}</figure>
<figure><figcaption><b>${safe(titles[1])}</b></figcaption>${linkSvg(linkDrawing(left.winding, left.joined, { changed: { leads: after, word: 'new' } }))}${phasors(left)}</figure></div>
<section><div class="margin"><h2>Lead by lead</h2></div><div>${table(
      ['Lead', 'As found', 'As left', 'Put it'],
      leads.map((row) => [row.lead, row.found, row.left, row.put]),
    )}</div></section>
${
  changes.length === 0
    ? ''
    : `<section><div class="margin"><h2>What it does</h2></div><div>${table(
        ['', 'As found', 'As left'],
        changes.map((one) => [one.name, one.found, one.left]),
      )}</div></section>`
}
${lacks.length === 0 ? '' : `<section><div class="margin"><h2>Lacking</h2></div><div>${lacks.map((says) => `<p>${safe(says)}</p>`).join('')}</div></section>`}
</main>
<footer><p>${safe(linksCaution)}</p></footer>`,
  })
}

function stopsHtml([first, ...rest]: readonly string[]): string {
  if (first === undefined) return ''
  return `<div class="stop"><p><span class="tag">Stop</span> <b>${safe(first)}</b></p>${rest.map((says) => `<p>${safe(says)}</p>`).join('')}</div>`
}

function tableRows(rows: readonly (readonly string[])[]): string {
  return rows
    .map(
      ([first = '', ...rest]) =>
        `<tr><th scope="row">${safe(first)}</th>${rest.map((cell) => `<td>${safe(cell)}</td>`).join('')}</tr>`,
    )
    .join('')
}

function tableHead(heads: readonly string[]): string {
  const cells = heads.map((one) => (one === '' ? '<td></td>' : `<th scope="col">${safe(one)}</th>`))
  return `<thead><tr>${cells.join('')}</tr></thead>`
}

/** A drawing as SVG, in the colours of the page. */
export function linkSvg({ width, height, says, shapes }: LinkDrawing): string {
  return `<svg class="links" viewBox="0 0 ${width} ${height}" role="img" aria-label="${safe(says)}">${shapes.map(shapeSvg).join('')}</svg>`
}

function shapeSvg(shape: LinkShape): string {
  switch (shape.is) {
    case 'path':
      return `<path class="${shape.look}" d="${shape.d}"/>`
    case 'filled':
      return `<path class="filled" d="${shape.d}"/>`
    case 'dot':
      return `<circle class="filled" cx="${shape.x}" cy="${shape.y}" r="${shape.r}"/>`
    case 'post':
      return `<rect class="post${shape.heavy ? ' heavy' : ''}" x="${shape.x - shape.half}" y="${shape.y - 15}" width="${2 * shape.half}" height="30" rx="15"/><text class="mark" x="${shape.x}" y="${shape.y + 4.5}" text-anchor="middle">${safe(shape.text)}</text>`
    case 'text':
      return `<text${shape.bold ? ' class="bold"' : ''} x="${shape.x}" y="${shape.y}" text-anchor="${shape.anchor}">${safe(shape.text)}</text>`
  }
}

/** How drawings of links look on paper. */
export const linkStyle = `
figure { margin: 0 }
svg.links { display: block; width: 100%; height: auto; overflow: visible }
svg.links path { fill: none; stroke: #000; stroke-width: 1.5; stroke-linejoin: round }
svg.links .heavy { stroke-width: 4 }
svg.links .cut { stroke: #fff; stroke-width: 8 }
svg.links .filled { fill: #000; stroke: none }
svg.links .post { fill: #fff; stroke: #000; stroke-width: 1.5 }
svg.links .post.heavy { stroke-width: 3 }
svg.links text { font-size: 13px; fill: #000; stroke: #fff; stroke-width: 3px; paint-order: stroke }
svg.links .mark { font-size: 12.5px; font-weight: 700; stroke: none }
svg.links .bold { font-weight: 700 }
.link-large { max-width: 640px; margin: 12px auto }
.link-phasors { max-width: 420px }
.link-pair { display: grid; grid-template-columns: 1fr 1fr; gap: 18px }
@media print { .link-large { max-width: 150mm } .link-phasors { max-width: 90mm } }
`
