import { fill, frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import { CAP_HEIGHT, textWidth } from '../drawing/text-width'
import type { LaidFace } from '../fit/lay-face'
import { point, type Point } from '../geometry/point'
import { cellsOf, type Assembly } from '../seams/assembly'
import { leafIn } from './jointing-words'

const BOX = 8
const STEP = 11
/** A narrower box has no room for a number. */
const NARROWEST = 7

const stageOf = (tree: Assembly): number => (tree.kind === 'piece' ? 0 : tree.stage)

/** The room that a drawn tree takes from top to bottom. */
export const treeHeight = (tree: Assembly): number => BOX + STEP * stageOf(tree)

/**
 * The tree of joints: the leaves in a row on top, below them a bracket for each joint with the letters of its seams, one
 * level lower for each stage. null where the leaves are too many, or the stages too deep, to be drawn.
 */
export function treeItems(
  face: LaidFace,
  tree: Assembly,
  { left, top, width }: { readonly left: number; readonly top: number; readonly width: number },
): readonly Item[] | null {
  const cells = cellsOf(tree)
  const wide = Math.min(width / cells.length, 26)
  const longest = Math.max(...cells.map((id) => textWidth(leafIn(face, id), 1, 'bold')))
  const size = Math.min(4.6, (wide - 2.4) / longest)
  if (wide < NARROWEST || size < SMALLEST_TEXT || stageOf(tree) > 8) return null
  const begin = left + (width - wide * cells.length) / 2
  const items: Item[] = cells.flatMap((id, i) => {
    const x = begin + i * wide
    const over = face.pieces.some(({ cell }) => cell.id === id && cell.turn.turnedOver)
    const box = { min: point<'sheet'>(x + 0.6, top), max: point<'sheet'>(x + wide - 0.6, top + BOX) }
    const corners = [box.min, point<'sheet'>(box.max.x, box.min.y), box.max, point<'sheet'>(box.min.x, box.max.y)]
    return [
      ...(over ? [fill('mark', corners)] : [frame('mark', box, { pen: 0.3 })]),
      text(point(x + wide / 2, top + BOX / 2 + (size * CAP_HEIGHT) / 2), leafIn(face, id), {
        size,
        weight: 'bold',
        anchor: 'middle',
        colour: over ? '#ffffff' : null,
      }),
    ]
  })
  brackets(tree, (index) => point(begin + (index + 0.5) * wide, top + BOX), 0, items)
  return items
}

/** Draws the brackets of a tree whose first piece is the one at `from`; gives where its foot is. */
function brackets(
  tree: Assembly,
  pieceAt: (index: number) => Point<'sheet'>,
  from: number,
  items: Item[],
): Point<'sheet'> {
  if (tree.kind === 'piece') return pieceAt(from)
  const a = brackets(tree.first, pieceAt, from, items)
  const b = brackets(tree.second, pieceAt, from + cellsOf(tree.first).length, items)
  const y = pieceAt(from).y + STEP * tree.stage - 5
  const foot = point<'sheet'>((a.x + b.x) / 2, y)
  const letters = tree.seams.map(({ letter }) => letter).join(' ')
  items.push(
    line('mark', [a, point(a.x, y), point(b.x, y), b], { pen: 0.4 }),
    text(point(foot.x, y - 1.2), letters, { size: 4, weight: 'bold', anchor: 'middle' }),
  )
  return foot
}
