/**
 * [T5] n tiles along a length D with printable p and overlap o: 1 if D ≤ p, else ⌈(D − o) / (p − o)⌉; a length
 *   that fits exactly gets no further tile from rounding.
 * [T6] Of upright and lying, the drawing turned or not, the way with the fewest printed pages.
 * [T7] Tiles cover the drawing, neighbours have the overlap in common, blank ones are marked.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import { closedLine, frame, line } from './build'
import type { Drawing, Item } from './drawing'
import { MOST_TILES, printedTiles, tile, tileName, tilesAlong, turnedDrawing, type TilingOptions } from './tiling'

const IN = 25.4
const even = (margin: number) => ({ top: margin, right: margin, bottom: margin, left: margin })
const letter = { page: { width: 8.5 * IN, height: 11 * IN }, margins: even(IN / 2), overlap: IN / 2 }
const a4 = { page: { width: 210, height: 297 }, margins: even(10), overlap: 10 }
const a3 = { ...a4, page: { width: 297, height: 420 } }

/** A sheet with a zigzag that leaves no tile blank. */
function full(width: number, height: number): Drawing {
  const extent = { min: point<'sheet'>(0, 0), max: point<'sheet'>(width, height) }
  const rows = Array.from({ length: 200 }, (_, i) =>
    line('cut', [point(0, (height * i) / 199), point(width, (height * i) / 199)]),
  )
  return { title: 'full', extent, items: rows }
}

const tiled = (drawing: Drawing, options: TilingOptions) => {
  const tiling = tile(drawing, options)
  if (!tiling.ok) throw new Error(tiling.reason.reason)
  return tiling.value
}

describe('how many tiles', () => {
  it.each([
    { paper: 'Letter upright', options: letter, orientation: 'upright', w: 24 * IN, h: 18 * IN, columns: 4, rows: 2 },
    { paper: 'Letter lying', options: letter, orientation: 'lying', w: 24 * IN, h: 18 * IN, columns: 3, rows: 3 },
    { paper: 'A4 upright', options: a4, orientation: 'upright', w: 600, h: 450, columns: 4, rows: 2 },
    { paper: 'A4 lying', options: a4, orientation: 'lying', w: 600, h: 450, columns: 3, rows: 3 },
    { paper: 'A3 upright', options: a3, orientation: 'upright', w: 600, h: 450, columns: 3, rows: 2 },
    { paper: 'A3 lying', options: a3, orientation: 'lying', w: 600, h: 450, columns: 2, rows: 2 },
  ] as const)('[T5] $paper: $columns x $rows', ({ options, orientation, w, h, columns, rows }) => {
    const { margins, page, overlap } = options
    const [short, long] = [page.width - margins.left * 2, page.height - margins.top * 2]
    const [across, down] = orientation === 'upright' ? [short, long] : [long, short]
    expect([tilesAlong(w, across, overlap), tilesAlong(h, down, overlap)]).toEqual([columns, rows])
  })

  it.each([
    { paper: 'Letter', options: letter, w: 24 * IN, h: 18 * IN, tiles: 8, orientation: 'upright' },
    { paper: 'A4', options: a4, w: 600, h: 450, tiles: 8, orientation: 'upright' },
    { paper: 'A3', options: a3, w: 600, h: 450, tiles: 4, orientation: 'lying' },
  ])('[T6] $paper: $tiles pages, $orientation', ({ options, w, h, tiles, orientation }) => {
    const tiling = tiled(full(w, h), options)
    expect([printedTiles(tiling), tiling.orientation, tiling.turned]).toEqual([tiles, orientation, false])
  })

  it('[T6] the drawing is turned where the margins make that the fewer pages', () => {
    const options = { ...a4, margins: { top: 10, right: 10, bottom: 60, left: 10 } }
    // 270 x 140 goes lying as it is; 227 x 190 only turned, upright
    expect(tiled(full(270, 140), options)).toMatchObject({ orientation: 'lying', turned: false })
    expect(tiled(full(227, 190), options)).toMatchObject({ orientation: 'upright', turned: true, columns: 1, rows: 1 })
  })

  it('[T5] a length that fits exactly needs no further tile', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 20, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (n, printable, overlap) => {
          const exact = n * (printable - overlap) + overlap
          expect(tilesAlong(exact, printable, overlap)).toBe(n)
          expect(tilesAlong(exact + 0.01, printable, overlap)).toBe(n + 1)
        },
      ),
    )
  })
})

describe('windows', () => {
  const sizes = fc.record({
    w: fc.double({ min: 20, max: 1500, noNaN: true }),
    h: fc.double({ min: 20, max: 1500, noNaN: true }),
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    overlap: fc.double({ min: 0, max: 20, noNaN: true }),
  })

  it('[T7] cover the drawing; neighbours have the overlap in common; names are unique', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, x, overlap }) => {
        const extent = { min: point<'sheet'>(x, -30), max: point<'sheet'>(x + w, h - 30) }
        const drawing: Drawing = { title: '', extent, items: [frame('cut', extent)] }
        const tiling = tiled(drawing, { ...a4, overlap })
        const seen = tiling.turned ? turnedDrawing(drawing).extent : extent
        const windows = tiling.pages.map(({ window }) => window)
        expect(Math.min(...windows.map(({ min }) => min.x))).toBeCloseTo(seen.min.x, 9)
        expect(Math.min(...windows.map(({ min }) => min.y))).toBeCloseTo(seen.min.y, 9)
        expect(Math.max(...windows.map(({ max }) => max.x))).toBeGreaterThanOrEqual(seen.max.x - 0.0011)
        expect(Math.max(...windows.map(({ max }) => max.y))).toBeGreaterThanOrEqual(seen.max.y - 0.0011)
        for (const { column, row, window } of tiling.pages) {
          const right = tiling.pages.find((t) => t.row === row && t.column === column + 1)
          if (right) expect(window.max.x - right.window.min.x).toBeCloseTo(overlap, 6)
          const below = tiling.pages.find((t) => t.column === column && t.row === row + 1)
          if (below) expect(window.max.y - below.window.min.y).toBeCloseTo(overlap, 6)
        }
        expect(new Set(tiling.pages.map(({ name }) => name)).size).toBe(tiling.columns * tiling.rows)
      }),
      { numRuns: 60 },
    )
  })

  it('[T7] inside a large frame the tiles are blank', () => {
    const ring = [point<'sheet'>(0, 0), point<'sheet'>(900, 0), point<'sheet'>(900, 900), point<'sheet'>(0, 900)]
    const items: Item[] = [closedLine('cut', ring)]
    const tiling = tiled(
      { title: '', extent: { min: ring[0]!, max: ring[2]! }, items },
      { ...a4, orientation: 'upright' },
    )
    const blank = tiling.pages.filter((t) => t.blank)
    expect([tiling.columns, tiling.rows]).toEqual([5, 4])
    expect(blank.map(({ name }) => name)).toEqual(['B2', 'C2', 'D2', 'B3', 'C3', 'D3'])
  })
})

describe('names and refusals', () => {
  it.each([
    [0, 0, 'A1'],
    [1, 2, 'B3'],
    [25, 0, 'Z1'],
    [26, 0, 'AA1'],
    [27, 9, 'AB10'],
  ])('column %d, row %d is %3$s', (column, row, name) => expect(tileName(column, row)).toBe(name))

  it('margins that leave no more than the overlap are refused with what they leave', () => {
    expect(tile(full(600, 450), { ...a4, margins: even(102) })).toEqual({
      ok: false,
      reason: { reason: 'no room', printable: { width: 6, height: 93 }, overlap: 10 },
    })
    expect(tile(full(600, 450), { ...a4, overlap: Number.NaN }).ok).toBe(false)
  })

  it('more tiles than anybody tapes are refused', () => {
    const refusal = tile(full(20_000, 9000), a4)
    expect(refusal).toMatchObject({ ok: false, reason: { reason: 'too many tiles', limit: MOST_TILES } })
  })

  it('the turned drawing has its top to the left and keeps its hand', () => {
    const turned = turnedDrawing({
      title: '',
      extent: { min: point(0, 0), max: point(30, 20) },
      items: [line('cut', [point(0, 0), point(30, 0), point(30, 20)])],
    })
    expect(turned.extent).toEqual({ min: { x: 0, y: -30 }, max: { x: 20, y: -0 } })
    expect(turned.items).toMatchObject([
      {
        points: [
          { x: 0, y: 0 },
          { x: 0, y: -30 },
          { x: 20, y: -30 },
        ],
      },
    ])
  })
})
