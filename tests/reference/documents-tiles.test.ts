/**
 * Tiled pages, read back.
 *
 * [T1] Tiles put together are the drawing: every line, seam by seam, to 0.01 mm; nothing more, nothing less.
 * [T2] A bar drawn 100 mm (4 in) long is as long on paper, across and down, on every page; with a correction
 *   measured m the printer is told 100 / m as much.
 * [T3] Every page says its name and its neighbours; the crosses of neighbours are the same spots of the drawing.
 * [T4] Viewers are asked to print at actual size; pages have labels and bookmarks.
 */
import { describe, expect, it } from 'vitest'
import { distance, point, type Point } from '../../src/core/geometry/point'
import { line } from '../../src/core/drawing/build'
import type { Drawing } from '../../src/core/drawing/drawing'
import { placed } from '../../src/core/drawing/placed'
import type { Tiling } from '../../src/core/drawing/tiling'
import { isoPaper, paperOf, type Paper } from '../../src/documents/paper'
import { correctionMeasured, type Correction } from '../../src/documents/pdf/correction'
import { OVERLAP } from '../../src/documents/pdf/printing'
import { tiledPages, tileOnPaper } from '../../src/documents/pdf/tiled-pages'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { fonts, lopsided } from './documents-lopsided'
import { readPdf, type ReadPage } from './documents-read-pdf'
import { extentOfDark, rendered } from './documents-render'

type Segment = readonly [Point<'sheet'>, Point<'sheet'>]

/** The lopsided drawing five times as large, its straight strokes only. */
const drawing: Drawing = {
  title: 'Sideboard, left door',
  extent: { min: point(50, 25), max: point(650, 725) },
  items: placed(
    lopsided.items.filter(({ kind }) => kind === 'line').map((item) => ({ ...item, pen: 0.5 })),
    { a: 5, b: 0, c: 0, d: 5, e: 0, f: 0 },
  ),
}
const a4: Paper = isoPaper(4)

async function written(tiling: Tiling, seen: Drawing, correction?: Correction, paper = a4) {
  const options = { title: seen.title, checkBar: true, ...(correction ? { correction } : {}) }
  const pages = tiledPages(seen, tiling, paper, options)
  const result = await writePdf({ title: seen.title, pages, created: new Date(0), id: 'b'.repeat(32) }, fonts)
  if (!result.ok) throw new Error(result.reason.reason)
  return result.value
}

function tiled(seen: Drawing, correction?: Correction, paper = a4, overlap = OVERLAP): Tiling {
  const tiling = tileOnPaper(seen, paper, { overlap, ...(correction ? { correction } : {}) })
  if (!tiling.ok) throw new Error(tiling.reason.reason)
  return tiling.value
}

const sides = (points: readonly Point<'sheet'>[], closed: boolean): Segment[] =>
  points.flatMap((p, i): Segment[] => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined)
    return next ? [[p, next]] : []
  })

/** The strokes of the drawing itself come first on a page, before its guides. */
const strokesOf = (page: ReadPage, { window }: Tiling['pages'][number], { margins }: Tiling, count: number) =>
  page.strokes
    .slice(0, count)
    .flatMap(({ points, closed }) => sides(points, closed))
    .map((side) => side.map((p) => point<'sheet'>(p.x - margins.left + window.min.x, p.y - margins.top + window.min.y)))
    .map(([a, b]): Segment => [a!, b!])

/** How much of the original segment the found ones cover, as lengths along it; null if one strays from it. */
function covered([a, b]: Segment, found: readonly Segment[]): { readonly gap: number } {
  const length = distance(a, b)
  const along = (p: Point<'sheet'>) => ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length
  const off = (p: Point<'sheet'>) => Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length
  const stretches = found
    .filter(([p, q]) => off(p) < 0.01 && off(q) < 0.01)
    .map(([p, q]) => [along(p), along(q)].sort((x, y) => x - y) as [number, number])
    .filter(([from, to]) => from > -0.01 && to < length + 0.01)
    .sort(([p], [q]) => p - q)
  let [reached, gap] = [0, 0]
  for (const [from, to] of stretches) {
    gap = Math.max(gap, from - reached)
    reached = Math.max(reached, to)
  }
  return { gap: Math.max(gap, length - reached) }
}

describe('tiles put together', () => {
  it.each([
    { paper: a4, overlap: 10 },
    { paper: a4, overlap: 0 },
    { paper: paperOf('letter')!, overlap: 10 },
    { paper: isoPaper(3), overlap: 0 },
  ])(
    '[T1] on $paper.name with $overlap mm in common: every line is there, to 0.01 mm, and nothing besides',
    async ({ paper, overlap }) => {
      const tiling = tiled(drawing, undefined, paper, overlap)
      const { pages } = await readPdf(await written(tiling, drawing, undefined, paper))
      const printed = tiling.pages.filter(({ blank }) => !blank)
      expect(pages).toHaveLength(printed.length + 1)
      const wanted = drawing.items.flatMap((item) => (item.kind === 'line' ? sides(item.points, item.closed) : []))
      const found = printed.flatMap((tile, i) => {
        const page = pages[i + 1]!
        // the heavy pen of the drawing tells its strokes from the guides: as many as the page was given
        const own = tiledPages(drawing, tiling, paper, { title: '', checkBar: true })[i + 1]!.inWindow!.items.length
        return strokesOf(page, tile, tiling, own)
      })
      for (const side of wanted) expect(covered(side, found).gap).toBeLessThan(0.01)
      for (const piece of found)
        expect(wanted.some((side) => covered(side, [piece]).gap < distance(...side) - distance(...piece) + 0.05)).toBe(
          true,
        )
    },
  )

  it('[T3] pages name themselves and the neighbours that are printed; the same crosses on both', async () => {
    const tiling = tiled(drawing)
    const { pages } = await readPdf(await written(tiling, drawing))
    const printed = tiling.pages.filter(({ blank }) => !blank)
    const names = printed.map(({ name }) => name)
    expect(pages.map(({ label }) => label)).toEqual(['Plan', ...names])
    const spots = new Map<string, Set<string>>()
    printed.forEach((tile, i) => {
      const page = pages[i + 1]!
      const said = page.texts.map(({ text }) => text)
      expect(said).toContain(tile.name)
      const beside = printed.filter((t) => Math.abs(t.column - tile.column) + Math.abs(t.row - tile.row) === 1)
      expect(said.filter((text) => text.startsWith('joins ')).sort()).toEqual(
        beside.map(({ name }) => `joins ${name}`).sort(),
      )
      spots.set(tile.name, crossesOf(page, tile, tiling))
    })
    for (const [a, b] of [
      ['A1', 'B1'],
      ['A1', 'A2'],
    ] as const)
      expect([...spots.get(a)!].filter((spot) => spots.get(b)!.has(spot)).length).toBe(2)
  })

  it('[T4] viewers are asked for actual size; bookmarks and title are there', async () => {
    const { preferences, outline, title } = await readPdf(await written(tiled(drawing), drawing))
    expect(preferences).toMatchObject({ PrintScaling: 'None', PickTrayByPDFSize: true })
    expect(outline.slice(0, 2)).toEqual(['Sideboard, left door: plan', 'Sideboard, left door: A1'])
    expect(title).toBe('Sideboard, left door')
  })
})

/** Middles of upright strokes of 6 mm, in the drawing to 0.01 mm. */
function crossesOf(page: ReadPage, { window }: Tiling['pages'][number], { margins }: Tiling): Set<string> {
  const arms = page.strokes.filter(
    ({ points: [a, b], closed }) =>
      !closed && a && b && Math.abs(a.x - b.x) < 0.001 && Math.abs(distance(a, b) - 6) < 0.001,
  )
  return new Set(
    arms.map(({ points: [a, b] }) =>
      [a!.x - margins.left + window.min.x, (a!.y + b!.y) / 2 - margins.top + window.min.y]
        .map((value) => value.toFixed(2))
        .join(' '),
    ),
  )
}

describe('bars on paper, as poppler renders them', () => {
  const dpi = 300
  /** A short stroke: one page, with nothing near the bars. */
  const small: Drawing = {
    title: 'Bars',
    extent: { min: point(0, 0), max: point(50, 50) },
    items: [line('cut', [point(10, 10), point(40, 20)])],
  }

  it.each([
    { told: 'no correction', measured: { across: 100, along: 100 } },
    { told: 'across measured 97.0', measured: { across: 97, along: 100 } },
    { told: 'both off', measured: { across: 101.5, along: 98.2 } },
  ])('[T2] $told: the bars are 100 / measured as long, both ways, to a pixel', async ({ measured }) => {
    const correction = correctionMeasured(measured)
    if (!correction.ok) throw new Error(correction.reason.reason)
    const tiling = tiled(small, correction.value)
    const image = rendered(await written(tiling, small, correction.value), dpi)
    const { x, y } = { x: 100 / measured.across, y: 100 / measured.along }
    const { width, height } = tiling.page
    const px = (mm: number) => Math.round((mm * dpi) / 25.4)
    const toMm = (length: number) => (length * 25.4) / dpi
    const pixel = toMm(1)

    // a row of pixels just above the line of a bar meets its two ticks, and the letters of its name between them
    const foot = height - tiling.margins.bottom
    const across = (below: number) =>
      extentOfDark(image, (i) => [px((tiling.margins.left + 22) * x) + i, px((foot + below - 0.7) * y)], px(106 * x))
    expect(Math.abs(toMm(across(7.5)) - 100 * x)).toBeLessThanOrEqual(pixel)
    expect(Math.abs(toMm(across(11.5)) - 101.6 * x)).toBeLessThanOrEqual(pixel)

    const down = (left: number) =>
      extentOfDark(image, (i) => [px((tiling.margins.left - left + 0.7) * x), px((foot + 2) * y) - i], px(120 * y))
    expect(Math.abs(toMm(down(7)) - 100 * y)).toBeLessThanOrEqual(pixel)
    expect(Math.abs(toMm(down(3)) - 101.6 * y)).toBeLessThanOrEqual(pixel)
    expect(width * x).toBeCloseTo(210, 6)
  })
})
