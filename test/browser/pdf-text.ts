/**
 * The text of a printed page, as a reader of the PDF finds it.
 *
 * Reads what this browser writes: streams that are deflated, fonts with a table from their glyphs to characters, and text shown
 * in hexadecimal or literal strings. No more of the format than that.
 *
 * @module
 */

import { inflateSync } from 'node:zlib'

export interface PrintedPages {
  readonly pages: number
  /** Without any space: glyphs are placed one by one. */
  readonly text: string
}

export function textOfPdf(pdf: Uint8Array): PrintedPages {
  const raw = Buffer.from(pdf).toString('latin1')
  const objects = new Map<number, { head: string; stream?: string }>()
  for (const match of raw.matchAll(/(\d+) 0 obj\b([\s\S]*?)endobj/g)) {
    objects.set(Number(match[1]), partedObject(match[2]!))
  }
  const fonts = new Map<number, Map<number, string>>()
  for (const [id, { head }] of objects) {
    const unicode = /\/ToUnicode (\d+) 0 R/.exec(head)
    const stream = unicode && objects.get(Number(unicode[1]))?.stream
    if (stream) fonts.set(id, charactersOf(stream))
  }
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head))
  const text = pages
    .map(({ head }) => {
      const contents = [...(/\/Contents\s*\[?((?:\s*\d+ 0 R)+)/.exec(head)?.[1] ?? '').matchAll(/(\d+) 0 R/g)]
      const named = fontsNamed(head, objects)
      return contents.map(([, id]) => shownIn(objects.get(Number(id))?.stream ?? '', named, fonts)).join(' ')
    })
    .join(' ')
  return { pages: pages.length, text: withoutSpaces(text) }
}

/** Text as it is compared with what was printed. */
export function withoutSpaces(text: string): string {
  return text.replace(/[\s\u2060]+/g, '')
}

function partedObject(body: string): { head: string; stream?: string } {
  const at = body.indexOf('stream')
  if (at < 0) return { head: body }
  const head = body.slice(0, at)
  const from = body.startsWith('\r\n', at + 6) ? at + 8 : at + 7
  const bytes = Buffer.from(body.slice(from, body.lastIndexOf('endstream')), 'latin1')
  if (!head.includes('FlateDecode')) return { head, stream: bytes.toString('latin1') }
  return { head, stream: inflateSync(bytes).toString('latin1') }
}

/** The fonts of a page by the names that its text calls them by. */
function fontsNamed(
  head: string,
  objects: ReadonlyMap<number, { readonly head: string }>,
): Map<string, number> {
  const resources = /\/Resources (\d+) 0 R/.exec(head)
  const from = resources ? (objects.get(Number(resources[1]))?.head ?? '') : head
  const fontObject = /\/Font (\d+) 0 R/.exec(from)
  const list = fontObject
    ? (objects.get(Number(fontObject[1]))?.head ?? '')
    : (/\/Font\s*<<([\s\S]*?)>>/.exec(from)?.[1] ?? '')
  return new Map([...list.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name, id]) => [name!, Number(id)]))
}

/** From glyphs to characters: single ones and runs. */
function charactersOf(cmap: string): Map<number, string> {
  const characters = new Map<number, string>()
  const char = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le')
  for (const [, block] of cmap.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, to] of block!.matchAll(/<([0-9a-f]+)>\s*<([0-9a-f]+)>/gi)) {
      characters.set(Number.parseInt(glyph!, 16), char(to!))
    }
  }
  for (const [, block] of cmap.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, low, high, to] of block!.matchAll(/<([0-9a-f]+)>\s*<([0-9a-f]+)>\s*<([0-9a-f]+)>/gi)) {
      const first = Number.parseInt(low!, 16)
      for (let glyph = first; glyph <= Number.parseInt(high!, 16); glyph++) {
        characters.set(glyph, String.fromCodePoint(Number.parseInt(to!, 16) + glyph - first))
      }
    }
  }
  return characters
}

/** What a page's content shows, in the order in which they are drawn. */
function shownIn(
  content: string,
  named: ReadonlyMap<string, number>,
  fonts: ReadonlyMap<number, ReadonlyMap<number, string>>,
): string {
  let font: ReadonlyMap<number, string> | undefined
  const shown: string[] = []
  const tokens = /\/(\w+) [\d.]+ Tf|<([0-9a-f\s]+)>|\(((?:\\[\s\S]|[^\\)])*)\)/gi
  for (const [, name, hex, literal] of content.matchAll(tokens)) {
    if (name !== undefined) font = fonts.get(named.get(name) ?? -1)
    else if (hex !== undefined) shown.push(decoded(Buffer.from(hex.replace(/\s/g, ''), 'hex'), font))
    else if (literal !== undefined) shown.push(decoded(Buffer.from(unescaped(literal), 'latin1'), font))
  }
  return shown.join('')
}

function decoded(bytes: Buffer, font: ReadonlyMap<number, string> | undefined): string {
  let text = ''
  for (let i = 0; i + 1 < bytes.length; i += 2) text += font?.get(bytes.readUInt16BE(i)) ?? ''
  return text
}

function unescaped(literal: string): string {
  const plain: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' }
  return literal.replace(/\\([0-7]{1,3}|[\s\S])/g, (_, after: string) =>
    /^[0-7]/.test(after) ? String.fromCharCode(Number.parseInt(after, 8)) : (plain[after] ?? after),
  )
}
