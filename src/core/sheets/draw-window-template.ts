import { arrow, closedLine, line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { textLines } from '../drawing/text-width'
import type { LaidFace, Piece } from '../fit/lay-face'
import { boxAround, boxGrown, boxHeight, boxRing, type Box } from '../geometry/box'
import { convexOverlap } from '../geometry/convex'
import { distance, point, type Point } from '../geometry/point'
import { ringEdges, transformRing, type Ring } from '../geometry/polygon'
import { invert, transformPoint, translation } from '../geometry/transform'
import { roughSize, type WindowTemplate } from '../templates/window-template'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { leavesInWords } from './leaf-words'

/** White round the piece on the sheet. */
const ROOM = 12

/**
 * A window at full scale in leaf orientation, seen from the numbered side, the numbered end at the top: the line to
 * cut, the seam lines inside it, what is trimmed after pressing, and which leaves it is for.
 */
export function drawWindowTemplate(face: LaidFace, template: WindowTemplate, unit: LengthUnit): Drawing {
  const box = boxAround(template.rough)
  const windowToSheet = translation<'window', 'sheet'>(ROOM - box.min.x, ROOM - box.min.y)
  const onSheet = (p: Point<'window'>): Point<'sheet'> => transformPoint(windowToSheet, p)
  const sheetBox: Box<'sheet'> = { min: onSheet(box.min), max: onSheet(box.max) }
  return {
    title: `${face.part.name}, template ${template.name}`,
    extent: boxGrown(sheetBox, { top: ROOM, right: ROOM, bottom: ROOM, left: ROOM }),
    items: [
      closedLine('cut', template.rough.map(onSheet)),
      ...seamLines(template).map(({ a, b }) => line('seam', [onSheet(a), onSheet(b)], { dash: [4, 1.5] })),
      ...trimRings(face, template.pieces).map((ring) =>
        closedLine('trim', transformRing(windowToSheet, ring), { dash: [8, 2, 1, 2] }),
      ),
      ...words(face, template, unit, sheetBox, onSheet),
    ],
  }
}

/** The edges of the piece that become seams, and those trued with them. */
const seamLines = ({ window, tags }: WindowTemplate) =>
  ringEdges(window).filter((_, i) => {
    const tag = tags[i]!
    return tag.kind === 'seam' || tag.jointed
  })

/** The finished panel within the piece, if it is the same for every leaf that is cut by this template. */
function trimRings({ sizes }: LaidFace, pieces: readonly Piece[]): readonly Ring<'window'>[] {
  const finished = boxRing(sizes.finished)
  const rings = pieces.map(({ cell }) => {
    const panelToWindow = invert(cell.lay)
    const ring = convexOverlap(transformRing(panelToWindow, finished), cell.window.ring)
    return ring ?? []
  })
  const [first] = rings
  if (!first || first.length < 3 || !rings.every((ring) => isSame(ring, first))) return []
  return [first]
}

const isSame = (ring: Ring<'window'>, other: Ring<'window'>): boolean =>
  ring.length === other.length && ring.every((p) => other.some((q) => distance(p, q) < 0.01))

/** What is written on the template: along its middle, towards the wide end, never wider than the piece is there. */
function words(
  face: LaidFace,
  template: WindowTemplate,
  unit: LengthUnit,
  box: Box<'sheet'>,
  onSheet: Transformer,
): readonly Item[] {
  const ring = template.rough.map(onSheet)
  const size = roughSize(template)
  const lines: Line[] = [
    { words: 'Cut numbered side up', size: 7, bold: true },
    { words: `${face.part.name}, template ${template.name}`, size: 5, bold: true },
    { words: capital(leavesInWords(template.pieces)), size: 5, bold: false },
    {
      words: `${showLength(size.width, unit, 'seam')} × ${showLength(size.length, unit, 'seam')}`,
      size: 5,
      bold: false,
    },
    {
      words: template.straight
        ? 'Straight: set out by rule, stop and square; this paper is a check.'
        : 'Middle of the full line is the size.',
      size: 3.6,
      bold: false,
    },
    { words: 'Full line: cut. Dashes: seam. Dash and dot: trim.', size: 3.6, bold: false },
  ]
  const place = widestPlace(ring, box)
  const set = setLines(lines, place)
  return [...set, ...endArrow(place, box)]
}

type Transformer = (p: Point<'window'>) => Point<'sheet'>

interface Line {
  readonly words: string
  readonly size: number
  readonly bold: boolean
}

/** Where text has most room: a level band of the piece, its middle and how wide it is throughout. */
interface Place {
  readonly x: number
  readonly top: number
  readonly bottom: number
  readonly width: number
  readonly pointsDown: boolean
}

function widestPlace(ring: Ring<'sheet'>, box: Box<'sheet'>): Place {
  const height = boxHeight(box)
  const places = [0.12, 0.3, 0.48].map((share) => {
    const [top, bottom] = [box.min.y + height * share, box.min.y + height * (share + 0.4)]
    const [one, other] = [spanAt(ring, top), spanAt(ring, bottom)]
    const [low, high] = [Math.max(one.low, other.low), Math.min(one.high, other.high)]
    return {
      x: (low + high) / 2,
      top,
      bottom,
      width: high - low,
      pointsDown: one.high - one.low > other.high - other.low,
    }
  })
  return places.reduce((best, place) => (place.width > best.width + 1 ? place : best))
}

function spanAt(ring: Ring<'sheet'>, y: number): { low: number; high: number } {
  const xs = ringEdges(ring).flatMap(({ a, b }) =>
    a.y > y === b.y > y ? [] : [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)],
  )
  return { low: Math.min(...xs), high: Math.max(...xs) }
}

function setLines(lines: readonly Line[], { x, top, bottom, width }: Place): readonly Item[] {
  const room = width - 8
  const wrapped = lines.flatMap(({ words, size, bold }) => {
    const fitting = Math.max(3.2, Math.min(size, room / 12))
    return textLines(words, room, fitting, bold ? 'bold' : 'regular').map((line) => ({ line, size: fitting, bold }))
  })
  const height = wrapped.reduce((sum, { size }) => sum + size * 1.35, 0)
  // too small a piece for words: its name alone
  const kept = height > (bottom - top) * 1.6 ? wrapped.slice(0, 3) : wrapped
  let y = (top + bottom) / 2 - kept.reduce((sum, { size }) => sum + size * 1.35, 0) / 2
  return kept.map(({ line, size, bold }) => {
    y += size * 1.35
    return text(point(x, y), line, { size, weight: bold ? 'bold' : 'regular', anchor: 'middle' })
  })
}

/** An arrow towards the numbered end, which is at the top. */
function endArrow({ x, top }: Place, box: Box<'sheet'>): readonly Item[] {
  const from = Math.max(box.min.y + 34, top - 4)
  const to = Math.max(box.min.y + 8, from - 26)
  return [
    ...arrow('mark', point(x, from), point(x, to), { head: 5, pen: 0.5 }),
    text(point(x + 4, from - 2), 'to the numbered end', { size: 3.6 }),
  ]
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
