import type { LaidFace, Piece } from '../fit/lay-face'
import { onLeaf, originOnLeaf } from '../fit/placement'
import type { Box } from '../geometry/box'
import { innerFit } from '../geometry/inner-fit'
import { add, cross, distance, point, scale, subtract, type Point } from '../geometry/point'
import { regionCovers, type Edge } from '../geometry/polygon'
import { invert, transformVector, type Transform } from '../geometry/transform'
import type { CellId } from '../ids'
import type { Nudge } from '../job/job'
import { present } from '../invariant'
import { ringCentroid } from '../geometry/pole'
import { stripBox, type SeamSide } from '../figure/align/seam-strip'
import { LEAST_SEAM } from '../figure/align/seam-slide'
import type { Seam } from './find-seams'

/** One leaf beside a seam: what of it must be looked at, which face is up, and how it lies. */
export interface StripLook {
  readonly cell: CellId
  readonly leaf: number
  readonly face: 'numbered' | 'other'
  readonly side: SeamSide
  readonly box: Box<'leaf'>
  readonly leafToPanel: Transform<'leaf', 'panel'>
}

/** The two leaves beside the longest stretch of a seam. */
export interface SeamLook {
  readonly letter: string
  readonly edge: Edge<'panel'>
  readonly first: StripLook
  readonly second: StripLook
  /** Shorter than what one number can be trusted for. */
  readonly isShort: boolean
}

/** What must be looked at to find the slide at a seam; null where a leaf is missing. */
export function seamLook(face: LaidFace, seam: Seam): SeamLook | null {
  const longest = seam.stretches.reduce((best, next) => (lengthOf(next.edge) > lengthOf(best.edge) ? next : best))
  const first = stripLook(pieceOf(face, longest.left), longest.edge)
  const second = stripLook(pieceOf(face, longest.right), longest.edge)
  if (!first || !second) return null
  return { letter: seam.letter, edge: longest.edge, first, second, isShort: lengthOf(longest.edge) < LEAST_SEAM }
}

const lengthOf = ({ a, b }: Edge<'panel'>): number => distance(a, b)

const pieceOf = ({ pieces }: LaidFace, id: CellId): Piece =>
  present(
    pieces.find(({ cell }) => cell.id === id),
    `no cell ${id}`,
  )

function stripLook({ cell, leaf, leafToPanel }: Piece, edge: Edge<'panel'>): StripLook | null {
  if (!leaf) return null
  const middle = ringCentroid(cell.face.ring)
  const side = cross(subtract(edge.b, edge.a), subtract(middle, edge.a)) > 0 ? 'clockwise' : 'anticlockwise'
  const box = stripBox(edge, side, leafToPanel)
  return { cell: cell.id, leaf: leaf.number, face: cell.turn.turnedOver ? 'other' : 'numbered', side, box, leafToPanel }
}

/** By how much leaves are slid along their seams, as nudges of their cells. */
export interface LineUp {
  readonly nudges: Readonly<Record<CellId, Nudge>>
  /** Cells that could not go all the way because their wood ends; with what is lacking, mm. */
  readonly heldBack: readonly { readonly cell: CellId; readonly leaf: number; readonly lacks: number }[]
}

/** A slide wanted at a seam: the second leaf moved by this much along the edge from a to b, mm. */
export interface WantedSlide {
  readonly look: SeamLook
  readonly by: number
}

/** One seam lined up: its second leaf is slid, the others stay. */
export const linedUpAt = (face: LaidFace, { look, by }: WantedSlide): LineUp =>
  asNudges(face, new Map([[look.second.cell, slideAlong(look, by)]]))

/**
 * All seams lined up, outwards from one: its first cell stays, and each slide is carried on to the cells beyond, so that
 * what has been lined up stays so.
 */
export function linedUpFrom(face: LaidFace, start: string, slides: readonly WantedSlide[]): LineUp {
  const begin = slides.find(({ look }) => look.letter === start) ?? slides[0]
  if (!begin) return { nudges: {}, heldBack: [] }
  const moved = new Map<CellId, Point<'panel'>>([[begin.look.first.cell, point(0, 0)]])
  const waiting = [begin.look.first.cell]
  for (let cell = waiting.shift(); cell !== undefined; cell = waiting.shift()) {
    const carried = moved.get(cell)!
    for (const { look, by } of slides) {
      const isFirst = look.first.cell === cell
      if (!isFirst && look.second.cell !== cell) continue
      const beyond = isFirst ? look.second.cell : look.first.cell
      if (moved.has(beyond)) continue
      moved.set(beyond, add(carried, slideAlong(look, isFirst ? by : -by)))
      waiting.push(beyond)
    }
  }
  return asNudges(face, moved)
}

const slideAlong = ({ edge: { a, b } }: SeamLook, by: number): Point<'panel'> =>
  scale(subtract(b, a), by / distance(a, b))

function asNudges(face: LaidFace, moves: ReadonlyMap<CellId, Point<'panel'>>): LineUp {
  const nudges: Record<CellId, Nudge> = {}
  const heldBack: LineUp['heldBack'][number][] = []
  for (const [cell, move] of moves) {
    const piece = pieceOf(face, cell)
    const length = Math.hypot(move.x, move.y)
    if (!piece.leaf || length < LEAST_MOVE) continue
    // the leaf goes with the move, so the window goes against it on the leaf
    const back = scale(transformVector(invert(piece.leafToPanel), move), -1)
    const share = shareThatFits(piece, back)
    if (share < 1) heldBack.push({ cell, leaf: piece.leaf.number, lacks: (1 - share) * length })
    if (share > 0) nudges[cell] = { leaf: piece.leaf.number, by: rounded(add(piece.place.nudge, scale(back, share))) }
  }
  return { nudges, heldBack }
}

/** Less than this nobody can lay by hand, mm. */
const LEAST_MOVE = 0.05

const rounded = ({ x, y }: Point<'leaf'>): Point<'leaf'> => point(Math.round(x * 100) / 100, Math.round(y * 100) / 100)

/** The share of a shift that keeps the rough piece in sound wood; all of it where it lies outside already. */
function shareThatFits({ rough, usable, place }: Piece, shift: Point<'leaf'>): number {
  const room = innerFit(usable, onLeaf(rough, point(0, 0)))
  const from = originOnLeaf(place)
  const fits = (share: number) => regionCovers(room, add(from, scale(shift, share)))
  if (!fits(0)) return 1
  let [kept, tried] = [0, 1]
  // in small steps first: beyond a knot there may be room again, but the leaf is not carried across it
  const steps = Math.max(1, Math.ceil(Math.hypot(shift.x, shift.y)))
  for (let i = 1; i <= steps; i++) {
    if (!fits(i / steps)) {
      tried = i / steps
      break
    }
    kept = i / steps
    if (i === steps) return 1
  }
  for (let i = 0; i < 12; i++) {
    const middle = (kept + tried) / 2
    if (fits(middle)) kept = middle
    else tried = middle
  }
  return kept
}
