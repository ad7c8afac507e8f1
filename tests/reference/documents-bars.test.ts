/**
 * [M5] On any page of any job, laid out or tiled, on any paper and whatever the printer lacks, the four bars are as long
 *   on paper as they say, to a pixel of 300 dpi, as poppler renders them. A bar that came out at 97.0 mm is drawn
 *   100 / 0.97 mm long.
 */
import { describe, expect, it } from 'vitest'
import { CAP_HEIGHT } from '../../src/core/drawing/text-width'
import type { Text } from '../../src/core/drawing/drawing'
import { partSheets } from '../../src/core/sheets/part-sheets'
import { PAPERS } from '../../src/documents/paper'
import { calibrationBars, calibrationPage } from '../../src/documents/pdf/calibration-page'
import { correctionMeasured } from '../../src/documents/pdf/correction'
import type { PdfPage } from '../../src/documents/pdf/pdf-document'
import { sheetPages } from '../../src/documents/pdf/sheet-document'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { facesOf, jobOf } from '../cli/all-jobs'
import { fonts } from './documents-lopsided'
import { extentOfDark, rendered, type Image } from './documents-render'

const DPI = 300
const toPx = (mm: number): number => Math.round((mm * DPI) / 25.4)
const toMm = (px: number): number => (px * 25.4) / DPI

/** Numbers from 0 to 1, the same each time. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return state / 4294967296
  }
}

async function image(page: PdfPage): Promise<Image> {
  const pdf = await writePdf({ title: 'Bars', pages: [page], created: new Date(0), id: 'c'.repeat(32) }, fonts)
  if (!pdf.ok) throw new Error(pdf.reason.reason)
  return rendered(pdf.value, DPI)
}

/** The length of a bar by its name, which stands in its middle: from tick to tick along a row of pixels beside its line. */
function barOn(seen: Image, name: Text, length: number, { x, y }: { readonly x: number; readonly y: number }): number {
  const half = length / 2 + 2
  const up = name.angle !== 0
  const beside = (up ? name.at.x : name.at.y) - (name.size * CAP_HEIGHT) / 2 - 0.7
  const at = (i: number): readonly [number, number] =>
    up ? [toPx(beside * x), toPx((name.at.y + half) * y) - i] : [toPx((name.at.x - half) * x) + i, toPx(beside * y)]
  return toMm(extentOfDark(seen, at, toPx(2 * half * (up ? y : x))))
}

/** The bars of a page and how long each says it is. */
const barNames = ({ items }: PdfPage): readonly { readonly name: Text; readonly length: number }[] =>
  items.flatMap((item) => {
    if (item.kind !== 'text' || item.layer !== 'mark') return []
    if (item.text.startsWith('100 mm, ')) return [{ name: item, length: 100 }]
    return item.text === '4 in' ? [{ name: item, length: 101.6 }] : []
  })

const next = chance(7)
const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!
const papers = PAPERS.filter(({ id }) => ['a4', 'a3', 'letter', 'tabloid', 'legal'].includes(id))

const cases = Array.from({ length: 20 }, (_, i) => {
  const job = jobOf(pick(['short', 'unequal-overhangs', 'radial-of-twelve-on-a-square-core', 'inches']))
  const face = pick(facesOf(job))
  const paper = pick(papers)
  const measured = i === 0 ? { across: 97, along: 97 } : { across: 95 + 8 * next(), along: 95 + 8 * next() }
  const correction = correctionMeasured(measured)
  if (!correction.ok) throw new Error(correction.reason.reason)
  const made = sheetPages(partSheets(face, job.unit), { paper, correction: correction.value, joining: 'overlap' })
  if (!made.ok) throw new Error(made.reason.reason)
  return { page: pick(made.value.pages), paper: paper.name, label: `${face.part.name}` }
})

describe('bars on twenty pages', () => {
  it.each(cases)('[M5] $label, $page.label on $paper', async ({ page }) => {
    const correction = page.correction!
    const bars = barNames(page)
    expect(bars).toHaveLength(4)
    const seen = await image(page)
    for (const { name, length } of bars) {
      const scale = name.angle === 0 ? correction.x : correction.y
      expect(Math.abs(barOn(seen, name, length, correction) - length * scale)).toBeLessThanOrEqual(toMm(1))
    }
  })
})

describe('the page that tells how true a printer is', () => {
  it('[M5] its bars are as long as they say, and what they measure is made good', async () => {
    const paper = PAPERS[0]!
    const bars = calibrationBars(paper)
    expect(bars).toEqual({ across: 150, along: 250 })
    const seen = await image(calibrationPage(paper))
    // just above the bar across, the ends of whose ticks stand out; left of the one along
    const across = extentOfDark(seen, (i) => [toPx(18) + i, toPx(22)], toPx(bars.across + 4))
    const along = extentOfDark(seen, (i) => [toPx(22), toPx(22) + i], toPx(bars.along + 4))
    expect(Math.abs(toMm(across) - bars.across)).toBeLessThanOrEqual(toMm(1))
    expect(Math.abs(toMm(along) - bars.along)).toBeLessThanOrEqual(toMm(1))
    const short = correctionMeasured({ across: 150 * 0.97, along: 250 }, bars)
    expect(short.ok && short.value.across).toBeCloseTo(100 / 97, 12)
    expect(short.ok && short.value.along).toBe(1)
    expect(correctionMeasured({ across: 100, along: 250 }, bars)).toMatchObject({
      ok: false,
      reason: { bar: 'across', measured: 100, least: 120, most: 187.5 },
    })
  })
})
