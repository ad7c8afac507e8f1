import { arrow, closedLine, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Drawing, type Item } from '../drawing/drawing'
import { itemsBox } from '../drawing/item-box'
import { placed } from '../drawing/placed'
import type { Cell } from '../faces/cells'
import { finishedParts } from '../fit/finished-parts'
import type { LaidFace, Piece } from '../fit/lay-face'
import { boxAround, boxGrown, boxRing, boxWidth, type Box } from '../geometry/box'
import { convexOverlap, insideHalfPlane, isConvex } from '../geometry/convex'
import { farthestInside } from '../geometry/pole'
import { overlapArea } from '../geometry/overlap'
import { distance, point, type Point } from '../geometry/point'
import { polygonArea, ringEdges, transformRing, type Edge, type Ring } from '../geometry/polygon'
import { invert, rotation, transformPoint, translation } from '../geometry/transform'
import { present } from '../invariant'
import type { SheetTemplate } from '../templates/sheet-template'
import type { WindowTemplate } from '../templates/window-template'
import type { LengthUnit } from '../units/unit'
import { sheetHeading, sheetNotes, templateHeading, templateNotes } from './template-words'
import { blockItems, placeInRing, setBlock, type Paragraph } from './text-block'

/** White round the piece on the sheet. */
export const TEMPLATE_ROOM = 3

/**
 * A window at full scale in leaf orientation, seen from the numbered side, the numbered end at the top: the line to
 * cut, the seam lines inside it, what is trimmed after pressing, and which leaves it is for.
 */
export const drawWindowTemplate = (face: LaidFace, template: WindowTemplate, unit: LengthUnit): Drawing =>
  drawTemplate(face, { ...template, joints: [], cells: cellsOf(template.pieces) }, `template ${template.name}`, {
    heading: templateHeading(face, template, unit),
    notes: templateNotes(face, template, unit),
  })

/** What is cut from a jointed sheet, likewise, as the sheet is made: its joints within it, thick, to be laid on those of the wood. */
export const drawSheetTemplate = (face: LaidFace, template: SheetTemplate, unit: LengthUnit): Drawing =>
  drawTemplate(
    face,
    { ...template, cells: template.sheets.map(({ cell }) => cell) },
    `sheet template ${template.name}`,
    { heading: sheetHeading(face, template, unit), notes: sheetNotes(face, template, unit) },
  )

interface TemplateLines extends Pick<WindowTemplate, 'rough' | 'window' | 'tags' | 'straight'> {
  readonly joints: readonly Edge<'window'>[]
  /** What is cut by it. */
  readonly cells: readonly Cell[]
}

interface TemplateWords {
  readonly heading: readonly Paragraph[]
  readonly notes: readonly Paragraph[]
}

function drawTemplate(face: LaidFace, template: TemplateLines, name: string, words: TemplateWords): Drawing {
  const box = boxAround(template.rough)
  const windowToSheet = translation<'window', 'sheet'>(TEMPLATE_ROOM - box.min.x, TEMPLATE_ROOM - box.min.y)
  const onSheet = (p: Point<'window'>): Point<'sheet'> => transformPoint(windowToSheet, p)
  const ring = template.rough.map(onSheet)
  const trims = trimRings(face, template.cells).map((trim) => transformRing(windowToSheet, trim))
  const lines: readonly Item[] = [
    closedLine('cut', ring),
    ...seamLines(template).map((along) => line('seam', along.map(onSheet), { dash: [6, 2] })),
    ...template.joints.map(({ a, b }) => line('seam', [onSheet(a), onSheet(b)], { pen: 0.7 })),
    ...trims.map((trim) => closedLine('trim', trim, { dash: [8, 2, 1, 2] })),
  ]
  const clear = roomForWords(trims[0] ?? template.window.map(onSheet))
  const beside = sideOfJoints(
    clear,
    template.joints.map(({ a, b }) => ({ a: onSheet(a), b: onSheet(b) })),
  )
  const set = templateItems({ ring, clear: beside, straight: template.straight }, words.heading, words.notes)
  const all = present(itemsBox([...lines, ...set]), 'a template has lines')
  return {
    title: `${face.part.name}, ${name}`,
    extent: boxGrown(all, { top: TEMPLATE_ROOM, right: TEMPLATE_ROOM, bottom: TEMPLATE_ROOM, left: TEMPLATE_ROOM }),
    items: [...lines, ...set],
  }
}

/** No joint runs through the words: they stand in the largest part that the joints leave. */
function sideOfJoints(ring: Ring<'sheet'>, joints: readonly Edge<'sheet'>[]): Ring<'sheet'> {
  let parts: readonly Ring<'sheet'>[] = [ring]
  for (const joint of joints) {
    const back = { a: joint.b, b: joint.a }
    parts = parts.flatMap((part) =>
      [joint, back].flatMap((edge) => {
        const half = insideHalfPlane(part, edge)
        return half ? [half] : []
      }),
    )
  }
  const [first = ring, ...others] = parts
  return others.reduce((best, part) => (polygonArea([part]) > polygonArea([best]) ? part : best), first)
}

/** Words are placed in a convex ring: in one that is not, the square about the spot with most room. */
function roomForWords(ring: Ring<'sheet'>): Ring<'sheet'> {
  const pole = isConvex(ring) ? null : farthestInside([[ring]])
  if (!pole) return ring
  const half = pole.clearance / Math.SQRT2
  return boxRing({ min: point(pole.at.x - half, pole.at.y - half), max: point(pole.at.x + half, pole.at.y + half) })
}

export const cellsOf = (pieces: readonly Piece[]): readonly Cell[] => pieces.map(({ cell }) => cell)

/** The edges of the piece that become seams, and those trued with them; a curved one as all its points in one line. */
export function seamLines({
  window,
  tags,
}: Pick<WindowTemplate, 'window' | 'tags'>): readonly (readonly Point<'window'>[])[] {
  const lines: Point<'window'>[][] = []
  ringEdges(window).forEach(({ a, b }, i) => {
    const tag = tags[i]!
    if (tag.kind === 'outer' && !tag.jointed) return
    const [before, last] = [tags[i - 1], lines.at(-1)]
    if (tag.curve && last && before?.curve && before.kind === tag.kind && before.source === tag.source) last.push(b)
    else lines.push([a, b])
  })
  return lines
}

/** The finished panel within the piece, if it is the same for every leaf that is cut by this template. */
export function trimRings(face: LaidFace, cells: readonly Cell[]): readonly Ring<'window'>[] {
  const rings = cells.map((cell) => finishedInWindow(face, cell))
  const [first] = rings
  if (!first || first.length < 3 || !rings.every((ring) => isSame(ring, first))) return []
  return [first]
}

function finishedInWindow(face: LaidFace, cell: Cell): Ring<'window'> {
  const panelToWindow = invert(cell.lay)
  if (face.part.outline.shape === 'rectangle')
    return convexOverlap(transformRing(panelToWindow, boxRing(face.sizes.finished)), cell.toCut.ring) ?? []
  const part = finishedParts(face, cell).find(({ ring }) => overlapArea(ring, cell.face.ring) > 1)
  return part ? transformRing(panelToWindow, part.ring) : []
}

const isSame = (ring: Ring<'window'>, other: Ring<'window'>): boolean =>
  ring.length === other.length && ring.every((p) => other.some((q) => distance(p, q) < 0.01))

interface Shape {
  readonly ring: Ring<'sheet'>
  /** Where no line runs through the words. */
  readonly clear: Ring<'sheet'>
  readonly straight: boolean
}

/**
 * The words within the piece, upright or along the grain; those that are only good to know may stand below it, and all
 * of them where it is too small.
 */
function templateItems(
  { ring, clear, straight }: Shape,
  heading: readonly Paragraph[],
  notes: readonly Paragraph[],
): readonly Item[] {
  const box = boxAround(ring)
  const whole = uprightIn(clear, [...heading, ...notes]) ?? alongIn(clear, [...heading, ...notes])
  const marks = (words: readonly Item[]) => (straight ? endMarks(box, words) : [])
  if (whole) return [...whole, ...marks(whole)]
  const within = uprightIn(clear, heading) ?? alongIn(clear, heading)
  if (within) return [...within, ...marks(within), ...below(box, notes)]
  const middle = (box.min.x + box.max.x) / 2
  const foot = Math.min(box.max.y - 4, box.min.y + 40)
  return [
    ...arrow('mark', point(middle, foot), point(middle, Math.max(box.min.y + 12, foot - ARROW)), { pen: 0.6 }),
    ...below(box, [...heading, ...notes]),
  ]
}

const ARROW = 22

/** Lines that are read with the numbered end up, an arrow beside them. */
function uprightIn(ring: Ring<'sheet'>, paragraphs: readonly Paragraph[]): readonly Item[] | null {
  const place = placeInRing(ring, paragraphs, { beside: 9, over: 0 })
  if (!place) return null
  const { x, y } = place.at
  return [
    ...blockItems(place.block, place.at),
    ...arrow('mark', point(x - 6, y + 3 + ARROW), point(x - 6, y + 3), HEAD),
  ]
}

/** Lines that run along the grain towards the numbered end, an arrow over them. */
function alongIn(ring: Ring<'sheet'>, paragraphs: readonly Paragraph[]): readonly Item[] | null {
  const turned = transformRing(rotation<'sheet', 'sheet'>(Math.PI / 2), ring)
  const place = placeInRing(turned, paragraphs, { beside: 0, over: 7 })
  if (!place) return null
  const { x, y } = place.at
  const items = [...blockItems(place.block, place.at), ...arrow('mark', point(x, y - 4), point(x + ARROW, y - 4), HEAD)]
  return placed(items, rotation(-Math.PI / 2))
}

const HEAD = { head: 6, pen: 0.6 }

function below({ min, max }: Box<'sheet'>, paragraphs: readonly Paragraph[]): readonly Item[] {
  const block = present(setBlock(paragraphs, Math.max(max.x - min.x, 130)), 'words narrower than a page')
  return blockItems(block, point(min.x, max.y + 4))
}

/** On a long piece the way to the numbered end is shown again and again, for the pages on which it comes. */
function endMarks(box: Box<'sheet'>, words: readonly Item[]): readonly Item[] {
  const free = present(itemsBox(words), 'a template has words').max.y + 30
  const spots: number[] = []
  for (let y = free; y < box.max.y - 20; y += 200) spots.push(y)
  if (boxWidth(box) < 60) return []
  return spots.flatMap((y) => [
    ...arrow('mark', point(box.min.x + 20, y), point(box.min.x + 20, y - 14), { head: 4 }),
    text(point(box.min.x + 23, y), 'numbered end', { size: SMALLEST_TEXT }),
  ])
}
