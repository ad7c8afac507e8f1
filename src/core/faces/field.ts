/**
 * The field of a face: what its pattern is laid in. Without a border it is the whole panel.
 *
 * Input: a part whose border, if it has one, leaves a field. Output: outlines in panel mm; `centre` is the middle of the
 * box round the field, about which a pattern is laid. Failure: none.
 */
import { boxAround, boxCentre, boxHeight, boxWidth } from '../geometry/box'
import { innerOutline } from '../geometry/inner-outline'
import type { Outline } from '../geometry/panel-outline'
import { point, subtract, type Point } from '../geometry/point'
import { GRID } from '../geometry/tolerance'
import { compose, translation } from '../geometry/transform'
import { present } from '../invariant'
import type { Part } from '../job/job'
import { borderDepth, type Border } from '../patterns/border'
import type { Bound, Plan, PlannedCell } from '../patterns/pattern'
import type { Recipe } from '../patterns/recipe'

export interface Field {
  readonly outline: Outline<'panel'>
  readonly centre: Point<'panel'>
  readonly width: number
  readonly length: number
}

/** The part with its border: a part without one has none to ask for. */
export type BorderedPart = Part & { readonly border: Border }

export const isBordered = (part: Part): part is BorderedPart => part.border !== null

/** What lies inside the border, and inside the string if there is one. */
export function fieldOf(part: BorderedPart): Field {
  const depth = borderDepth(part.border)
  const outline = insideOf(part, depth)
  const { shape } = part.outline
  // a circle's polygon stands out a little beyond the circle
  if (shape === 'circle' || shape === 'ellipse')
    return { outline, centre: point(0, 0), width: part.width - 2 * depth, length: part.length - 2 * depth }
  const box = boxAround(outline.ring)
  const { x, y } = boxCentre(box)
  const tidy = (n: number) => (Math.abs(n) < GRID ? 0 : n)
  return { outline, centre: point(tidy(x), tidy(y)), width: boxWidth(box), length: boxHeight(box) }
}

/** The line along which a border ends inside, and its string begins. */
export const borderInside = (part: BorderedPart): Outline<'panel'> => insideOf(part, part.border.width)

const insideOf = ({ outline, width, length }: Part, depth: number): Outline<'panel'> =>
  present(innerOutline(outline, { width, length }, depth), 'a border that leaves no field')

/** About which a pattern is laid: the middle of the field. */
export const fieldCentre = (part: Part): Point<'panel'> => (isBordered(part) ? fieldOf(part).centre : point(0, 0))

/** Where the seams of a face are to meet: the middle of its field, unless a sunburst has its centre elsewhere. */
export const centreOfFace = (part: Part): Point<'panel'> =>
  part.recipe.pattern === 'radial' ? part.recipe.centre : fieldCentre(part)

/** A plan made about the middle of the panel, moved to that of the field. A sunburst lies where it was put. */
export function planInField(plan: Plan, recipe: Recipe, centre: Point<'panel'>): Plan {
  if (recipe.pattern === 'radial' || (centre.x === 0 && centre.y === 0)) return plan
  return {
    ...plan,
    cells: plan.cells.map((cell) => movedCell(cell, centre)),
    columns: plan.columns?.map(({ from, to }) => ({ from: from + centre.x, to: to + centre.x })) ?? null,
  }
}

const movedCell = (cell: PlannedCell, by: Point<'panel'>): PlannedCell => ({
  ...moved(cell, by),
  ...(cell.strips ? { strips: cell.strips.map((strip) => moved(strip, by)) } : {}),
})

const moved = <L extends Pick<PlannedCell, 'lay' | 'bounds'>>(laid: L, by: Point<'panel'>): L => ({
  ...laid,
  bounds: laid.bounds.map((bound) => movedBound(bound, by)),
  lay: compose(translation<'panel'>(by.x, by.y), laid.lay),
})

const movedBound = ({ edge: { a, b }, joint }: Bound, { x, y }: Point<'panel'>): Bound => {
  const back = point<'panel'>(-x, -y)
  return { edge: { a: subtract(a, back), b: subtract(b, back) }, joint }
}
