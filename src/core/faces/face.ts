import { boxAround, boxGrown, type Box, type Edges } from '../geometry/box'
import { movesOf, panelRing, type Outline } from '../geometry/panel-outline'
import { point } from '../geometry/point'
import { transformRing, type Ring } from '../geometry/polygon'
import { translation } from '../geometry/transform'
import { present } from '../invariant'
import { fieldOf, isBordered } from './field'
import type { Part } from '../job/job'
import type { Sizes } from '../patterns/pattern'
import type { Shop } from '../shop'

/** The three sizes of a part, about the centre of the finished panel: the boxes round them. */
export interface ThreeBoxes {
  readonly finished: Box<'panel'>
  readonly core: Box<'panel'>
  readonly sheet: Box<'panel'>
}

export interface ThreeSizes extends ThreeBoxes {
  /** What they are cut to; the boxes are those round them, taken on the true curve. */
  readonly outlines: {
    readonly finished: Outline<'panel'>
    readonly core: Outline<'panel'>
    readonly sheet: Outline<'panel'>
  }
}

export function threeSizes(part: Part): ThreeSizes {
  const finished = {
    min: point<'panel'>(-part.width / 2, -part.length / 2),
    max: point<'panel'>(part.width / 2, part.length / 2),
  }
  const { core, overhang } = { core: movesOf(part.outline, part.core), overhang: movesOf(part.outline, part.overhang) }
  const outlines = {
    finished: outlineOf(part, NONE),
    core: outlineOf(part, core),
    sheet: outlineOf(part, addedEdges(core, overhang)),
  }
  return {
    finished,
    core: boxOf(part, outlines.core.ring, boxGrown(finished, core)),
    sheet: boxOf(part, outlines.sheet.ring, boxGrown(boxGrown(finished, core), overhang)),
    outlines,
  }
}

const NONE: Edges = { top: 0, right: 0, bottom: 0, left: 0 }

const outlineOf = (part: Part, by: Edges): Outline<'panel'> =>
  present(panelRing(part.outline, part, by), 'a panel of which nothing is left')

/** Straight shapes have corners to go by, which stand out farther than the edges are moved. */
function boxOf({ outline: { shape } }: Part, ring: Ring<'panel'>, plain: Box<'panel'>): Box<'panel'> {
  return shape === 'polygon' || shape === 'drawn' || shape === 'arch top' ? boxAround(ring) : plain
}

/** What a pattern is told: the finished panel's box, and how far the sheet stands out beyond it; with a border the field. */
export function patternSizes(part: Part, { betweenPieces: between }: Shop): Sizes {
  const { width, length, core, overhang } = part
  const lost = { first: part.allowance, later: part.laterAllowance }
  if (isBordered(part)) {
    const field = fieldOf(part)
    const { x, y } = field.centre
    const ring = transformRing(translation<'panel'>(-x, -y), field.outline.ring)
    return { width: field.width, length: field.length, beyond: NONE, ring, lost, between }
  }
  if (part.outline.shape === 'rectangle') return { width, length, beyond: addedEdges(core, overhang), lost, between }
  const { finished, sheet, outlines } = threeSizes(part)
  return {
    ring: outlines.sheet.ring,
    width,
    length,
    beyond: {
      top: finished.min.y - sheet.min.y,
      right: sheet.max.x - finished.max.x,
      bottom: sheet.max.y - finished.max.y,
      left: finished.min.x - sheet.min.x,
    },
    lost,
    between,
  }
}

const addedEdges = (a: Edges, b: Edges): Edges => ({
  top: a.top + b.top,
  right: a.right + b.right,
  bottom: a.bottom + b.bottom,
  left: a.left + b.left,
})
