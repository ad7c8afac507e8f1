/**
 * The templates as they come out of the printer, read back with pdf.js from the files that the command line writes, and
 * held against the numbers of the summary beside them. Where a tile lies in its drawing follows from its name and the
 * margins and overlap that tiles are promised to have.
 *
 * [T30] Across the seams of the pages every edge of every rough piece is on paper, in one line and as long as the
 *   summary says, to 0.01 mm; so is every seam, within the piece on either side of it.
 * [T31] Templates are in leaf orientation, the numbered end at the top: one that is lopsided does not fit its piece when
 *   it is mirrored.
 */
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { main } from '../../src/cli/main'
import type { Tiling } from '../../src/core/drawing/tiling'
import { distance, point, type Point } from '../../src/core/geometry/point'
import { drawWindowTemplate, TEMPLATE_ROOM } from '../../src/core/sheets/draw-window-template'
import { windowTemplates } from '../../src/core/templates/window-template'
import { isoPaper } from '../../src/documents/paper'
import { tileOnPaper } from '../../src/documents/pdf/tiled-pages'
import { facesOf, jobFileOf, JOB_NAMES, jobOf } from '../cli/all-jobs'
import type { PartSummary, Summary } from '../cli/read-summary'
import { readPdf, type ReadPage } from './documents-read-pdf'

type Pair = readonly [number, number]
type Segment = readonly [Point<'sheet'>, Point<'sheet'>]

const WITHIN = 0.01
const root = fs.mkdtempSync(path.join(os.tmpdir(), 'paper-'))

beforeAll(() => void vi.spyOn(console, 'log').mockImplementation(() => undefined))
afterAll(() => {
  vi.restoreAllMocks()
  fs.rmSync(root, { recursive: true })
})

/** All strokes of a template put together again: as in the drawing, the piece's box a little in from the corner. */
function putTogether(pages: readonly ReadPage[], title: string, tiling: Tiling): readonly Segment[] {
  const printed = tiling.pages.filter(({ blank }) => !blank)
  return printed.flatMap((tile) => {
    const label = printed.length > 1 ? `${title} ${tile.name}` : title
    const page = pages.find((one) => one.label === label)
    if (!page) throw new Error(`no page is called ${label}`)
    const { margins } = tiling
    const back = (p: Point<'sheet'>) => {
      const seen = point<'sheet'>(p.x - margins.left + tile.window.min.x, p.y - margins.top + tile.window.min.y)
      // a drawing that was given a quarter turn anticlockwise is turned back
      return tiling.turned ? point<'sheet'>(-seen.y, seen.x) : seen
    }
    return page.strokes.flatMap(({ points, closed }) =>
      points.flatMap((p, i): Segment[] => {
        const next = points[i + 1] ?? (closed ? points[0] : undefined)
        return next ? [[back(p), back(next)]] : []
      }),
    )
  })
}

/**
 * How much of a segment is not on paper: the longest gap along it, strokes that lie in its line counted. `mayGoOn`: a
 * stroke may run beyond it, as an edge does that is shared with several neighbours.
 */
function longestGap([a, b]: Segment, strokes: readonly Segment[], mayGoOn = false): number {
  const length = distance(a, b)
  const along = (p: Point<'sheet'>) => ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length
  const off = (p: Point<'sheet'>) => Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length
  const stretches = strokes
    .filter(([p, q]) => off(p) < WITHIN && off(q) < WITHIN)
    .map(([p, q]) => [along(p), along(q)].sort((x, y) => x - y) as [number, number])
    .filter(([from, to]) => (mayGoOn ? to > 0 && from < length : from > -WITHIN && to < length + WITHIN))
    .sort(([p], [q]) => p - q)
  let [reached, gap] = [0, 0]
  for (const [from, to] of stretches) {
    gap = Math.max(gap, from - reached)
    reached = Math.max(reached, to)
  }
  return Math.max(gap, length - reached)
}

/** From the leaf to the drawing of the template: the rough piece's box goes to the drawing's room. */
function leafToDrawing(rough: readonly Pair[]): (p: Pair) => Point<'sheet'> {
  const [left, top] = [Math.min(...rough.map(([x]) => x)), Math.min(...rough.map(([, y]) => y))]
  return ([x, y]) => point(x - left + TEMPLATE_ROOM, y - top + TEMPLATE_ROOM)
}

/** Back through a rigid placement. */
function onLeaf([a, b, c, d, e, f]: PartSummary['cells'][number]['placement'], [x, y]: Pair): Pair {
  const det = a * d - b * c
  return [(d * (x - e) - c * (y - f)) / det, (a * (y - f) - b * (x - e)) / det]
}

type Cell = PartSummary['cells'][number]

const between = ([ax, ay]: Pair, [bx, by]: Pair): number => Math.hypot(bx - ax, by - ay)

/** A wedge is cut so much fuller than its place at most, mm at its wide end: 0.025 degrees on 610 mm. */
const FULLEST = 0.3
/** Where it ends aslant its edges end elsewhere than the seams, by no more than this, mm. */
const AT_ENDS = 1

/**
 * A stretch of a seam where a piece is cut for it: in its place, or where the piece is cut full the same stretch of the
 * edge beside it, without the last bit at its ends.
 */
function asCut({ cutTo }: Cell, seam: readonly [Pair, Pair]): readonly [Pair, Pair] {
  if (!cutTo) return seam
  const edges = cutTo.polygon.map((a, i) => [a, cutTo.polygon[(i + 1) % cutTo.polygon.length]!] as const)
  const beside = edges.map((edge) => seam.map((p) => footOn(edge, p)))
  const away = beside.map((feet) => Math.max(...feet.map((foot, i) => between(foot, seam[i]!))))
  const least = Math.min(...away)
  expect(least).toBeLessThan(FULLEST)
  const [a, b] = beside[away.indexOf(least)] as [Pair, Pair]
  const inwards = AT_ENDS / between(a, b)
  const at = (t: number): Pair => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  return [at(inwards), at(1 - inwards)]
}

/** The point of a line that is nearest. */
function footOn([[ax, ay], [bx, by]]: readonly [Pair, Pair], [x, y]: Pair): Pair {
  const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)
  return [ax + t * (bx - ax), ay + t * (by - ay)]
}

const sidesOf = (ring: readonly Point<'sheet'>[]): readonly Segment[] =>
  ring.map((p, i) => [p, ring[(i + 1) % ring.length]!])

interface Printed {
  readonly part: PartSummary
  /** For each cell the strokes of the template it is cut by. */
  readonly strokesOf: ReadonlyMap<string, readonly Segment[]>
}

/** Each job is written and read once. */
const known = new Map<string, Promise<readonly Printed[]>>()

function printed(name: string): Promise<readonly Printed[]> {
  const read = known.get(name) ?? readPrinted(name)
  known.set(name, read)
  return read
}

async function readPrinted(name: string): Promise<readonly Printed[]> {
  const folder = path.join(root, name)
  expect(await main([jobFileOf(name), folder, '--only', 'templates'])).toBe(0)
  const { parts } = JSON.parse(fs.readFileSync(path.join(folder, 'summary.json'), 'utf8')) as Summary
  const job = jobOf(name)
  const faces = facesOf(job)
  return Promise.all(
    parts.map(async (part, i) => {
      const { pages } = await readPdf(new Uint8Array(fs.readFileSync(path.join(folder, part.templates.file!))))
      const strokesOf = new Map<string, readonly Segment[]>()
      for (const template of windowTemplates(faces[i]!)) {
        const tiling = tileOnPaper(drawWindowTemplate(faces[i]!, template, job.unit), isoPaper(4))
        if (!tiling.ok) throw new Error(tiling.reason.reason)
        const strokes = putTogether(pages, `Template ${template.name}`, tiling.value)
        for (const { cell } of template.pieces) strokesOf.set(cell.id, strokes)
      }
      return { part, strokesOf }
    }),
  )
}

describe.each(JOB_NAMES)('the templates of %s on A4', (name) => {
  it('[T30] every edge of a rough piece is there, as long as the summary says', async () => {
    for (const { part, strokesOf } of await printed(name))
      for (const { cell, polygon } of part.rough)
        for (const side of sidesOf(polygon.map(leafToDrawing(polygon))))
          expect(longestGap(side, strokesOf.get(cell)!), `${part.name} ${cell}`).toBeLessThan(WITHIN)
  })

  it('[T30] every seam is there on the template of the piece on either side', async () => {
    for (const { part, strokesOf } of await printed(name))
      for (const { letter, stretches } of part.seams.filter(({ line }) => !line))
        for (const { from, to, left, right } of stretches)
          for (const id of [left, right]) {
            const cell = part.cells.find((cell) => cell.id === id)!
            const toDrawing = leafToDrawing(part.rough.find(({ cell }) => cell === id)!.polygon)
            const cut = asCut(cell, [from, to])
            const side = cut.map((p) => toDrawing(onLeaf(cell.placement, p))) as unknown as Segment
            expect(Math.abs(distance(...side) - between(...cut))).toBeLessThan(1e-9)
            expect(longestGap(side, strokesOf.get(id)!, true), `${part.name} ${letter} ${id}`).toBeLessThan(WITHIN)
          }
  })
})

/** The sides of a piece that run along a curved seam. */
const curvedSeams = ({ polygon, edges }: Pick<Cell, 'polygon' | 'edges'>): readonly (readonly [Pair, Pair])[] =>
  edges.flatMap(({ kind, curve, from }, i) =>
    kind === 'seam' && curve
      ? polygon.slice(from, edges[i + 1]?.from).map((p, k) => [p, polygon[(from + k + 1) % polygon.length]!] as const)
      : [],
  )

it('[T30] a seam along a curve is on paper as the curve on the templates of both sides', async () => {
  const [, round] = await printed('bordered-table-tops')
  const { part, strokesOf } = round!
  const lengths = part.cells.map((cell) => {
    const toDrawing = leafToDrawing(part.rough.find((rough) => rough.cell === cell.id)!.polygon)
    const sides = curvedSeams(cell.cutTo ?? cell).map((side) =>
      side.map((p) => toDrawing(onLeaf(cell.placement, p))),
    ) as unknown as Segment[]
    for (const side of sides) expect(longestGap(side, strokesOf.get(cell.id)!, true), cell.id).toBeLessThan(WITHIN)
    return sides.reduce((sum, side) => sum + distance(...side), 0)
  })
  // once from the field and once from the border: two circles of 470 mm across, and eight wedges cut full by 0.05 degrees
  const around = 2 * Math.PI * 470 + (8 * 0.05 * Math.PI * 235) / 180
  expect(Math.abs(lengths.reduce((sum, length) => sum + length, 0) - around)).toBeLessThan(0.2)
})

describe('the hand of a template', () => {
  it('[T31] a lopsided wedge is on paper as it is cut, and not as its mirror image', async () => {
    const [lamp] = await printed('radial-of-twelve-on-a-square-core')
    const { part, strokesOf } = lamp!
    const missing = (cell: string, polygon: readonly Pair[]) =>
      sidesOf(polygon.map(leafToDrawing(polygon))).filter((side) => longestGap(side, strokesOf.get(cell)!) > 1).length
    // the pieces beside the diagonals end aslant
    const lopsided = part.rough.filter(({ polygon }) => missing('W1', polygon) === 0)
    expect(lopsided.map(({ cell }) => cell)).toEqual(['W1', 'W6', 'W7', 'W12'])
    for (const { cell, polygon } of lopsided) {
      expect(missing(cell, polygon)).toBe(0)
      expect(
        missing(
          cell,
          polygon.map(([x, y]): Pair => [-x, y]),
        ),
      ).toBeGreaterThan(0)
      expect(
        missing(
          cell,
          polygon.map(([x, y]): Pair => [x, -y]),
        ),
      ).toBeGreaterThan(0)
    }
  })
})
