/**
 * A leaf made longer or wider: one outline and the list of parts that it is made of.
 *
 * Input: what was decided, and the wood of the leaves by number. Output: outline, usable area, parts and seams in one
 * frame, that of the leaf itself: what is not moved keeps its place on the leaf. Tolerance: parts are exact to the grid,
 * joints are closed over twice as much. Failure: null where the parts do not meet, or overlap on their leaf.
 */
import { boxRing, type Box } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { add, point, type Point } from '../geometry/point'
import { polygonArea, regionArea, transformRegion, type Edge, type Polygon, type Region } from '../geometry/polygon'
import { compose, identity, invert, translation, type Transform } from '../geometry/transform'
import type { Lengthening, MakeUp, SlantedCut, Widening } from '../job/make-up'
import { figureStep } from './extension'
import { joinedAlong, type Joined, type JointLine } from './joint-line'
import { farHalfMove, halfOf, jointOfCut } from './piece'

/** A leaf as it came from the flitch. */
export interface LeafWood {
  readonly leaf: number
  readonly outline: Region<'leaf'>
  readonly usable: Region<'leaf'>
  /** Where the spot at p on the flitch's first leaf lies on this one, minus p. */
  readonly drift: Point<'leaf'>
}

/** A part of a made-up leaf, cut from one leaf. */
export interface MadePart {
  readonly leaf: number
  readonly drift: Point<'leaf'>
  /** All its wood, where it lies on the leaf it is cut from. */
  readonly wood: Region<'leaf'>
  /** From the leaf it is cut from to the made-up leaf. */
  readonly toMade: Transform<'leaf', 'leaf'>
}

export interface MadeSeam {
  readonly edge: Edge<'leaf'>
  /** A slanted cut, or a straight one along the grain where a strip is put on. */
  readonly kind: 'scarf' | 'strip'
  /** How far the figure is carried across at a scarf; null along the grain, where other figure comes to lie. */
  readonly step: number | null
}

export interface MadeUpLeaf {
  readonly makeUp: MakeUp
  /** In a leaf that falls apart the largest bit. */
  readonly outline: Polygon<'leaf'>
  readonly usable: Region<'leaf'>
  readonly parts: readonly MadePart[]
  readonly seams: readonly MadeSeam[]
}

/** Places follow the drift of the leaf where they are meant for a whole run. */
export function madeUpLeaf(
  makeUp: MakeUp,
  own: LeafWood,
  woodOf: (leaf: number) => LeafWood | null,
): MadeUpLeaf | null {
  const moved = makeUp.leaf === null ? own.drift : point<'leaf'>(0, 0)
  return makeUp.how === 'longer' ? lengthened(makeUp, own, moved) : widened(makeUp, own, moved, woodOf)
}

const cutAt = (cut: SlantedCut, moved: Point<'leaf'>): SlantedCut => ({ ...cut, through: add(cut.through, moved) })

const boxAt = ({ min, max }: Box<'leaf'>, moved: Point<'leaf'>): Box<'leaf'> => ({
  min: add(min, moved),
  max: add(max, moved),
})

function lengthened(makeUp: Lengthening, own: LeafWood, moved: Point<'leaf'>): MadeUpLeaf | null {
  const cut = cutAt(makeUp.cut, moved)
  const whole = slid(own.outline, cut)
  const outline = largest(whole.joined.region)
  if (!outline || whole.joined.seams.length === 0) return null
  return {
    makeUp,
    outline,
    usable: slid(own.usable, cut).joined.region,
    parts: halvesOf(whole, cut, own),
    seams: scarfSeams(whole.joined, cut),
  }
}

interface Slid {
  readonly near: Region<'leaf'>
  readonly far: Region<'leaf'>
  readonly joined: Joined
}

function slid(region: Region<'leaf'>, cut: SlantedCut): Slid {
  const [near, far] = [halfOf(region, cut, 'near'), halfOf(region, cut, 'far')]
  return { near, far, joined: joinedAlong(near, far, jointOfCut(cut)) }
}

const scarfSeams = ({ seams }: Joined, cut: SlantedCut): readonly MadeSeam[] =>
  seams.map((edge) => ({ edge, kind: 'scarf', step: figureStep(cut) }))

function halvesOf({ near, far }: Slid, cut: SlantedCut, { leaf, drift }: LeafWood): readonly MadePart[] {
  const move = farHalfMove(cut)
  const toMade = translation<'leaf'>(move.x, move.y)
  return [
    { leaf, drift, wood: near, toMade: identity<'leaf'>() },
    { leaf, drift, wood: transformRegion(invert(toMade), far), toMade },
  ]
}

const largest = (region: Region<'leaf'>): Polygon<'leaf'> | null =>
  region.reduce<Polygon<'leaf'> | null>(
    (best, polygon) => (!best || polygonArea(polygon) > polygonArea(best) ? polygon : best),
    null,
  )

const within = (region: Region<'leaf'>, box: Box<'leaf'>): Region<'leaf'> => intersect(region, [[boxRing(box)]])

/** A box with one upright edge moved in by the loss. */
function trued({ min, max }: Box<'leaf'>, side: 'left' | 'right', loss: number): Box<'leaf'> {
  return side === 'left' ? { min: point(min.x + loss, min.y), max } : { min, max: point(max.x - loss, max.y) }
}

function widened(
  makeUp: Widening,
  own: LeafWood,
  moved: Point<'leaf'>,
  woodOf: (leaf: number) => LeafWood | null,
): MadeUpLeaf | null {
  const { side, loss } = makeUp
  const source = makeUp.from === null ? own : woodOf(makeUp.from)
  if (!source) return null
  // what comes from a leaf that is named has its place there; from the leaves of a run it follows their drift
  const offcutMoved = makeUp.from === null ? moved : point<'leaf'>(0, 0)
  const kept = trued(boxAt(makeUp.kept, moved), side, loss)
  const strip = trued(boxAt(makeUp.strip, offcutMoved), side === 'left' ? 'right' : 'left', loss)
  const cut = makeUp.cut && cutAt(makeUp.cut, offcutMoved)
  const offcut = boxAt(makeUp.offcut, offcutMoved)
  const toKept = translation<'leaf'>(
    side === 'right' ? kept.max.x - strip.min.x : kept.min.x - strip.max.x,
    kept.min.y - strip.min.y,
  )
  const stripFrom = (region: Region<'leaf'>) => stripOf(within(region, offcut), cut, strip)
  const whole = stripFrom(source.outline)
  const parts: readonly MadePart[] = [
    { leaf: own.leaf, drift: own.drift, wood: within(own.outline, kept), toMade: identity<'leaf'>() },
    ...partsOfStrip(whole, cut, source).map((part) => ({ ...part, toMade: compose(toKept, part.toMade) })),
  ]
  if (source.leaf === own.leaf && overlaps(parts)) return null
  const line: JointLine = {
    through: point(side === 'right' ? kept.max.x : kept.min.x, kept.min.y),
    runs: side,
    slope: 0,
  }
  const joinedTo = (region: Region<'leaf'>, put: Region<'leaf'>) =>
    joinedAlong(within(region, kept), transformRegion(toKept, put), line)
  const all = joinedTo(own.outline, whole.joined.region)
  const outline = largest(all.region)
  if (!outline || all.seams.length === 0) return null
  const inner = cut ? scarfSeams(whole.joined, cut) : []
  return {
    makeUp,
    outline,
    usable: joinedTo(own.usable, stripFrom(source.usable).joined.region).region,
    parts,
    seams: [
      ...all.seams.map((edge): MadeSeam => ({ edge, kind: 'strip', step: null })),
      ...inner.map((seam) => ({ ...seam, edge: movedEdge(seam.edge, toKept) })),
    ],
  }
}

const movedEdge = ({ a, b }: Edge<'leaf'>, { e, f }: Transform<'leaf', 'leaf'>): Edge<'leaf'> => ({
  a: point(a.x + e, a.y + f),
  b: point(b.x + e, b.y + f),
})

/** What of an offcut lies in the strip, after the offcut has been made longer if it is to be. */
function stripOf(offcut: Region<'leaf'>, cut: SlantedCut | null, strip: Box<'leaf'>): Slid {
  if (!cut) {
    const region = within(offcut, strip)
    return { near: region, far: [], joined: { region, seams: [] } }
  }
  const near = within(halfOf(offcut, cut, 'near'), strip)
  const far = within(halfOf(offcut, cut, 'far'), strip)
  return { near, far, joined: joinedAlong(near, far, jointOfCut(cut)) }
}

function partsOfStrip(strip: Slid, cut: SlantedCut | null, source: LeafWood): readonly MadePart[] {
  const { leaf, drift } = source
  if (!cut) return [{ leaf, drift, wood: strip.near, toMade: identity<'leaf'>() }]
  return halvesOf(strip, cut, source)
}

/** Square millimetres that two parts may share and still be said to touch only. */
const TOUCHING = 1

const overlaps = ([kept, ...others]: readonly MadePart[]): boolean =>
  others.some(({ wood }) => regionArea(intersect(kept!.wood, wood)) > TOUCHING)
