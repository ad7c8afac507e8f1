/**
 * [D7] The room a text is said to take is the room it takes: the table of advances is that of the font files
 *   (OpenType, tables cmap and hmtx), and pdf.js measures the same width in a written page.
 * [D8] Characters that the font lacks are named before printing and shown as a box, never dropped in silence.
 */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { text } from '../../src/core/drawing/build'
import { point } from '../../src/core/geometry/point'
import { BOLD_ADVANCES, REGULAR_ADVANCES } from '../../src/core/drawing/text-advances'
import { textWidth } from '../../src/core/drawing/text-width'
import { readFontTable } from '../../src/documents/pdf/font-table'
import type { PdfDocument } from '../../src/documents/pdf/pdf-document'
import { unprintable, unprintableIn } from '../../src/documents/pdf/printable-text'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { fonts } from './documents-lopsided'
import { readPdf } from './documents-read-pdf'

const documentOf = (...words: string[]): PdfDocument => ({
  title: 'Text',
  created: new Date(0),
  id: 'c'.repeat(32),
  pages: [
    {
      width: 300,
      height: 200,
      label: 'Ж 1',
      bookmark: 'Ébène λ',
      items: words.map((w, i) =>
        text(point(10, 20 + 15 * i), w, { size: 7, weight: i % 2 === 1 ? 'bold' : 'regular' }),
      ),
    },
  ],
})

async function bytesOf(document: PdfDocument): Promise<Uint8Array> {
  const result = await writePdf(document, fonts)
  if (!result.ok) throw new Error(result.reason.reason)
  return result.value
}

describe('advances', () => {
  it.each([
    ['regular', REGULAR_ADVANCES],
    ['bold', BOLD_ADVANCES],
  ] as const)('[D7] every entry of the %s table is the font’s', (weight, runs) => {
    const table = readFontTable(fonts[weight])
    const entries = runs.flatMap(([first, list]) => list.split(' ').map((n, i) => [first + i, Number(n)] as const))
    expect(entries.length).toBeGreaterThan(500)
    for (const [code, advance] of entries) expect([code, table.advanceOf(code)]).toEqual([code, advance])
  })

  it('[D7] pdf.js finds the width that was reckoned', async () => {
    const words = ['Music-room sideboard 17 3/8', 'Numbered side up → 1 234,5 mm', 'Φύλλο Дуб ½″']
    const pdf = await getDocument({ data: await bytesOf(documentOf(...words)), verbosity: 0 }).promise
    const content = await (await pdf.getPage(1)).getTextContent()
    const items = content.items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []))
    expect(items.map(({ str }) => str)).toEqual(words)
    items.forEach(({ width }, i) =>
      expect((width * 25.4) / 72).toBeCloseTo(textWidth(words[i]!, 7, i % 2 === 1 ? 'bold' : 'regular'), 1),
    )
    await pdf.destroy()
  })
})

describe('characters', () => {
  it('[D4] Latin, Greek and Cyrillic are read back as typed, in the title, labels and bookmarks too', async () => {
    const typed = [
      'Ébène, noyer, Ahorn ß',
      'Καρυδιά ΑΒΓ',
      'Орех, Ясень Щ',
      'e\u0301'.normalize('NFC'),
      '0 → ½ ⅜ ″ ′ × Ø °',
    ]
    const read = await readPdf(await bytesOf(documentOf(...typed)))
    expect(read.pages[0]!.texts.map((t) => t.text)).toEqual(typed)
    expect(read.pages[0]!.label).toBe('Ж 1')
    expect(read.outline).toEqual(['Ébène λ'])
  })

  it('[D8] what cannot be printed is named once, in order, and printed as a box', async () => {
    expect(unprintable('Face Ω λ Ж ½', fonts.regular)).toEqual([])
    expect(unprintable('木目 and 木 🪵\t7', fonts.regular)).toEqual(['木', '目', '🪵'])
    const document = documentOf('grain 木 up', 'ok')
    expect(unprintableIn(document, fonts)).toEqual(['木'])
    const read = await readPdf(await bytesOf(document))
    expect(read.pages[0]!.texts[0]!.text).toBe('grain □ up')
  })

  it('[D4] a space without a break does not spoil the other spaces', async () => {
    const read = await readPdf(await bytesOf(documentOf('plain space', 'no\u00a0break')))
    expect(read.pages[0]!.texts.map((t) => t.text)).toEqual(['plain space', 'no break'])
  })
})
