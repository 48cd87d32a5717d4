/**
 * The page: every boat's answer in a sentence, and the cautions.
 *
 * @module
 */

import { html } from 'hono/html'

export interface PageContent {
  readonly cautions: readonly string[]
  readonly boats: readonly BoatOnPage[]
}

export interface BoatOnPage {
  readonly name: string
  readonly demonstration: boolean
  /** The set in a line. */
  readonly set: string
  /** The answer in a sentence, or why there is none. */
  readonly verdict: string
  /** What to say at the telephone; null where no quote is in hand. */
  readonly walkAway: string | null
  /** Conditions that bar a choice. */
  readonly barred: readonly string[]
  /** What was taken for granted because nobody said. */
  readonly assumed: readonly string[]
}

export function pageOf({ cautions, boats }: PageContent) {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Gensettle</title>
<link rel="stylesheet" href="/page.css">
</head>
<body>
<header><p class="name">Gensettle</p><p>Mend, rebuild or replace, and the quote above which to walk away</p></header>
<main>
<h1 class="unseen">The answer for each boat</h1>
<section aria-labelledby="cautions">
<h2 id="cautions">Cautions</h2>
<ul>${cautions.map((caution) => html`<li>${caution}</li>`)}</ul>
</section>
${boats.map(boatPassage)}
${
  boats.some(({ demonstration }) => !demonstration)
    ? ''
    : html`<section aria-labelledby="yours">
<h2 id="yours">Your boat</h2>
<div><p>Nothing is entered yet. Stop this program with Ctrl-C, then write down what you know of your set:</p>
<pre><code>npx gensettle log add set --boat petrel --set main --rating-kw 7 --rpm 1500 --built 2004
npx gensettle log add hours 5240</code></pre></div>
</section>`
}
</main>
</body>
</html>
`
}

function boatPassage(boat: BoatOnPage, place: number) {
  const id = `boat-${place + 1}`
  return html`<section aria-labelledby="${id}">
<h2 id="${id}">${boat.name}<span>${boat.set}</span>${boat.demonstration ? html`<span>Demonstration, invented</span>` : ''}</h2>
<div>
<p class="say">${boat.verdict}</p>
${boat.walkAway === null ? '' : html`<p class="lead">${boat.walkAway}</p>`}
${boat.barred.length === 0 ? '' : html`<div class="stop"><p><strong>Stop.</strong> These are not open as things stand:</p><ul>${boat.barred.map((line) => html`<li>${line}</li>`)}</ul></div>`}
${boat.assumed.length === 0 ? '' : html`<p class="fine">Taken for granted because nobody said: ${boat.assumed.join('; ')}.</p>`}
</div>
</section>
`
}
