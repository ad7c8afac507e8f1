import { readFontTable, type FontTable } from './font-table'
import type { PdfDocument, PdfFonts } from './pdf-document'

/** Stands on paper for a character that the font lacks, so that the gap is seen. */
export const MISSING = '□'

/** Characters that share a glyph with another: the plain one is written, or a search in the file would not find it. */
const sameGlyph: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '\u00ad': '-',
  '\u2010': '-',
  '\u2011': '-',
  '\u2206': 'Δ',
}

/** The characters of a text that the font cannot print, each once, in order; line breaks and tabs are spaces. */
export function unprintable(text: string, font: Uint8Array): string[] {
  const table = tableOf(font)
  return [...new Set(lineOf(text))].filter((character) => !isIn(table, character))
}

/** The same for all that a document prints: what a person should be told before it is printed. */
export function unprintableIn(document: PdfDocument, fonts: PdfFonts): string[] {
  const found = new Set<string>()
  for (const page of document.pages)
    for (const item of [...page.items, ...(page.inWindow?.items ?? [])])
      if (item.kind === 'text') for (const c of unprintable(item.text, fonts[item.weight])) found.add(c)
  return [...found]
}

/** The text as it can be set in one line: composed, and with a box for each character that the font lacks. */
export function printableText(text: string, font: Uint8Array): string {
  const table = tableOf(font)
  return [...lineOf(text)].map((character) => (isIn(table, character) ? character : MISSING)).join('')
}

const lineOf = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\t\n\r\v\f\u2028\u2029]+/g, ' ')
    .replace(/[\u00a0\u00ad\u2010\u2011\u2206]/g, (character) => sameGlyph[character]!)

const isIn = (table: FontTable, character: string): boolean => table.glyphOf(character.codePointAt(0)!) !== undefined

// a font is read once; the tables go with the bytes they were read from
const tables = new WeakMap<Uint8Array, FontTable>()

function tableOf(font: Uint8Array): FontTable {
  const known = tables.get(font)
  if (known) return known
  const table = readFontTable(font)
  tables.set(font, table)
  return table
}
