/**
 * How a brief that stands by itself looks: ink on paper, hairlines, nothing that needs colour.
 *
 * @module
 */

export const briefStyle = `
@page { margin: 13mm 17mm }
* { box-sizing: border-box }
html { font: 400 15px/1.45 "Helvetica Neue", Helvetica, "Nimbus Sans", Arimo, "Liberation Sans", Arial, Roboto, "Noto Sans", sans-serif; font-variant-numeric: tabular-nums lining-nums; color: #000; background: #fff }
body { max-width: 800px; margin: 0 auto; padding: 24px 18px; overflow-wrap: break-word }
h1, h2, p, ul, table { margin: 0; padding: 0 }
h1, h2 { font-size: 1em; line-height: 1.45 }
ul { list-style: none }
header { display: flex; flex-wrap: wrap; gap: 0 12px; align-items: baseline; padding-bottom: 6px; border-bottom: 1px solid #000 }
header h1 { font-size: 1.2em }
header p, footer, .margin p { font-size: .85em; color: #222 }
section { display: grid; grid-template-columns: 124px minmax(0, 1fr); column-gap: 18px; padding: 8px 0 10px; border-top: 1px solid #999; break-inside: avoid }
section.wide { display: block }
section.wide > .margin { display: flex; flex-wrap: wrap; gap: 0 12px; margin-bottom: 4px; align-items: baseline }
main > section:first-child { border-top: 0 }
.small { font-size: .88em }
.small .margin h2 { font-size: 1.1em }
section p + p, section ul + p, section p + ul { margin-top: 4px }
li + li { margin-top: 2px }
.say { font-size: 1.6em; line-height: 1.24; margin: 4px 0 }
.number { font-size: 2em; line-height: 1.1; font-weight: 700 }
.stop { border-top: 3px solid #000; border-bottom: 3px solid #000; padding: 6px 0 8px }
.stop + .stop { margin-top: 8px }
.tag { display: inline-block; border: 1.2pt solid #000; padding: 0 5px; font-size: .85em; font-weight: 700; line-height: 1.3 }
table { width: 100%; border-collapse: collapse; font-size: .93em; line-height: 1.35 }
th, td { text-align: left; vertical-align: top; padding: 3px 10px 3px 0; font-weight: 400; border-bottom: 1px solid #bbb }
thead th, thead td { font-size: .9em; font-weight: 400; color: #222; border-bottom-color: #000; vertical-align: bottom }
.ranges tbody th { font-weight: 700; width: 35% }
.ranges td, .ranges th { vertical-align: middle; padding-top: 1px; padding-bottom: 1px }
.ranges .draws { width: 32% }
.ranges :is(th, td):nth-child(n + 3) { text-align: right; white-space: nowrap; padding-right: 0; padding-left: 10px }
.ranges thead th:nth-child(n + 3) { white-space: normal }
svg { display: block; width: 100%; overflow: visible }
svg line { stroke: #000; stroke-width: 1.2 }
svg .heavy { stroke-width: 3 }
svg .bar { stroke-width: 5 }
svg .dotted { stroke-dasharray: 2 3 }
svg circle { fill: #fff; stroke: #000; stroke-width: 1.5 }
svg text { font-size: 12px; fill: #000; stroke: #fff; stroke-width: 3px; paint-order: stroke }
svg .bold { font-weight: 700 }
table:not(.ranges) th:first-child { width: 33% }
table:not(.ranges) td:last-child { white-space: nowrap; padding-right: 0 }
.signatures { display: grid; grid-template-columns: repeat(4, 1fr); gap: 0 20px; padding-top: 26px }
.signatures li { margin: 0; border-top: 1px solid #000; padding-top: 3px; font-size: .85em }
footer { border-top: 1px solid #999; padding-top: 6px }
@media screen and (max-width: 700px) {
  section { display: block }
  .margin { margin-bottom: 6px }
  table { display: block; overflow-x: auto }
  .ranges .draws { min-width: 220px }
  .signatures { grid-template-columns: 1fr 1fr; row-gap: 30px }
}
@media print {
  html { font-size: 9.4pt; line-height: 1.32 }
  body { max-width: none; padding: 0 }
  section { padding: 4px 0; grid-template-columns: 104px minmax(0, 1fr); column-gap: 14px }
  section p + p, section ul + p, section p + ul { margin-top: 2px }
  li + li { margin-top: 0 }
  .margin p, header p, footer { font-size: 7.6pt; line-height: 1.3 }
  .small, table { font-size: 8.1pt; line-height: 1.25 }
  .small .margin h2 { font-size: 9.4pt; line-height: 1.2 }
  .small table { font-size: 1em }
  th, td { padding-top: 1px; padding-bottom: 1px }
  .ranges td, .ranges th { padding-top: 0; padding-bottom: 0 }
  .roomy section { padding: 8px 0 9px }
  .roomy .small, .roomy table { font-size: 9pt; line-height: 1.34 }
  .roomy :is(th, td) { padding-top: 3px; padding-bottom: 3px }
  .number { font-size: 20pt }
  .number ~ p { font-size: 8.6pt }
  .say { font-size: 17pt }
  tr, li { break-inside: avoid }
  svg text { font-size: 8pt }
  .signatures { padding-top: 20px }
}
`
