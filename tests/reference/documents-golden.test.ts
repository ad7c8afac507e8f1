/**
 * [D9] The same drawing with the same date and id gives the same bytes, and these are the bytes looked at and
 *   found good: an SVG, a DXF, and the PDF's objects and page operators as text.
 * [D10] A page larger than a PDF can tell is refused with its size and the limit.
 */
import { unzlibSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { writeDxf } from '../../src/documents/dxf/write-dxf'
import type { PdfDocument } from '../../src/documents/pdf/pdf-document'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { writeSvg } from '../../src/documents/svg/write-svg'
import { fonts, lopsided } from './documents-lopsided'

const golden = (name: string) => `../golden/documents/${name}`

const document: PdfDocument = {
  title: lopsided.title,
  created: new Date(Date.UTC(2024, 4, 6, 7, 8, 9)),
  id: '0123456789abcdef0123456789abcdef',
  pages: [{ width: 150, height: 160, label: 'A1', bookmark: 'F', items: lopsided.items }],
}

async function pdfBytes(seen: PdfDocument): Promise<Uint8Array> {
  const result = await writePdf(seen, fonts)
  if (!result.ok) throw new Error(result.reason.reason)
  return result.value
}

/** The PDF as text: streams inflated where they are text, fonts left out; offsets and lengths left out with them. */
function pdfText(bytes: Uint8Array): string {
  const file = Buffer.from(bytes).toString('latin1')
  const body = file.slice(0, file.indexOf('\nxref'))
  return body
    .replace(/\nstream\n([\s\S]*?)\nendstream/g, (_, stream: string) => {
      const inflated = Buffer.from(unzlibSync(Buffer.from(stream, 'latin1'))).toString('latin1')
      return /^[\x20-\x7e\s]*$/.test(inflated) ? `\nstream\n${inflated}\nendstream` : '\nstream\n(binary)\nendstream'
    })
    .replace(/\/Length1? \d+/g, '/Length')
    .replace(/[^\n\x20-\x7e]/g, '.')
    .replace(/jsPDF [\d.]+/, 'jsPDF')
}

describe('golden documents', () => {
  it('[D9] SVG', async () => {
    await expect(writeSvg(lopsided)).toMatchFileSnapshot(golden('lopsided.svg'))
  })

  it('[D9] DXF', async () => {
    await expect(writeDxf(lopsided)).toMatchFileSnapshot(golden('lopsided.dxf'))
  })

  it('[D9] PDF', async () => {
    await expect(pdfText(await pdfBytes(document))).toMatchFileSnapshot(golden('lopsided.pdf.txt'))
  })

  it('[D9] twice written, the same bytes, whatever the time zone', async () => {
    const first = await pdfBytes(document)
    const zone = process.env.TZ
    process.env.TZ = 'Pacific/Auckland'
    try {
      expect(Buffer.compare(await pdfBytes(document), first)).toBe(0)
    } finally {
      if (zone === undefined) delete process.env.TZ
      else process.env.TZ = zone
    }
  })
})

describe('refusals', () => {
  it('[D10] a page of 5,081 mm is refused, one of 5,080 is written', async () => {
    const page = { ...document.pages[0]!, height: 5081, label: 'B3' }
    expect(await writePdf({ ...document, pages: [page] }, fonts)).toEqual({
      ok: false,
      reason: { reason: 'page too large', label: 'B3', side: 5081, limit: 5080 },
    })
    expect((await writePdf({ ...document, pages: [{ ...page, height: 5080 }] }, fonts)).ok).toBe(true)
    expect((await writePdf({ ...document, pages: [{ ...page, width: Number.NaN }] }, fonts)).ok).toBe(false)
    expect(await writePdf({ ...document, pages: [] }, fonts)).toEqual({ ok: false, reason: { reason: 'no pages' } })
  })
})
