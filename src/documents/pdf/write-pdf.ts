import type { jsPDF } from 'jspdf'
import type { Item, Picture, Text } from '../../core/drawing/drawing'
import { textWidth } from '../../core/drawing/text-width'
import { GRID } from '../../core/geometry/tolerance'
import { ok, refused, type Result } from '../../core/result'
import { LARGEST_PAGE } from '../paper'
import { composed, Operators, type ToPoints } from './page-operators'
import type { PdfDocument, PdfFonts, PdfPage, PdfRefusal } from './pdf-document'
import { printableText } from './printable-text'

/**
 * Writes a document as a PDF to be printed at actual size. The only file that knows the library, which is
 * fetched when the first document is written. The fonts are embedded, only the characters used. The same
 * document gives the same bytes. Characters that the fonts lack are printed as a box: ask `unprintableIn` first. `onPage` is told how many pages are done.
 */
export async function writePdf(
  document: PdfDocument,
  fonts: PdfFonts,
  onPage: (done: number) => void = () => undefined,
): Promise<Result<Uint8Array, PdfRefusal>> {
  const refusal = pageRefusal(document.pages)
  if (refusal) return refused(refusal)
  const { jsPDF: Pdf } = await import('jspdf')
  const [first, ...rest] = document.pages.map((page) => ({ page, shape: shapeOf(page) }))
  const pdf = new Pdf({
    unit: 'mm',
    format: first!.shape.format,
    orientation: first!.shape.orientation,
    floatPrecision: 4,
    compress: true,
    putOnlyUsedFonts: true,
  })
  describe(pdf, document)
  embedFonts(pdf, fonts)
  const pictures = new Map<Uint8Array, string>()
  paintPage(pdf, first!.page, fonts, pictures)
  onPage(1)
  rest.forEach(({ page, shape }, i) => {
    pdf.addPage(shape.format, shape.orientation)
    paintPage(pdf, page, fonts, pictures)
    onPage(i + 2)
  })
  addNames(pdf, document.pages)
  return ok(new Uint8Array(pdf.output('arraybuffer')))
}

/** What the library leaves untyped. */
interface Inside {
  write(...lines: string[]): void
  pdfEscape(text: string): string
  readonly events: { subscribe(event: string, then: () => void): void }
}

const inside = (pdf: jsPDF): Inside => pdf.internal as unknown as Inside

function pageRefusal(pages: readonly PdfPage[]): PdfRefusal | null {
  if (pages.length === 0) return { reason: 'no pages' }
  for (const { label, width, height } of pages) {
    const side = Math.max(width, height)
    // a micrometre for the rounding of a page that is a paper divided and multiplied by a correction
    if (!(side <= LARGEST_PAGE + GRID)) return { reason: 'page too large', label, side, limit: LARGEST_PAGE }
  }
  return null
}

/** The library turns a page whose sides do not go with the orientation it is told, and complains at a rounding too long. */
const shapeOf = ({ width, height }: PdfPage): { format: [number, number]; orientation: 'p' | 'l' } => ({
  format: [Math.min(width, LARGEST_PAGE - GRID / 1000), Math.min(height, LARGEST_PAGE - GRID / 1000)],
  orientation: width > height ? 'l' : 'p',
})

function describe(pdf: jsPDF, { title, created, id }: PdfDocument): void {
  pdf.setDocumentProperties({ title })
  pdf.setCreationDate(pdfDate(created))
  pdf.setFileId(id.toUpperCase())
  pdf.setDisplayMode('fullpage', 'single')
  pdf.viewerPreferences({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true })
}

/** In universal time, so that the bytes do not depend on where they are written. */
function pdfDate(date: Date): string {
  const digits = date.toISOString().replace(/\D/g, '').slice(0, 14)
  return `D:${digits}+00'00'`
}

const fontNames = { regular: 'SourceSans3', bold: 'SourceSans3-Bold' } as const

function embedFonts(pdf: jsPDF, fonts: PdfFonts): void {
  for (const weight of ['regular', 'bold'] as const) {
    pdf.addFileToVFS(`${weight}.ttf`, binaryString(fonts[weight]))
    pdf.addFont(`${weight}.ttf`, fontNames[weight], 'normal')
  }
}

/** One character a byte, as the library wants files. In pieces: a call takes no hundred thousand arguments. */
function binaryString(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192))
  return text
}

function paintPage(pdf: jsPDF, page: PdfPage, fonts: PdfFonts, pictures: Map<Uint8Array, string>): void {
  const { x, y } = page.correction ?? { x: 1, y: 1 }
  const point = 72 / 25.4
  const toPoints = { a: x * point, b: 0, c: 0, d: -y * point, e: 0, f: page.height * point }
  const operators = new Operators(toPoints)
  const paint = { pdf, page, fonts, pictures, toPoints, operators }
  inside(pdf).write('0 J 1 j')
  if (page.inWindow) {
    operators.beginClip(page.inWindow.window)
    for (const item of page.inWindow.items) paintItem(item, paint)
    operators.endClip()
  }
  for (const item of page.items) paintItem(item, paint)
  flush(paint)
}

interface Paint {
  readonly pdf: jsPDF
  readonly page: PdfPage
  readonly fonts: PdfFonts
  /** The library's name of each picture, so that one that is on many pages is in the file once. */
  readonly pictures: Map<Uint8Array, string>
  readonly toPoints: ToPoints
  readonly operators: Operators
}

function flush({ pdf, operators }: Paint): void {
  const written = operators.take()
  if (written !== '') inside(pdf).write(written)
}

function paintItem(item: Item, paint: Paint): void {
  switch (item.kind) {
    case 'line':
      return paint.operators.line(item)
    case 'fill':
      return paint.operators.fill(item)
    case 'arc':
      return paint.operators.arc(item)
    case 'text':
      return paintText(item, paint)
    case 'picture':
      return paintPicture(item, paint)
  }
}

/** The library's own coordinates are left at the corner of the page; the text's place and turn are all in the matrix. */
function paintText(item: Text, paint: Paint): void {
  const { pdf, page, fonts, toPoints } = paint
  const words = printableText(item.text, fonts[item.weight])
  if (words.trim() === '') return
  flush(paint)
  const back = { start: 0, middle: 0.5, end: 1 }[item.anchor] * textWidth(words, item.size, item.weight)
  const [cos, sin] = [Math.cos(item.angle), Math.sin(item.angle)]
  // letters stand up against y down, hence the mirror that the page's own undoes
  const lettersToSheet = { a: cos, b: sin, c: sin, d: -cos, e: item.at.x - back * cos, f: item.at.y - back * sin }
  const { a, b, c, d, e, f } = composed(toPoints, lettersToSheet)
  const point = 72 / 25.4
  pdf.setFont(fontNames[item.weight], 'normal')
  pdf.setFontSize(item.size * point)
  pdf.setTextColor(item.colour ?? '#000000')
  const matrix = pdf.Matrix(a / point, b / point, c / point, d / point, e, f)
  pdf.text(words, 0, page.height, { angle: matrix })
}

function paintPicture({ bytes, type, unitToSheet, clip }: Picture, paint: Paint): void {
  const { pdf, page, pictures, operators } = paint
  const name = pictures.get(bytes) ?? `picture ${pictures.size + 1}`
  pictures.set(bytes, name)
  // a picture's own square has its top at 1: turned over here, it stands as the drawing's, top at 0
  operators.beginPicture(composed(unitToSheet, { a: 1, b: 0, c: 0, d: -1, e: 0, f: 1 }), clip)
  flush(paint)
  // one point wide and high from the page's lower left corner: the unit square of the map just set
  const onePoint = 25.4 / 72
  pdf.addImage(bytes, type.toUpperCase(), 0, page.height - onePoint, onePoint, onePoint, name)
  operators.endPicture()
}

/** Page labels (ISO 32000-1, 12.4.2: each page its own prefix and no number) and bookmarks. */
function addNames(pdf: jsPDF, pages: readonly PdfPage[]): void {
  const { events, write } = inside(pdf)
  const labels = pages.map(({ label }, i) => `${i} << /P ${hexString(label)} >>`)
  events.subscribe('putCatalog', () => write('/PageLabels <<', `/Nums [${labels.join(' ')}]`, '>>'))
  pages.forEach(({ bookmark }, i) => {
    if (bookmark !== null) pdf.outline.add(null, bookmark, { pageNumber: i + 1 })
  })
}

/** A text string of the PDF: UTF-16, high byte first, after its mark. */
function hexString(text: string): string {
  const hex = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(16).padStart(4, '0'))
  return `<feff${hex.join('')}>`
}
