/**
 * Joined leads as one page of HTML that needs nothing else: the drawing, large, and what it gives.
 *
 * @module
 */

import { type LinkDrawing, type LinkShape, linkDrawing } from '../proof/links/drawing.js'
import type { LinksAnswer } from '../proof/links/look-at-links.js'
import { phasorDrawing } from '../proof/links/phasor-drawing.js'
import {
  linksCaution,
  sayAmps,
  sayLoad,
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
}: {
  readonly title: string
  readonly winding: Winding
  readonly joined: Joined
  readonly values: CoilValues
  readonly answer: LinksAnswer
}): string {
  const { units, outlets, capacities, findings } = answer
  const sensed = saySensed(answer)
  const stops = [...findings.filter(({ stops }) => stops), ...(sensed?.stops ? [sensed] : [])]
  const rows = (cells: readonly (readonly string[])[]) =>
    cells
      .map(
        ([first = '', ...rest]) =>
          `<tr><th scope="row">${safe(first)}</th>${rest.map((cell) => `<td>${safe(cell)}</td>`).join('')}</tr>`,
      )
      .join('')
  const head = (heads: readonly string[]) =>
    `<thead><tr>${heads.map((one) => `<th scope="col">${safe(one)}</th>`).join('')}</tr></thead>`
  const capacityHtml = `<section><div class="margin"><h2>What may be drawn</h2><p>No coil above what it can carry.</p></div><div><table>${head(['Load', 'Each line', 'Power'])}<tbody>${rows(capacities.map((one) => [sayLoad(one), sayAmps(one.lineAmps, units), sayPower(one, units)]))}</tbody></table></div></section>`
  return pageHtml({
    title,
    style: linkStyle,
    body: `<header><h1>${safe(title)}</h1></header>
<main>
${stops.map(({ says }) => `<div class="stop"><p><span class="tag">Stop</span> <b>${safe(says)}</b></p></div>`).join('\n')}
<div class="link-large">${linkSvg(linkDrawing(winding, joined))}</div>
<section><div class="margin"><h2>Between the lines</h2><p>Volts with nothing switched on; ohms through the copper.</p></div><div><table>${head(['Between', 'Volts', 'Ohms'])}<tbody>${rows(outlets.map((pair) => [`${pair.from} and ${pair.to}`, sayVolts(pair, units), sayOhms(pair, units)]))}</tbody></table></div></section>
${capacities.length === 0 ? '' : capacityHtml}
<section><div class="margin"><h2>The coils added up</h2></div><div class="link-phasors">${linkSvg(phasorDrawing(winding, joined, { values }))}</div></section>
</main>
<footer><p>${safe(linksCaution)}</p></footer>`,
  })
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
