/**
 * Pictures with their arrows, inside a page of HTML that needs nothing else.
 *
 * @module
 */

import type { Arrow } from '../logbook/photographs.js'
import { safe } from './page-html.js'

export interface EmbeddedPicture {
  readonly bytes: Uint8Array
  readonly type: string
  readonly says: string
  readonly arrows: readonly Arrow[]
}

/** Nothing where there are no pictures. */
export function picturesHtml(pictures: readonly EmbeddedPicture[]): string {
  if (pictures.length === 0) return ''
  return `<section><div class="margin"><h2>Pictures</h2><p>Small, upright, and without where they were taken.</p></div>${figuresHtml(pictures)}</section>`
}

/** The pictures alone, two in a row. */
export function figuresHtml(pictures: readonly EmbeddedPicture[]): string {
  return `<style>${style}</style><div class="apart-pictures">${pictures.map(figure).join('')}</div>`
}

function figure({ bytes, type, says, arrows }: EmbeddedPicture): string {
  const source = `data:${type};base64,${Buffer.from(bytes).toString('base64')}`
  return `<figure><div class="apart-picture"><img src="${source}" alt="${safe(says)}">${arrows.map(arrowHtml).join('')}</div><figcaption>${safe(says)}</figcaption></figure>`
}

/** The line drawn in white under black, so that it is seen on anything; its head a ring. */
function arrowHtml({ from, to, label }: Arrow): string {
  const percent = (value: number) => `${(100 * value).toFixed(1)}%`
  const at = `x1="${percent(from.x)}" y1="${percent(from.y)}" x2="${percent(to.x)}" y2="${percent(to.y)}"`
  const line = (colour: string, width: number) =>
    `<line ${at} stroke="${colour}" stroke-width="${width}"/><circle cx="${percent(to.x)}" cy="${percent(to.y)}" r="5" fill="none" stroke="${colour}" stroke-width="${width}"/>`
  const text =
    label === undefined
      ? ''
      : `<text x="${percent(from.x)}" y="${percent(from.y)}" text-anchor="${from.x > 0.6 ? 'end' : 'start'}" dy="-4">${safe(label)}</text>`
  return `<svg class="apart-arrow" aria-hidden="true">${line('#fff', 5)}${line('#000', 2)}${text}</svg>`
}

const style = `
.apart-pictures { display: grid; grid-template-columns: 1fr 1fr; gap: 12px }
.apart-pictures figure { margin: 0; break-inside: avoid }
.apart-picture { position: relative; line-height: 0 }
.apart-picture img { width: 100% }
.apart-arrow { position: absolute; inset: 0; width: 100%; height: 100%; overflow: visible }
.apart-arrow text { font: 700 12px sans-serif; paint-order: stroke; stroke: #fff; stroke-width: 4px; fill: #000 }
`
