import type { LaidFace } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'
import { closedLine, text } from '../drawing/build'
import { clippedItems } from '../drawing/clip-items'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textLines } from '../drawing/text-width'
import { boxAround, boxCentre, boxHeight, boxRing, boxWidth, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { KEEP_OFFCUTS, offcutWords } from '../ledger/offcut-wording'
import { worthKeeping, type LeafRest } from '../ledger/offcuts'
import type { LengthUnit } from '../units/unit'
import { CUTTING_CAUTIONS } from './cautions'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'

const SIZE = 4.4
const STEP = 5.8
/** Left of a leaf for its number. */
const NUMBER = 14

/**
 * What is left of the leaves of a part, each leaf lying with its numbered end to the left, numbered side up: what is
 * taken dashed, and in what is left the largest clear strip with its label; below it what can be had.
 */
export function drawOffcuts(
  face: Pick<LaidFace, 'part' | 'flitch'>,
  rests: readonly LeafRest[],
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const hint = `${KEEP_OFFCUTS} Numbered end to the left, numbered side up; dashed: what is cut for the parts.`
  const head = pageHead(page, face.part.name, 'What is left of its leaves', hint)
  const foot = pageFoot(page, CUTTING_CAUTIONS)
  const longest = Math.max(...rests.map(({ outline }) => boxHeight(boxAround(outline))))
  const scale = (page.width - 2 * PAGE_ROOM - NUMBER) / longest
  const pages: Item[][] = []
  let y = Infinity
  for (const rest of rests) {
    const row = restRow(face, rest, scale, unit, page)
    if (y + row.height > foot.bottom) {
      pages.push([])
      y = head.bottom + 3
    }
    pages.at(-1)!.push(...row.items(y))
    y += row.height
  }
  return pages.map((items) => [...head.items, ...items, ...foot.items])
}

function restRow(face: Pick<LaidFace, 'flitch'>, rest: LeafRest, scale: number, unit: LengthUnit, page: PageSize) {
  const kept = worthKeeping([rest])
  const words = kept.map((offcut) => `${offcut.label}: ${offcutWords(offcut, unit)}`).join('.  ')
  const none = rest.letGo ? 'Let go of: the panels cut from it are finished.' : 'Nothing worth keeping.'
  const whose = rest.flitch === face.flitch.id ? '' : `Leaf ${rest.leaf}${ofFlitch(rest.flitchName)}. `
  const lines = textLines(`${whose}${words || none}`, page.width - 2 * PAGE_ROOM - NUMBER, SIZE)
  const box = boxAround(rest.outline)
  const tall = boxWidth(box) * scale
  return {
    height: tall + lines.length * STEP + 9,
    items: (y: number): readonly Item[] => {
      const onSheet = lyingAt(box, scale, y + 2)
      return [
        text(point(PAGE_ROOM, y + 2 + tall / 2 + 2.5), String(rest.leaf), { size: 8, weight: 'bold' }),
        closedLine('mark', rest.outline.map(onSheet), { pen: 0.3 }),
        // what does not fit its leaf would run through the words of the next
        ...clippedItems(
          rest.taken.map((ring) => closedLine('cut', ring.map(onSheet), { pen: 0.25, dash: [2, 1.2] })),
          boxAround(boxRing(box).map(onSheet)),
        ),
        ...kept.flatMap(({ strip, label }) => (strip ? stripItems(strip.box, label, onSheet) : [])),
        ...lines.map((line, i) => text(point(PAGE_ROOM + NUMBER, y + tall + 7 + i * STEP), line, { size: SIZE })),
      ]
    },
  }
}

/** A leaf turned by a quarter, never mirrored: along the grain to the right, its left edge at the bottom. */
const lyingAt =
  ({ min, max }: Box<'leaf'>, scale: number, top: number) =>
  ({ x, y }: Point<'leaf'>): Point<'sheet'> =>
    point(PAGE_ROOM + NUMBER + (y - min.y) * scale, top + (max.x - x) * scale)

function stripItems(box: Box<'leaf'>, label: string, onSheet: (p: Point<'leaf'>) => Point<'sheet'>): readonly Item[] {
  const { x, y } = onSheet(boxCentre(box))
  return [
    closedLine('trim', boxRing(box).map(onSheet), { pen: 0.18 }),
    text(point(x, y + 1.6), label, { size: SIZE, weight: 'bold', anchor: 'middle' }),
  ]
}
