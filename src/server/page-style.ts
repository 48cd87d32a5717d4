/**
 * The style of the page: ink on paper, one face, hairlines; readable on a phone, on a desk and in print.
 *
 * @module
 */

export const pageStyle = `:root {
  --paper: #fcfcfa; --ink: #141c24; --second: #4b555f; --rule: #cdd2d2; --stop: #94190f;
  font-family: "Helvetica Neue", Helvetica, "Nimbus Sans", Arimo, "Liberation Sans", Arial, Roboto, "Noto Sans", sans-serif;
  font-variant-numeric: tabular-nums lining-nums;
  color-scheme: light dark;
}
@media (prefers-color-scheme: dark) {
  :root { --paper: #12171b; --ink: #e9e7e0; --second: #aeb5b9; --rule: #38424a; --stop: #f5a498; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 1208px; padding: 0 40px 64px; background: var(--paper); color: var(--ink); font-size: 16px; line-height: 1.5; }
header { display: flex; flex-wrap: wrap; gap: 4px 24px; align-items: baseline; padding: 16px 0; }
header p { margin: 0; color: var(--second); font-size: 14px; }
header .name { color: var(--ink); font-size: 16px; font-weight: 700; }
section { display: grid; grid-template-columns: 168px minmax(0, 1fr); gap: 0 32px; border-top: 1px solid var(--rule); padding: 24px 0 40px; break-inside: avoid; }
h2 { margin: 0; font-size: 16px; overflow-wrap: anywhere; }
h2 span { display: block; margin-top: 4px; font-size: 14px; font-weight: 400; color: var(--second); }
p, ul, pre { margin: 0 0 16px; max-width: 42em; }
ul { padding-left: 1.2em; }
li { margin-bottom: 8px; }
.say { font-size: 27px; line-height: 1.26; max-width: 28em; }
.lead { font-size: 19px; }
.fine { font-size: 14px; color: var(--second); }
.stop { border-top: 3px solid var(--stop); border-bottom: 3px solid var(--stop); padding: 16px 0 0; margin: 0 0 16px; max-width: 42em; }
.stop strong { color: var(--stop); }
pre { overflow-x: auto; font-size: 14px; }
.unseen { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media screen and (max-width: 699px) {
  body { padding: 0 18px 40px; }
  section { display: block; }
  h2 { margin-bottom: 16px; }
  .say { font-size: 23px; }
  .lead { font-size: 17px; }
}
@media print {
  @page { margin: 17mm 13mm; }
  :root { --paper: #fff; --ink: #000; --second: #333; --rule: #999; --stop: #000; }
  body { max-width: none; padding: 0; font-size: 9.4pt; }
  section { grid-template-columns: 110px minmax(0, 1fr); }
  .say { font-size: 15pt; }
  .lead { font-size: 10.6pt; }
}
`
