/**
 * `gensettle faults sheet`: the case on a sheet that prints on A4 and Letter.
 *
 * @module
 */

import { saySet } from '../alternatives/say-set.js'
import { type CaseSheet, caseSheetOf } from '../faults/case-sheet.js'
import { type FaultOptions, withCase } from './faults-of-set.js'
import { caseJson, caseText } from './faults-told.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { pageHtml, safe } from './page-html.js'
import { type Result, refuse } from './result.js'

export interface SheetOptions extends FaultOptions {
  readonly write?: string
}

export function showSheet(options: SheetOptions): Promise<Result> {
  return withCase(options, (question) => {
    const file = { path: '--write', file: options.write }
    const problems = newFileProblems([file])
    if (problems.length > 0) return refuse(...problems)
    const { model, register, boat, asOf, case: own, diagnosed } = question
    const { body } = own
    const of = { ...question, body, diagnosis: diagnosed(body) }
    const head = `${register.boatFacts.name ?? boat}: ${saySet(register)}; case of ${own.from}, printed ${asOf}`
    const text = sheetHtml(caseSheetOf(model, of), head)
    const unwritten = writeNewFile({ ...file, text })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: caseJson(of, []),
      text: [caseText(of), ...(options.write === undefined ? [] : ['', `Written: ${options.write}`])].join(
        '\n',
      ),
    }
  })
}

/** Nothing in it needs a colour or the ground behind it. */
export function sheetHtml(sheet: CaseSheet, head: string): string {
  const list = (items: readonly string[]) =>
    `<ul>${items.map((item) => `<li>${safe(item)}</li>`).join('')}</ul>`
  const table = (heads: readonly string[], rows: readonly (readonly string[])[]) =>
    `<table><thead><tr>${heads.map((one) => `<th scope="col">${safe(one)}</th>`).join('')}</tr></thead><tbody>${rows
      .map((cells) => `<tr>${cells.map((cell) => `<td>${safe(cell)}</td>`).join('')}</tr>`)
      .join('')}</tbody></table>`
  const passage = (title: string, matter: string) =>
    `<section><div class="margin"><h2>${safe(title)}</h2></div><div>${matter}</div></section>`
  const body = [
    `<header><h1>${safe(sheet.title)}</h1><p>${safe(head)}</p></header>`,
    '<main>',
    ...sheet.stops.map(
      ({ title, act, clear }) =>
        `<div class="stop"><p><span class="tag">Stop</span> <b>${safe(title)}</b></p><p>${safe(act)}</p><p>${safe(clear)}</p></div>`,
    ),
    ...(sheet.head.length === 0 ? [] : [passage('Before', list(sheet.head))]),
    passage(
      'Seen so far',
      sheet.seen.length === 0
        ? '<p>Nothing yet.</p>'
        : table(
            ['Asked or tried', 'It was'],
            sheet.seen.map(({ what, says }) => [what, says]),
          ),
    ),
    passage(
      'What it may be',
      table(
        ['Fault', 'Chance', 'What mends it'],
        sheet.mayBe.map(({ what, chance, mend }) => [what, chance, mend]),
      ),
    ),
    passage(
      'Look next',
      sheet.next
        .map(
          ({ what, how, before, outcomes }) =>
            `<div class="look"><p><b>${safe(what)}</b></p><p>${safe(how)}</p>${before.length === 0 ? '' : list(before.map((line) => `☐ ${line}`))}<p>${outcomes.map((one) => `☐ ${safe(one)}`).join(' &nbsp; ')}</p></div>`,
        )
        .join('') || '<p>No look is left that would tell anything, or all are barred.</p>',
    ),
    passage('It really was', '<p class="lines">____________________________________________</p>'),
    passage('Notes', list(sheet.notes)),
    '</main>',
  ].join('\n')
  return pageHtml({ title: `${sheet.title}, case sheet`, style: sheetStyle, body })
}

const sheetStyle = `
.look { break-inside: avoid; margin-bottom: 8px; }
table { width: 100%; border-collapse: collapse; }
th { text-align: left; border-bottom: 1px solid; }
td, th { padding: 3px 8px 3px 0; vertical-align: top; }
td:nth-child(2) { white-space: nowrap; }
`
