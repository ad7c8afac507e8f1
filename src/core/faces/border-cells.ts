/**
 * The pieces of a border, cut out of a sheet.
 *
 * Input: a part with a border, and the outline of the sheet (or of the finished panel) that the border ends at outside.
 * Output: pieces clockwise from the first corner, or from the top of a closed curve, in panel mm: outer edges as the
 * sheet has them, seams towards the field or its string, between neighbours, and at corners; each with the lay of its
 * leaf, before it is known which leaf that is. Straight bands are cut in equal lengths of the finished edge where their
 * corners leave room for it; on curves seams stand square to the edge. Corners that point inwards, and those between two
 * curves, are always mitred. Tolerance: as the outlines. Failure: none for a border that leaves a field.
 */
import { panelRing, type Outline } from '../geometry/panel-outline'
import { add, cross, point, scale, subtract, type Point } from '../geometry/point'
import { cornerPlace, rayMeets, stretchBetween, type RingPlace } from '../geometry/ring-walk'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { withTrueArcs } from '../geometry/true-arcs'
import { present } from '../invariant'
import type { CellId } from '../ids'
import type { Border } from '../patterns/border'
import { layAt, type BandJoint, type Turn } from '../patterns/pattern'
import { bandRound, type BandCorner, type BandSide, type EdgePlace } from './band-sides'
import type { EdgeTag, TaggedRing } from './cells'
import { borderInside, type BorderedPart } from './field'
import { BORDER_PIECE } from './window-group'

export interface BandPiece {
  readonly id: CellId
  readonly face: TaggedRing<'panel'>
  readonly lay: Transform<'window', 'panel'>
  readonly turn: Turn
}

/** A seam across the band, from the inside outwards. */
interface Across {
  readonly inner: RingPlace<'panel'>
  readonly outer: RingPlace<'panel'>
  readonly joint: BandJoint
}

/** A piece before it is cut: between which seams, and where its middle lies on the finished edge. */
interface Stretch {
  readonly id: CellId
  readonly from: Across
  readonly to: Across
  readonly middle: EdgePlace
}

export function bandPieces(part: BorderedPart, sheet: Outline<'panel'>): readonly BandPiece[] {
  const inside = borderInside(part)
  return stretchesOf(part, inside, sheet).map(({ id, from, to, middle }) => ({
    id,
    face: pieceFace(inside, sheet, from, to),
    lay: layOn(part.border, middle),
    turn: { turnedOver: part.border.sideUp === 'other', spun: null },
  }))
}

function stretchesOf(part: BorderedPart, inside: Outline<'panel'>, sheet: Outline<'panel'>): readonly Stretch[] {
  const finished = present(panelRing(part.outline, part, { top: 0, right: 0, bottom: 0, left: 0 }), 'no panel')
  const { sides, corners } = bandRound(finished, inside, part)
  const seams = sides.map((side, i) => ({
    side,
    cuts: cutsOf(side, part.border, corners.length === 0),
    corner: corners[i],
  }))
  const atCorners = corners.map((corner, i) =>
    cornerSeam(part.border, corner, [sides[(i + sides.length - 1) % sides.length]!, sides[i]!], inside, sheet),
  )
  return seams.flatMap(({ side, cuts }, s) => {
    const across = cuts.map((way) => seamAt(side.placeAt(way), part.border.width, inside, sheet))
    const ends: readonly Across[] =
      corners.length === 0 ? [...across, across[0]!] : [atCorners[s]!, ...across, atCorners[(s + 1) % corners.length]!]
    const ways = corners.length === 0 ? [...cuts, side.length] : [0, ...cuts, side.length]
    return ends.slice(1).map((to, i) => ({
      id: pieceId(part, side, i + 1, corners.length === 0),
      from: ends[i]!,
      to,
      middle: side.placeAt((ways[i]! + ways[i + 1]!) / 2),
    }))
  })
}

/** Names go round from the upper left corner, so that a longer edge adds pieces at its end. */
function pieceId({ outline: { shape } }: BorderedPart, { source }: BandSide, nth: number, isClosed: boolean): CellId {
  if (isClosed) return `${BORDER_PIECE}${nth}`
  const hasFour = shape === 'rectangle' || shape === 'arch top'
  return BORDER_PIECE + (hasFour ? `${'TRBL'[source]}${nth}` : `${source + 1}-${nth}`)
}

/** Kept between a corner of the field and the seam nearest to it. */
const FROM_CORNER = 1

/** Fewest pieces round a closed curve; a piece of an arc turns by no more than a sixth of the circle. */
const FEWEST_ROUND = 6

/** Where a side is cut, along it: at its beginning too where it is closed. */
function cutsOf(side: BandSide, { pieceLength }: Border, isClosed: boolean): readonly number[] {
  const byTurn = side.isStraight ? 1 : Math.ceil((FEWEST_ROUND * side.turns) / (2 * Math.PI) - 1e-6)
  const count = Math.max(1, byTurn, Math.ceil(side.length / pieceLength - 1e-6))
  const each = side.length / count
  if (isClosed) return Array.from({ length: count }, (_, i) => i * each)
  const fits = each >= side.from + FROM_CORNER && side.length - each <= side.to - FROM_CORNER
  const [from, step] = fits ? [0, each] : [side.from, (side.to - side.from) / count]
  return Array.from({ length: count - 1 }, (_, i) => from + (i + 1) * step)
}

/** A seam square to the edge. */
function seamAt({ at, along }: EdgePlace, width: number, inside: Outline<'panel'>, sheet: Outline<'panel'>): Across {
  const inward = point<'panel'>(-along.y, along.x)
  const inner = present(rayMeets(inside.ring, at, inward, { wanted: width, least: 0 }), 'a border without an inside')
  return { inner, outer: outwards(inner, scale(inward, -1), width, sheet), joint: 'segment' }
}

function outwards(inner: RingPlace<'panel'>, along: Point<'panel'>, width: number, sheet: Outline<'panel'>) {
  const to = rayMeets(sheet.ring, inner.at, along, { wanted: width, least: 1e-6 })
  return present(to, 'a border that ends outside the sheet')
}

function cornerSeam(
  { width, corners }: Border,
  corner: BandCorner,
  [before, after]: readonly [BandSide, BandSide],
  inside: Outline<'panel'>,
  sheet: Outline<'panel'>,
): Across {
  const inner = cornerPlace(inside.ring, corner.inside)
  const mitre = subtract(corner.outside, inner.at)
  const along = buttedAlong(corners, before, after) ?? scale(mitre, 1 / Math.hypot(mitre.x, mitre.y))
  return { inner, outer: outwards(inner, along, width, sheet), joint: 'corner' }
}

/** The way of a butted seam from the inside outwards: on along the inner edge of the band that runs through; else null. */
function buttedAlong(corners: Border['corners'], before: BandSide, after: BandSide): Point<'panel'> | null {
  const [end, begin] = [before.placeAt(before.length).along, after.placeAt(0).along]
  if (corners === 'mitred' || cross(end, begin) < 1e-6) return null
  const backwards = scale(begin, -1)
  if (before.isStraight && after.isStraight) return runsThrough(corners, before, after) ? end : backwards
  return before.isStraight ? end : after.isStraight ? backwards : null
}

/** Whether the side before a corner runs through; of two that are alike each begins behind the one before. */
function runsThrough(corners: Border['corners'], before: BandSide, after: BandSide): boolean {
  const isUpright = ({ edge: { side } }: BandSide) => side === 'left' || side === 'right'
  const isThrough = (side: BandSide) => isUpright(side) === (corners === 'sides through')
  return isThrough(before) !== isThrough(after) ? isThrough(before) : true
}

function pieceFace(inside: Outline<'panel'>, sheet: Outline<'panel'>, from: Across, to: Across): TaggedRing<'panel'> {
  const outer = stretchBetween(sheet.ring, from.outer, to.outer)
  const inner = stretchBetween(inside.ring, from.inner, to.inner)
  const seam = (joint: BandJoint): EdgeTag<'panel'> => ({ kind: 'seam', joint, curve: null })
  const outerTags = outer.edges.map((edge): EdgeTag<'panel'> => ({
    kind: 'outer',
    jointed: false,
    ...sheet.edges[edge]!,
  }))
  const innerTags = inner.edges.map((edge): EdgeTag<'panel'> => {
    const { source, curve } = inside.edges[edge]!
    return { kind: 'seam', joint: 'border', source, curve }
  })
  return withTrueArcs<'panel', EdgeTag<'panel'>>({
    ring: [...outer.points, ...[...inner.points].reverse()],
    tags: [...outerTags, seam(to.joint), ...[...innerTags].reverse(), seam(from.joint)],
  })
}

/** In the middle of the band; across it the numbered end lies at the edge, along it first, clockwise. */
function layOn({ width, grain, sideUp }: Border, { at, along }: EdgePlace): Transform<'window', 'panel'> {
  const inward = point<'panel'>(-along.y, along.x)
  const middle = add(at, scale(inward, width / 2))
  const way = grain === 'across' ? inward : along
  return compose(
    translation<'panel'>(middle.x, middle.y),
    compose(rotation<'panel'>(Math.atan2(way.y, way.x) - Math.PI / 2), layAt(point(0, 0), sideUp === 'other', false)),
  )
}
