import { boxRing, type Box, type Side } from '../geometry/box'
import { depthBehind } from '../geometry/convex'
import { movedOut } from '../geometry/offset'
import { between, distance, type Point, type Space } from '../geometry/point'
import type { Edge, Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { determinant, invert, transformPoint, type Transform } from '../geometry/transform'
import type { CellId } from '../ids'
import { present } from '../invariant'
import type { Joint, Plan, PlannedCell, Turn } from '../patterns/pattern'

/** What an edge of a cell is: a seam, or an outer edge of the taped sheet, trued together with the seams or not. */
export type EdgeTag =
  | { readonly kind: 'seam'; readonly joint: Joint }
  | { readonly kind: 'outer'; readonly side: Side; readonly jointed: boolean }

/** A ring with a tag for each edge: `tags[i]` belongs to the edge from point i to the next. */
export interface TaggedRing<S extends Space> {
  readonly ring: Ring<S>
  readonly tags: readonly EdgeTag[]
}

/** One piece of a face: where it lies, how a leaf is laid there, and the piece in leaf orientation. */
export interface Cell {
  readonly id: CellId
  readonly rank: number
  readonly turn: Turn
  readonly lay: Transform<'window', 'panel'>
  readonly face: TaggedRing<'panel'>
  readonly window: TaggedRing<'window'>
}

/** The cells of a plan, cut out of the taped sheet. A cell that the sheet does not reach is left out. */
export function cutCells(plan: Plan, sheet: Box<'panel'>): readonly Cell[] {
  const outer = taggedSheet(sheet, plan)
  return plan.cells.flatMap((planned) => {
    const face = cutCell(planned, outer)
    return face ? [{ ...identityOf(planned), face, window: carriedBack(planned.lay, face) }] : []
  })
}

const identityOf = ({ id, rank, turn, lay }: PlannedCell) => ({ id, rank, turn, lay })

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

function taggedSheet(sheet: Box<'panel'>, plan: Plan): TaggedRing<'panel'> {
  return {
    ring: boxRing(sheet),
    tags: SIDES.map((side) => ({ kind: 'outer', side, jointed: plan.outerJointed.includes(side) })),
  }
}

function cutCell(planned: PlannedCell, sheet: TaggedRing<'panel'>): TaggedRing<'panel'> | null {
  let left: TaggedRing<'panel'> | null = sheet
  for (const { edge, joint } of planned.bounds) left = left && cutOff(left, edge, { kind: 'seam', joint })
  return left
}

/** The part of a convex ring on the inner side of a line, the new edge tagged. null when nothing is left. */
function cutOff<S extends Space>({ ring, tags }: TaggedRing<S>, edge: Edge<S>, tag: EdgeTag): TaggedRing<S> | null {
  const depths = ring.map((p) => {
    const depth = depthBehind(edge, p)
    return Math.abs(depth) < GRID / 2 ? 0 : depth
  })
  const points: Point<S>[] = []
  const kept: EdgeTag[] = []
  ring.forEach((p, i) => {
    const j = (i + 1) % ring.length
    const [here, there] = [depths[i]!, depths[j]!]
    const leaves = here >= 0 && there < 0
    if (here >= 0) {
      points.push(p)
      kept.push(here === 0 && there < 0 ? tag : tags[i]!)
    }
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) {
      points.push(between(p, ring[j]!, here / (here - there)))
      kept.push(leaves ? tag : tags[i]!)
    }
  })
  return tidied(points, kept)
}

/** Without points that repeat; the edge that had no length goes. */
function tidied<S extends Space>(points: readonly Point<S>[], tags: readonly EdgeTag[]): TaggedRing<S> | null {
  const stays = points.map((p, i) => distance(p, points[(i + 1) % points.length]!) > GRID / 2)
  const ring = points.filter((_, i) => stays[i])
  return ring.length < 3 ? null : { ring, tags: tags.filter((_, i) => stays[i]) }
}

/** The piece in leaf orientation. A mirroring lay turns the ring round, and the tags with it. */
function carriedBack(lay: Transform<'window', 'panel'>, { ring, tags }: TaggedRing<'panel'>): TaggedRing<'window'> {
  const panelToWindow = invert(lay)
  const points = ring.map((p) => transformPoint(panelToWindow, p))
  if (determinant(lay) > 0) return { ring: points, tags }
  const last = points.length - 1
  return { ring: points.reverse(), tags: tags.map((_, j) => tags[(last - 1 - j + points.length) % points.length]!) }
}

/** What edges lose when they are made straight. */
export interface Allowances {
  /** On side seams, wedge seams and the outer edges trued with them. */
  readonly first: number
  /** On cross seams and the diameter, which are made at a later stage. */
  readonly later: number
}

/** What one edge loses. Outer ends lose nothing but the overhang, which is in the sheet already. */
export function edgeAllowance(tag: EdgeTag, { first, later }: Allowances): number {
  if (tag.kind === 'outer') return tag.jointed ? first : 0
  return tag.joint === 'cross' || tag.joint === 'diameter' ? later : first
}

/** The rough piece, in the frame of the window: each edge moved out by its allowance, corners mitred without limit. */
export const roughWindow = ({ ring, tags }: TaggedRing<'window'>, allowances: Allowances): Ring<'window'> =>
  present(
    movedOut(
      ring,
      tags.map((tag) => edgeAllowance(tag, allowances)),
    ),
    'a window that vanishes when it is made larger',
  )
