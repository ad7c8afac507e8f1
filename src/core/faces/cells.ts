import { boxAround, boxCentre, type Side } from '../geometry/box'
import { movedSimple } from '../geometry/moved-simple'
import { overlapArea } from '../geometry/overlap'
import type { Space } from '../geometry/point'
import type { Curve } from '../geometry/curve'
import type { Outline } from '../geometry/panel-outline'
import { ringEdges, type Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { determinant, invert, transformPoint, type Transform } from '../geometry/transform'
import type { CellId, WindowGroup } from '../ids'
import { present } from '../invariant'
import type { Joint, Plan, PlannedCell, PlannedStrip, Turn } from '../patterns/pattern'
import { cutOff } from './cut-off'
import { WINDOW } from './window-group'
import { withTrueArcs } from '../geometry/true-arcs'

/** What an edge of a cell is: a seam, or an outer edge of the taped sheet, trued together with the seams or not. */
export type EdgeTag<S extends Space> =
  | {
      readonly kind: 'seam'
      readonly joint: Joint
      readonly curve: Curve<S> | null
      /** Between border and field: beside which edge of the panel's outline it runs. */
      readonly source?: number
      /** Round a jointed sheet, made when the joints within the sheet are. */
      readonly aroundSheet?: true
    }
  | {
      readonly kind: 'outer'
      readonly side: Side
      readonly jointed: boolean
      /** Which edge of the panel's outline, counted from 0 round it. */
      readonly source: number
      /** What it lies on where it is not straight. */
      readonly curve: Curve<S> | null
    }

/** A ring with a tag for each edge: `tags[i]` belongs to the edge from point i to the next. */
export interface TaggedRing<S extends Space> {
  readonly ring: Ring<S>
  readonly tags: readonly EdgeTag<S>[]
}

/** One piece of a face: where it lies, how a leaf is laid there, and the piece in leaf orientation. */
export interface Cell {
  readonly id: CellId
  readonly rank: number
  readonly turn: Turn
  readonly lay: Transform<'window', 'panel'>
  /** The window position that it shares with others. */
  readonly group: WindowGroup
  readonly face: TaggedRing<'panel'>
  readonly window: TaggedRing<'window'>
  /** What it is jointed to: the window, or a wedge cut full. */
  readonly toCut: TaggedRing<'window'>
  /** The jointed sheet that it is a strip of, as the piece that is cut from it later; null for a piece from one leaf. */
  readonly sheet: Cell | null
}

/**
 * The cells of a plan, cut out of a sheet. A cell that the sheet does not reach is left out; one that falls in several
 * parts gives a cell for each, all from the same leaf, named by the place in the pattern and `.2`, `.3` … from left to
 * right and then down. A cell that is cut from a jointed sheet gives one for each strip of it, `a`, `b` … behind its name.
 */
export function cutCells(plan: Plan, sheet: TaggedRing<'panel'>): readonly Cell[] {
  return plan.cells.flatMap((planned) => {
    const fuller = planned.cutBounds ? cutCell(asCut(planned), sheet) : null
    const whole = inParts(planned, cutCell(planned, sheet), fuller)
    return planned.strips ? whole.flatMap((one) => stripsOf(one, planned.strips!)) : whole.map(({ cell }) => cell)
  })
}

/** A cell, and what it is cut to in the face: its place, or more of it. */
interface CellAsCut {
  readonly cell: Cell
  readonly cutTo: TaggedRing<'panel'>
}

const inParts = (
  named: Omit<PlannedCell, 'bounds'>,
  faces: readonly TaggedRing<'panel'>[],
  fuller: readonly TaggedRing<'panel'>[] | null,
): readonly CellAsCut[] =>
  faces.map((face, i) => {
    const cutTo = fuller ? partAround(fuller, face) : face
    const cell = { ...cellFrom(named, face, WINDOW), id: i === 0 ? named.id : `${named.id}.${i + 1}` }
    return { cutTo, cell: fuller ? { ...cell, toCut: carriedBack(named.lay, cutTo) } : cell }
  })

const stripsOf = ({ cell: sheet, cutTo }: CellAsCut, strips: readonly PlannedStrip[]): readonly Cell[] =>
  strips.flatMap((strip) => {
    const fuller = cutTo === sheet.face ? null : cutCell(strip, aroundSheet(cutTo))
    const named = { ...strip, id: `${sheet.id}${strip.name}` }
    return inParts(named, cutCell(strip, aroundSheet(sheet.face)), fuller).map(({ cell }) => ({ ...cell, sheet }))
  })

const aroundSheet = ({ ring, tags }: TaggedRing<'panel'>): TaggedRing<'panel'> => ({
  ring,
  tags: tags.map((tag) => (tag.kind === 'seam' ? { ...tag, aroundSheet: true } : tag)),
})

/** A place in the pattern with the bounds that its piece is cut to. */
export const asCut = (planned: PlannedCell): PlannedCell => ({
  ...planned,
  bounds: planned.cutBounds ?? planned.bounds,
})

/** Of the parts of a piece cut full, the one that a part of the piece as it lies is part of. */
const partAround = (parts: readonly TaggedRing<'panel'>[], face: TaggedRing<'panel'>): TaggedRing<'panel'> =>
  parts.length === 1
    ? parts[0]!
    : parts.reduce((best, part) =>
        overlapArea(part.ring, face.ring) > overlapArea(best.ring, face.ring) ? part : best,
      )

/** A cell, of which it is known where it lies in the face. */
export const cellFrom = (
  { id, rank, turn, lay }: Omit<PlannedCell, 'bounds'>,
  face: TaggedRing<'panel'>,
  group: WindowGroup,
): Cell => {
  const window = carriedBack(lay, face)
  return { id, rank, turn, lay, group, face, window, toCut: window, sheet: null }
}

/** The taped sheet, its edges tagged; straight ones along the grain may be trued together with the seams. */
export function taggedSheet({ ring, edges }: Outline<'panel'>, plan: Plan): TaggedRing<'panel'> {
  return {
    ring,
    tags: ringEdges(ring).map(({ a, b }, i) => {
      const { side, source, curve } = edges[i]!
      const isSquare = Math.abs(a.x - b.x) < GRID || Math.abs(a.y - b.y) < GRID
      return { kind: 'outer', side, source, curve, jointed: !curve && isSquare && plan.outerJointed.includes(side) }
    }),
  }
}

/** The field of a bordered face, its edges tagged: they meet the border, or its string. */
export const taggedField = ({ ring, edges }: Outline<'panel'>): TaggedRing<'panel'> => ({
  ring,
  tags: edges.map(({ source, curve }) => ({ kind: 'seam', joint: 'border', source, curve })),
})

/** The parts of a sheet within the bounds of a cell. */
export function cutCell(
  planned: Pick<PlannedCell, 'bounds'>,
  sheet: TaggedRing<'panel'>,
): readonly TaggedRing<'panel'>[] {
  let left: readonly TaggedRing<'panel'>[] = [sheet]
  for (const { edge, joint } of planned.bounds)
    left = left.flatMap((ring) => cutOff(ring, edge, { kind: 'seam', joint, curve: null }))
  const parts = left.map((part) => withTrueArcs<'panel', EdgeTag<'panel'>>(part))
  return parts.length > 1 ? parts.sort(byPlace) : parts
}

function byPlace(p: TaggedRing<'panel'>, q: TaggedRing<'panel'>): number {
  const [a, b] = [boxCentre(boxAround(p.ring)), boxCentre(boxAround(q.ring))]
  return Math.abs(a.x - b.x) > GRID ? a.x - b.x : a.y - b.y
}

/** A tagged ring moved rigidly. A mirroring move turns the ring round, and the tags with it. */
export function carried<A extends Space, B extends Space>(
  t: Transform<A, B>,
  { ring, tags }: TaggedRing<A>,
): TaggedRing<B> {
  const points = ring.map((p) => transformPoint(t, p))
  const along = tags.map((tag): EdgeTag<B> => ({ ...tag, curve: carriedCurve(t, tag.curve) }))
  if (determinant(t) > 0) return { ring: points, tags: along }
  const last = points.length - 1
  return {
    ring: points.reverse(),
    tags: along.map((_, j) => along[(last - 1 - j + points.length) % points.length]!),
  }
}

/** The piece in leaf orientation. */
const carriedBack = (lay: Transform<'window', 'panel'>, face: TaggedRing<'panel'>): TaggedRing<'window'> =>
  carried(invert(lay), face)

/** An arc keeps its radius. */
const carriedCurve = <A extends Space, B extends Space>(t: Transform<A, B>, curve: Curve<A> | null): Curve<B> | null =>
  curve?.shape === 'arc' ? { ...curve, centre: transformPoint(t, curve.centre) } : curve

/** What edges lose when they are made straight. */
export interface Allowances {
  /** On side seams, wedge seams and the outer edges trued with them. */
  readonly first: number
  /** On cross seams, the diameter, round a jointed sheet, and where a border meets the field and itself at corners: made at a later stage. */
  readonly later: number
}

const LATER: ReadonlySet<Joint> = new Set<Joint>(['cross', 'diameter', 'corner', 'border'])

/** What one edge loses. Outer ends lose nothing but the overhang, which is in the sheet already. */
export function edgeAllowance<S extends Space>(tag: EdgeTag<S>, { first, later }: Allowances): number {
  if (tag.kind === 'outer') return tag.jointed ? first : 0
  if (tag.aroundSheet) return Math.max(first, later)
  return LATER.has(tag.joint) ? later : first
}

/**
 * The rough piece, in the frame of the window: each edge moved out by its allowance, corners mitred, without limit where
 * the piece is convex.
 */
export const roughWindow = ({ ring, tags }: TaggedRing<'window'>, allowances: Allowances): Ring<'window'> =>
  present(
    movedSimple(
      ring,
      tags.map((tag) => edgeAllowance(tag, allowances)),
    ),
    'a window that vanishes when it is made larger',
  )
