/**
 * Pieces that are cut from sheets of several leaves, joined before: a step of the plan, between the pattern and the
 * sheet that its cells are cut from.
 *
 * Input: a plan of cells from one leaf each. Output: the same cells in the same places, each with the strips of its
 * sheet, left to right in leaf orientation; the run goes through the leaves of one sheet before the next. What turns a
 * cell turns its whole sheet: all its leaves, and the order in which they lie. Failure: none.
 */
import { insideHalfPlane } from '../geometry/convex'
import { point, type Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import {
  compose,
  determinant,
  identity,
  invert,
  transformPoint,
  translation,
  type Transform,
} from '../geometry/transform'
import type { Bound, Bundle, Plan, PlannedCell, PlannedStrip, Sizes, Turn } from './pattern'
import type { Recipe, Spine } from './recipe'

/** How one leaf lies in a sheet, which is in leaf orientation itself. */
interface StripOfSheet {
  /** Which leaf of the sheet, counted from 0. */
  readonly nth: number
  readonly toSheet: Transform<'window', 'window'>
  readonly turnedOver: boolean
}

/**
 * Each piece from two leaves, the second booked over the first along the line on which the pattern has the middle of a
 * leaf. Opened on its left edge the pair has the left edges of its leaves in the joint. The two show the faces of one
 * knife cut, so where the numbered faces look back the earlier leaf is the one that is turned over.
 */
export function fromBookedPairs(plan: Plan, spine: Spine, { numberFacesNext }: Bundle): Plan {
  const lies = { nth: numberFacesNext ? 0 : 1, toSheet: AS_IT_LIES, turnedOver: false }
  const booked = { nth: numberFacesNext ? 1 : 0, toSheet: TURNED_OVER, turnedOver: true }
  return fromSheets(plan, spine === 'left' ? [booked, lies] : [lies, booked], [0])
}

/**
 * Each piece from several leaves, laid side by side as they lie: strips of equal width over the whole of the piece across
 * its grain. The joints lie alike in all sheets, the widest piece giving the width, so that what mirrors with pieces of
 * one leaf mirrors strip by strip. The origin of a sheet is the middle of its strips' origins.
 */
export function fromSlippedSheets(plan: Plan, sizes: Sizes, leaves: number): Plan {
  const { low, high } = acrossGrain(plan, sizes)
  const each = (high - low) / leaves
  const strips = Array.from({ length: leaves }, (_, nth): StripOfSheet => ({
    nth,
    toSheet: translation((nth - (leaves - 1) / 2) * each, 0),
    turnedOver: false,
  }))
  return fromSheets(
    plan,
    strips,
    strips.slice(1).map(({ nth }) => low + nth * each),
  )
}

/** From where to where the pieces of a plan reach across their grain, each from the origin of its window. */
function acrossGrain({ cells }: Plan, sizes: Sizes): { readonly low: number; readonly high: number } {
  const sheet = sizes.ring ?? boxRing(sizes)
  const across = cells.flatMap(({ bounds, lay }) => {
    const toWindow = invert(lay)
    // of a hollow outline a part may be closed along the line it is cut by: it reaches no farther for that
    const within = bounds.reduce<Ring<'panel'> | null>((ring, { edge }) => ring && insideHalfPlane(ring, edge), sheet)
    return (within ?? []).map((p) => transformPoint(toWindow, p).x)
  })
  return { low: Math.min(...across), high: Math.max(...across) }
}

function boxRing({ width, length, beyond }: Sizes): Ring<'panel'> {
  const [left, right] = [-width / 2 - beyond.left, width / 2 + beyond.right]
  const [top, bottom] = [-length / 2 - beyond.top, length / 2 + beyond.bottom]
  return [point(left, top), point(right, top), point(right, bottom), point(left, bottom)]
}

const AS_IT_LIES: Transform<'window', 'window'> = identity()
const TURNED_OVER: Transform<'window', 'window'> = { ...AS_IT_LIES, a: -1 }

/** `joints`: where the strips meet, across the grain from the origin of the sheet's window. */
function fromSheets(plan: Plan, strips: readonly StripOfSheet[], joints: readonly number[]): Plan {
  const cells = plan.cells.map((cell): PlannedCell => ({
    ...cell,
    rank: cell.rank * strips.length,
    strips: strips.map((strip, i) => stripIn(cell, strip, strips.length, i, joints)),
  }))
  return { ...plan, cells }
}

function stripIn(
  cell: PlannedCell,
  { nth, toSheet, turnedOver }: StripOfSheet,
  count: number,
  i: number,
  joints: readonly number[],
): PlannedStrip {
  const [from, to] = [joints[i - 1], joints[i]]
  return {
    name: String.fromCharCode(97 + i),
    rank: cell.rank * count + nth,
    bounds: [
      ...(from === undefined ? [] : [jointAt(cell.lay, from, 'right')]),
      ...(to === undefined ? [] : [jointAt(cell.lay, to, 'left')]),
    ],
    lay: compose(cell.lay, toSheet),
    turn: turnIn(cell.turn, turnedOver),
  }
}

/** A sheet that is turned over shows the other side of every leaf. */
const turnIn = ({ turnedOver, spun }: Turn, inSheet: boolean): Turn => ({ turnedOver: turnedOver !== inSheet, spun })

/** A joint along the grain, the wood kept on one side of it as seen on the sheet; the cell lies clockwise of a to b. */
function jointAt(lay: Transform<'window', 'panel'>, x: number, kept: 'left' | 'right'): Bound {
  const [top, foot]: readonly Point<'panel'>[] = [-1, 1].map((y) => transformPoint(lay, point(x, y)))
  // a lay that mirrors has the other side clockwise
  const isDown = (kept === 'left') === determinant(lay) > 0
  return { edge: isDown ? { a: top!, b: foot! } : { a: foot!, b: top! }, joint: 'sheet' }
}

/** How many leaves each piece of a pattern is cut from. */
export function leavesEach(recipe: Recipe): number {
  if (recipe.pattern === 'diamond' || recipe.pattern === 'box') return recipe.sheetOf
  return recipe.pattern === 'radial' && recipe.eachFrom === 'booked pair' ? 2 : 1
}

/** How many leaves of the run a plan takes. */
export const leavesTaken = ({ cells }: Plan): number =>
  Math.max(...cells.flatMap(({ rank, strips }) => strips?.map((strip) => strip.rank) ?? [rank])) + 1
