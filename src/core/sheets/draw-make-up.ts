import { closedLine, line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { cutLines } from '../fit/cut-lines'
import type { Piece } from '../fit/lay-face'
import { boxAround, boxHeight, boxWidth, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { leafOutline } from '../leaves/bundle'
import type { LengthUnit } from '../units/unit'
import { CUTTING_CAUTIONS } from './cautions'
import type { JudgedFace } from './judged-face'
import { makeUpWork, type MakeUpWork } from './make-up-words'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { blockItems, setBlock } from './text-block'
import { recipeSentence } from './recipe-sentence'

/** A page for each way in which leaves are made up before their pieces are cut: where to cut, and what it gives. */
export function drawMakeUps(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const sentence = recipeSentence(face.part, face.count, unit)
  const head = pageHead(page, face.part.name, 'Before the pieces are cut', sentence)
  const foot = pageFoot(page, CUTTING_CAUTIONS)
  return makeUpWork(face, unit).map((work) => [
    ...head.items,
    ...workItems(face, work, page, head.bottom + 4, foot.bottom),
    ...foot.items,
  ])
}

const CAPTION = 4

function workItems(
  face: JudgedFace,
  { title, steps, piece }: MakeUpWork,
  page: PageSize,
  top: number,
  bottom: number,
): readonly Item[] {
  const room = page.width - 2 * PAGE_ROOM
  const block = setBlock(
    [
      { words: title, size: 6, bold: true },
      ...steps.map((words, i) => ({ words: `${i + 1}  ${words}`, size: 4.4, bold: false })),
    ],
    room,
  )
  if (!block) return []
  const under = top + block.height + 6
  const half = (bottom - under) / 2
  const before = leafOutline(piece.flitch, piece.leaf!)
  const boxes = [boxAround(before), boxAround(piece.made!.outline[0])]
  const scale = Math.min(
    ...boxes.map((box) => Math.min(room / boxHeight(box), (half - CAPTION - 5) / Math.max(1, boxWidth(box)))),
  )
  const words = `leaf ${piece.leaf!.number}, numbered side up, numbered end to the left, scale 1 : ${(1 / scale).toFixed(1)}`
  return [
    ...blockItems(block, point(PAGE_ROOM, top)),
    ...leafItems(before, boxes[0]!, under + CAPTION + 2, scale, cutLines(piece, before), 'cut'),
    text(point(PAGE_ROOM, under + CAPTION), `Where to cut: ${words}`, { size: CAPTION }),
    ...madeItems(piece, boxes[1]!, under + half + CAPTION + 2, scale),
    text(point(PAGE_ROOM, under + half + CAPTION), 'Joined: dashed, the joints; dash and dot, the piece to be cut', {
      size: CAPTION,
    }),
  ]
}

/** The numbered end to the left: a quarter turn, not a mirror. */
const turnedAt =
  (box: Box<'leaf'>, top: number, scale: number) =>
  ({ x, y }: Point<'leaf'>): Point<'sheet'> =>
    point(PAGE_ROOM + (y - box.min.y) * scale, top + (box.max.x - x) * scale)

function leafItems(
  outline: Ring<'leaf'>,
  box: Box<'leaf'>,
  top: number,
  scale: number,
  lines: ReturnType<typeof cutLines>,
  layer: 'cut' | 'seam',
): readonly Item[] {
  const at = turnedAt(box, top, scale)
  return [
    closedLine('mark', outline.map(at), { pen: 0.25 }),
    ...lines.map(({ a, b }) => line(layer, [at(a), at(b)], layer === 'cut' ? { pen: 0.5 } : { dash: [4, 1.5] })),
  ]
}

function madeItems({ made, roughOnLeaf }: Piece, box: Box<'leaf'>, top: number, scale: number): readonly Item[] {
  const at = turnedAt(box, top, scale)
  const joints = made!.seams.map(({ edge }) => edge)
  return [
    ...leafItems(made!.outline[0], box, top, scale, joints, 'seam'),
    closedLine('trim', roughOnLeaf.map(at), { dash: [8, 2, 1, 2] }),
  ]
}
