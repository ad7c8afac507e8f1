/**
 * 60 pages of 3,000 segments each, beside another library: the goal is 1 second and 2 megabytes. Segments are short and lie anywhere, so
 * that they compress as badly as a traced figure does.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import PDFKit from 'pdfkit'
import { bench, describe } from 'vitest'
import { line, text } from '../../src/core/drawing/build'
import { point } from '../../src/core/geometry/point'
import type { PdfDocument } from '../../src/documents/pdf/pdf-document'
import { writePdf } from '../../src/documents/pdf/write-pdf'

const require = createRequire(import.meta.url)
const font = (name: string) =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${name}.ttf`)))
const fonts = { regular: font('400Regular/SourceSans3_400Regular'), bold: font('700Bold/SourceSans3_700Bold') }

/** The same pages, lines and words written by another general library, each in its own way of being told. */
function byAnother(): Promise<number> {
  const points = 72 / 25.4
  const pdf = new PDFKit({ autoFirstPage: false, compress: true, size: [210 * points, 297 * points] })
  pdf.registerFont('regular', Buffer.from(fonts.regular))
  let bytes = 0
  pdf.on('data', (piece: Uint8Array) => (bytes += piece.length))
  const ended = new Promise<number>((resolve) => pdf.on('end', () => resolve(bytes)))
  for (const { items } of document.pages) {
    pdf.addPage({ margin: 0, size: [210 * points, 297 * points] })
    for (const item of items) {
      if (item.kind === 'line') {
        item.points.forEach(({ x, y }, i) =>
          i === 0 ? pdf.moveTo(x * points, y * points) : pdf.lineTo(x * points, y * points),
        )
        pdf.lineWidth(item.pen * points).stroke()
      } else if (item.kind === 'text') {
        pdf
          .font('regular')
          .fontSize(item.size * points)
          .text(item.text, item.at.x * points, item.at.y * points, { lineBreak: false })
      }
    }
  }
  pdf.end()
  return ended
}

/** Wavy lines of 300 segments, ten to a page, no two alike. */
const figure = (page: number) =>
  Array.from({ length: 10 }, (_, k) =>
    line(
      'cut',
      Array.from({ length: 301 }, (_, i) =>
        point(15 + i * 0.6, 20 + 26 * k + 9 * Math.sin(i / 17 + page) + 3 * Math.sin(i * 0.37 * (k + 1) + page * k)),
      ),
    ),
  )

const document: PdfDocument = {
  title: 'Sixty pages',
  created: new Date(0),
  id: 'd'.repeat(32),
  pages: Array.from({ length: 60 }, (_, i) => ({
    width: 210,
    height: 297,
    label: `${i + 1}`,
    bookmark: `Page ${i + 1}`,
    items: [...figure(i), text(point(15, 285), `Page ${i + 1}`, { size: 6 })],
  })),
}

describe('60 pages of 3,000 segments', () => {
  let reported = false
  bench(
    'write the PDF',
    async () => {
      const begun = performance.now()
      const result = await writePdf(document, fonts)
      if (!result.ok) throw new Error(result.reason.reason)
      if (!reported)
        console.log(`${(result.value.length / 1e6).toFixed(2)} MB in ${Math.round(performance.now() - begun)} ms, cold`)
      reported = true
    },
    { iterations: 5, warmupIterations: 1, time: 0, warmupTime: 0 },
  )

  let otherReported = false
  bench(
    'pdfkit, the same pages',
    async () => {
      const bytes = await byAnother()
      if (!otherReported) console.log(`${(bytes / 1e6).toFixed(2)} MB by pdfkit`)
      otherReported = true
    },
    { iterations: 5, warmupIterations: 1, time: 0, warmupTime: 0 },
  )
})
