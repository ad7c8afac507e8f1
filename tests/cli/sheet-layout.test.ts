/**
 * [T21] On no sheet is there a text smaller than 9 pt, one that runs off the page or over its edge, or two that lie
 *   over each other.
 * [T22] A leaf's tag is black with a turning arrow if and only if the leaf is turned over; on templates, which are all
 *   in leaf orientation, the numbered end is named and every leaf is told to be cut numbered side up.
 */
import { describe, expect, it } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { SMALLEST_TEXT, type Drawing, type Item, type Text } from '../../src/core/drawing/drawing'
import { textCorners } from '../../src/core/drawing/item-box'
import type { Sheet } from '../../src/core/drawing/sheet-set'
import { boxAround, type Box } from '../../src/core/geometry/box'
import { convexOverlapArea } from '../../src/core/geometry/convex'
import { point } from '../../src/core/geometry/point'
import { asCutSheets } from '../../src/core/sheets/draw-as-cut'
import { pressSheets } from '../../src/core/sheets/draw-press-sheet'
import { jobTimeline } from '../../src/core/press/of-job/job-timeline'
import { drawHours } from '../../src/core/sheets/draw-hours'
import { drawFace } from '../../src/core/sheets/draw-face'
import { pieceLabel } from '../../src/core/sheets/leaf-words'
import { partSheets } from '../../src/core/sheets/part-sheets'
import { facesOf, JOB_NAMES, jobOf } from './all-jobs'
import { madeUpSights } from './made-up-sights'

const PAPERS = [
  { paper: 'A4', width: 210, height: 297 },
  { paper: 'Letter', width: 215.9, height: 279.4 },
  { paper: 'A3', width: 297, height: 420 },
]

/** What printers leave white round a page. */
const WHITE = 6

const textsOf = (items: readonly Item[]): readonly Text[] => items.filter((item) => item.kind === 'text')

function troubles(items: readonly Item[], { min, max }: Box<'sheet'>): readonly string[] {
  const texts = textsOf(items).map((item) => ({ item, corners: textCorners(item) }))
  const off = texts
    .filter(({ corners }) => {
      const box = boxAround(corners)
      return box.min.x < min.x || box.min.y < min.y || box.max.x > max.x || box.max.y > max.y
    })
    .map(({ item }) => `off: ${item.text}`)
  const small = texts.filter(({ item }) => item.size < SMALLEST_TEXT).map(({ item }) => `small: ${item.text}`)
  const over = texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .filter((other) => convexOverlapArea(one.corners, other.corners) > 0.01)
      .map((other) => `over each other: ${one.item.text} | ${other.item.text}`),
  )
  return [...off, ...small, ...over]
}

const laidOut = (sheet: Sheet, page: { width: number; height: number }): readonly (readonly Item[])[] =>
  sheet.kind === 'page' ? sheet.draw(page) : []

const drawings = (sheets: readonly Sheet[]): readonly Drawing[] =>
  sheets.flatMap((sheet) => (sheet.kind === 'full scale' ? [sheet.drawing] : []))

describe.each(JOB_NAMES)('the sheets of %s', (name) => {
  const job = jobOf(name)
  const faces = facesOf(job)
  const allSheets = (face: DerivedPart) => partSheets(face, job.unit, { sights: madeUpSights(face) }).sheets

  it.each(PAPERS)('[T21] every text on $paper can be read', ({ paper, width, height }) => {
    const within: Box<'sheet'> = { min: point(WHITE, WHITE), max: point(width - WHITE, height - WHITE) }
    for (const face of faces)
      for (const sheet of [
        ...(paper === 'A4' ? allSheets(face) : partSheets(face, job.unit).sheets),
        ...pressSheets(face, job.pressRoom, job.unit).sheets,
        ...asCutSheets(face, job.shop, job.unit).sheets,
      ])
        for (const items of laidOut(sheet, { width, height }))
          expect(troubles(items, within), `${face.part.name}, ${sheet.title}`).toEqual([])
  })

  it.each(PAPERS)('[T21] every text of the hours on $paper can be read', ({ width, height }) => {
    const within: Box<'sheet'> = { min: point(WHITE, WHITE), max: point(width - WHITE, height - WHITE) }
    const time = jobTimeline(faces, { ...job.pressRoom, platen: { width: 400, length: 700 } }, true)
    for (const items of drawHours(job.name, time, { width, height })) expect(troubles(items, within)).toEqual([])
  })

  it('[T21] every text on templates and pictures of the face can be read', () => {
    for (const face of faces)
      for (const drawing of [...drawings(allSheets(face)), drawFace(face, job.unit)])
        expect(troubles(drawing.items, drawing.extent), drawing.title).toEqual([])
  })

  it('[T22] a leaf that is turned over has a black tag, one that is not a white one', () => {
    for (const face of faces) {
      const texts = textsOf(drawFace(face, job.unit).items)
      for (const piece of face.pieces.filter(({ leaf }) => leaf)) {
        const { cell } = piece
        const tags = texts.filter(({ text, weight }) => text === pieceLabel(piece, '') && weight === 'bold')
        expect(tags.length).toBeGreaterThan(0)
        for (const tag of tags) expect(tag.colour === '#ffffff').toBe(cell.turn.turnedOver)
      }
    }
  })

  it('[T22] every template says how it is cut and where the numbered end is', () => {
    for (const face of faces) {
      const templates = drawings(partSheets(face, job.unit).sheets.filter(({ title }) => title.startsWith('Template')))
      expect(templates.length).toBeGreaterThan(0)
      for (const { items, title } of templates) {
        const words = textsOf(items)
          .map(({ text }) => text)
          .join(' ')
        expect(words, title).toContain('Cut numbered side up')
        expect(words, title).toContain('numbered end')
        expect(words, title).toContain(face.part.name)
      }
    }
  })
})
