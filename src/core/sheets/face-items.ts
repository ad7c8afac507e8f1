import { arrowHead, arc, circle, closedLine, fill, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import { CAP_HEIGHT, textWidth } from '../drawing/text-width'
import { BORDER } from '../faces/window-group'
import type { Piece } from '../fit/lay-face'
import { jointsWithin } from '../fit/piece-parts'
import { boxAround, boxCentre, boxesOverlap, type Box } from '../geometry/box'
import { isConvex } from '../geometry/convex'
import type { Outline } from '../geometry/panel-outline'
import { between, distance, point, type Point } from '../geometry/point'
import { farthestInside, ringCentroid } from '../geometry/pole'
import { signedArea, type Edge, type Ring } from '../geometry/polygon'
import { transformPoint, type Transform } from '../geometry/transform'
import { isBandJoint, type Joint } from '../patterns/pattern'
import { centreOfRecipe } from '../patterns/recipe-centre'
import type { SeamReport } from '../seams/seam-report'
import type { JudgedFace } from './judged-face'
import { pieceLabel } from './leaf-words'
import { placeTags } from './tag-places'

/** How a face is put on a sheet: where, how large, and how large its writing is there. */
export interface FaceView {
  readonly panelToSheet: Transform<'panel', 'sheet'>
  /** The em of letters and numbers, mm on the sheet. */
  readonly size: number
  /** Where letters may not stand: other words. */
  readonly taken?: readonly Box<'sheet'>[]
  /** What letters may not leave: beyond it stand other things. */
  readonly within?: Box<'sheet'>
  /** Seams without a letter, where there is no room for them. */
  readonly unlettered?: Joint
}

/** The em of letters and numbers on a page for one face: on one of many small pieces as small as it may be. */
export const writingSize = ({ pieces }: Pick<JudgedFace, 'pieces'>): number =>
  pieces.length > MANY ? SMALLEST_TEXT : 4.6
const MANY = 40

/** The three sizes, the cells, the seams with their letters, the centre lines, and each leaf's number the way it lies. */
export const faceItems = (face: JudgedFace, view: FaceView): readonly Item[] => faceWithLetters(face, view).items

/** The same, with the letters of the seams that have no room for one. */
export function faceWithLetters(
  face: JudgedFace,
  view: FaceView,
): { readonly items: readonly Item[]; readonly leftOut: readonly string[] } {
  const onSheet = (p: Point<'panel'>) => transformPoint(view.panelToSheet, p)
  const box = ({ min, max }: Box<'panel'>): Box<'sheet'> => boxAround([onSheet(min), onSheet(max)])
  const ring = (outline: Outline<'panel'>) => outline.ring.map(onSheet)
  const centre = centreOfRecipe(face.part.recipe)
  const placed = placeTags(
    face.pieces.map((piece) => tagBox(piece, onSheet(tagPlace(piece, face, centre)), view.size)),
    face.pieces.map(({ cell }) => Math.abs(signedArea(cell.face.ring))),
    view.size / 2,
  )
  const tags = placed.map(({ box }) => box)
  const letters = placeLetters(face, [...tags, ...(view.taken ?? [])], centre, onSheet, view)
  const items = [
    closedLine('cut', ring(face.sizes.outlines.sheet), { dash: [2.5, 1.2] }),
    ...(isSameBox(face.sizes.core, face.sizes.finished)
      ? []
      : [closedLine('mark', ring(face.sizes.outlines.core), { dash: [0.8, 0.8] })]),
    closedLine('trim', ring(face.sizes.outlines.finished), { pen: 0.4 }),
    ...face.seams.map(({ line: along }) => line('seam', along.map(onSheet))),
    ...stringLines(face, ring),
    ...face.pieces.flatMap((piece) => jointLines(piece, onSheet)),
    ...centreLines(box(face.sizes.sheet), onSheet(point(0, 0)), view.size),
    ...letters.placed.flatMap((one) => letteredLine(one, view.size)),
    ...placed.flatMap(({ box: tag, led }) => (led ? [line('mark', [led, boxCentre(tag)])] : [])),
    ...face.pieces.flatMap((piece, i) => leafTag(piece, tags[i]!, view.size)),
  ]
  return { items, leftOut: letters.leftOut }
}

const isSameBox = (a: Box<'panel'>, b: Box<'panel'>): boolean =>
  a.min.x === b.min.x && a.min.y === b.min.y && a.max.x === b.max.x && a.max.y === b.max.y

type ToSheet = (p: Point<'panel'>) => Point<'sheet'>

/** Both edges of the string between border and field. */
const stringLines = ({ border }: JudgedFace, ring: (outline: Outline<'panel'>) => Ring<'sheet'>): readonly Item[] =>
  border?.string ? [border.string.outside, border.string.inside].map((edge) => closedLine('seam', ring(edge))) : []

/** Joints within a made-up leaf are dashed: they are no seam between two leaves. */
const jointLines = (piece: Piece, onSheet: ToSheet): readonly Item[] =>
  jointsWithin(piece, piece.windowOnLeaf).map(({ edge: { a, b } }) => {
    const at = (p: Point<'leaf'>) => onSheet(transformPoint(piece.leafToPanel, p))
    return line('seam', [at(a), at(b)], { dash: [3, 1.2] })
  })

function centreLines({ min, max }: Box<'sheet'>, { x, y }: Point<'sheet'>, size: number): readonly Item[] {
  const out = size * 0.9
  const dash = { dash: [4, 1, 0.8, 1] }
  return [
    line('mark', [point(x, min.y - out), point(x, max.y + out)], dash),
    line('mark', [point(min.x - out, y), point(max.x + out, y)], dash),
  ]
}

/** Letters where they stand, and those of seams that have no room for one. */
interface PlacedLetters {
  readonly placed: readonly (LetterPlace & { readonly letter: string })[]
  readonly leftOut: readonly string[]
}

/** Letters, each where it covers neither an earlier one nor other words; where there is no such place it is left out. */
function placeLetters(
  { seams, border }: JudgedFace,
  others: readonly Box<'sheet'>[],
  centre: Point<'panel'>,
  onSheet: ToSheet,
  { size, within, unlettered }: FaceView,
): PlacedLetters {
  const placed: (LetterPlace & { letter: string })[] = []
  const leftOut: string[] = []
  const taken = [...others]
  for (const seam of seams) {
    const { letter, kind } = seam
    if (kind === unlettered) continue
    // beyond the end of a seam of the field lies the border, not the edge of the wood
    const places =
      border && !isBandJoint(kind)
        ? [
            ...placesOn([seam.edge.a, seam.edge.b].map(onSheet), ON_FIELD),
            ...letterPlaces(seam, centre, onSheet, size).filter(({ ledTo }) => ledTo !== null),
          ]
        : letterPlaces(seam, centre, onSheet, size)
    const place = places
      .map((one) => ({ ...one, box: letterBox(one.at, size) }))
      .find(({ box }) => {
        return (!within || boxContains(within, box)) && !taken.some((other) => boxesOverlap(other, box))
      })
    if (place) {
      taken.push(place.box)
      placed.push({ letter, at: place.at, ledTo: place.ledTo })
    } else leftOut.push(letter)
  }
  return { placed, leftOut }
}

const boxContains = (outer: Box<'sheet'>, { min, max }: Box<'sheet'>): boolean =>
  min.x >= outer.min.x && min.y >= outer.min.y && max.x <= outer.max.x && max.y <= outer.max.y

const letteredLine = ({ letter, at, ledTo }: PlacedLetters['placed'][number], size: number): readonly Item[] => [
  ...(ledTo ? [line('mark', [ledTo, at])] : []),
  ...letterItems(letter, at, size),
]

/** Where a letter may stand; far from its seam a line leads back to the end of it. */
interface LetterPlace {
  readonly at: Point<'sheet'>
  readonly ledTo: Point<'sheet'> | null
}

/** Ems beyond either end, where all nearer places are taken. */
const FARTHER_OUT = [3.6, 5.3, 7]

const letterBox = ({ x, y }: Point<'sheet'>, size: number): Box<'sheet'> => ({
  min: point(x - size * 0.85, y - size * 0.85),
  max: point(x + size * 0.85, y + size * 0.85),
})

/** Beyond the end of the seam, outside the wood where it begins there; else beyond its other end, on it, or farther out. */
function letterPlaces(
  seam: SeamReport,
  centre: Point<'panel'>,
  onSheet: ToSheet,
  size: number,
): readonly LetterPlace[] {
  if (seam.kind === 'border') return placesOn(seam.line.map(onSheet), ROUND_FIELD)
  const { a, b } = isBandJoint(seam.kind) ? fromInside(seam.edge) : seam.edge
  const [from, to] = [onSheet(a), onSheet(b)]
  const isLevel = Math.abs(to.x - from.x) > Math.abs(to.y - from.y)
  const isRound = distance(a, centre) < 1e-6 || isBandJoint(seam.kind)
  // round a centre at the rim, else at the upper or left end
  const [end, other] = isRound ? [to, from] : isLevel ? [from, to] : from.y < to.y ? [from, to] : [to, from]
  const length = Math.hypot(end.x - other.x, end.y - other.y)
  const beyond = (p: Point<'sheet'>, away: number): Point<'sheet'> =>
    point(p.x + ((end.x - other.x) / length) * away, p.y + ((end.y - other.y) / length) * away)
  const along = [0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.22, 0.78].map((t) => beyond(other, t * length))
  const near = [beyond(end, size * 1.9), beyond(other, -size * 1.9), ...along]
  // a short one within a sheet has its letter beside it: farther out it would leave the page
  const beside = seam.kind === 'sheet' ? [2.2, -2.2, 3.4, -3.4].map((ems) => besideMiddle(from, to, ems * size)) : []
  return [
    ...near.map((at) => ({ at, ledTo: null })),
    ...beside,
    ...FARTHER_OUT.flatMap((ems) => [
      { at: beyond(end, size * ems), ledTo: end },
      { at: beyond(other, -size * ems), ledTo: other },
    ]),
  ]
}

function besideMiddle(from: Point<'sheet'>, to: Point<'sheet'>, away: number): LetterPlace {
  const ledTo = point<'sheet'>((from.x + to.x) / 2, (from.y + to.y) / 2)
  const length = distance(from, to)
  return { at: point(ledTo.x - ((to.y - from.y) / length) * away, ledTo.y + ((to.x - from.x) / length) * away), ledTo }
}

/** A seam across a border from the field outwards. */
const fromInside = ({ a, b }: Edge<'panel'>): Edge<'panel'> =>
  Math.hypot(a.x, a.y) < Math.hypot(b.x, b.y) ? { a, b } : { a: b, b: a }

/** Where on a seam letters may stand: round a field away from the ends, where other seams meet it; on one of the field. */
const ROUND_FIELD = [0.42, 0.3, 0.58, 0.2, 0.7, 0.12, 0.82]
const ON_FIELD = [0.78, 0.22, 0.66, 0.34, 0.88, 0.12, 0.5]

function placesOn(along: readonly Point<'sheet'>[], shares: readonly number[]): readonly LetterPlace[] {
  const lengths = along.slice(1).map((p, i) => distance(along[i]!, p))
  const whole = lengths.reduce((sum, length) => sum + length, 0)
  const at = (share: number) => {
    let left = share * whole
    const step = lengths.findIndex((length) => (left -= length) <= 0)
    return between(along[step + 1]!, along[step]!, -left / lengths[step]!)
  }
  return shares.map((share) => ({ at: at(share), ledTo: null }))
}

const letterItems = (letter: string, at: Point<'sheet'>, size: number): readonly Item[] => [
  fill('mark', ringOf(at, size * 0.85), '#ffffff'),
  circle('mark', at, size * 0.85),
  text(point(at.x, at.y + (size * CAP_HEIGHT) / 2), letter, { size, weight: 'bold', anchor: 'middle' }),
]

const ringOf = ({ x, y }: Point<'sheet'>, radius: number): Point<'sheet'>[] =>
  Array.from({ length: 24 }, (_, i) =>
    point<'sheet'>(x + Math.cos((i * Math.PI) / 12) * radius, y + Math.sin((i * Math.PI) / 12) * radius),
  )

/** White with its numbered side up; black, with a turning arrow, when it is turned over. */
function leafTag(piece: Piece, box: Box<'sheet'>, size: number): readonly Item[] {
  const at = boxCentre(box)
  const number = tagNumber(piece)
  const over = piece.cell.turn.turnedOver
  const ring = [box.min, point<'sheet'>(box.max.x, box.min.y), box.max, point<'sheet'>(box.min.x, box.max.y)]
  const words = text(point(over ? at.x - size * 0.55 : at.x, at.y + size * 1.2 * CAP_HEIGHT * 0.5), number, {
    size: size * 1.2,
    weight: 'bold',
    anchor: 'middle',
    colour: over ? '#ffffff' : null,
  })
  if (!over) return [fill('mark', ring, '#ffffff'), closedLine('mark', ring), words]
  const hook = point<'sheet'>(box.max.x - size * 0.75, at.y + size * 0.05)
  return [
    fill('mark', ring),
    words,
    arc('mark', hook, size * 0.38, Math.PI, 2 * Math.PI, { pen: 0.45, colour: '#ffffff' }),
    arrowHead('mark', point(hook.x + size * 0.38, hook.y + size * 0.4), Math.PI / 2, size * 0.6, '#ffffff'),
  ]
}

const tagNumber = (piece: Piece): string => pieceLabel(piece, '?')

function tagBox(piece: Piece, at: Point<'sheet'>, size: number): Box<'sheet'> {
  const width = textWidth(tagNumber(piece), size * 1.2, 'bold') + size * (piece.cell.turn.turnedOver ? 2.1 : 1)
  return { min: point(at.x - width / 2, at.y - size * 0.9), max: point(at.x + width / 2, at.y + size * 0.9) }
}

/** In the middle of the cell; in a wedge farther out, where there is room. */
function tagPlace({ cell }: Piece, { part: { recipe } }: JudgedFace, centre: Point<'panel'>): Point<'panel'> {
  const middle = boxCentre(boxAround(cell.face.ring))
  // the middle of a border's piece is that of its window
  if (cell.group === BORDER) return point(cell.lay.e, cell.lay.f)
  if (!isConvex(cell.face.ring)) return farthestInside([[cell.face.ring]])?.at ?? middle
  if (cell.turn.spun !== null) return middle
  // by area where an arc has many points, by corners else
  const isCurved = cell.face.tags.some(({ curve }) => curve !== null)
  const { x, y } = isCurved ? ringCentroid(cell.face.ring) : cornersCentre(cell.face.ring)
  if (recipe.pattern === 'herringbone' || recipe.pattern === 'parquet') return point(x, y)
  return point(centre.x + (x - centre.x) * 1.1, centre.y + (y - centre.y) * 1.1)
}

const cornersCentre = (ring: Ring<'panel'>): Point<'panel'> =>
  point(ring.reduce((sum, p) => sum + p.x, 0) / ring.length, ring.reduce((sum, p) => sum + p.y, 0) / ring.length)
