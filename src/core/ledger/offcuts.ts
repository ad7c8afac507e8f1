/**
 * What is left of the leaves when all windows have been cut out of them.
 *
 * Input: a leaf, and what is taken from it, planned or cut. Output: the rest in pieces that together with what is taken
 * make up the leaf without gap or overlap: the crosscuts at the ends of what is taken go through the whole leaf, and
 * what lies between two of them falls apart by itself. Each with the largest sound strip along the grain. Tolerance:
 * what the grid leaves along a border is no piece. Failure: none.
 */
import { boxAround, boxRing, type Box } from '../geometry/box'
import { intersect, regionLess, withoutSlivers } from '../geometry/clip'
import { grown } from '../geometry/offset'
import { point } from '../geometry/point'
import { polygonArea, type Polygon, type Region, type Ring } from '../geometry/polygon'
import type { FlitchId, PartId } from '../ids'
import { flitchesOf } from '../fit/lay-face'
import { findLeaf, leafOutline } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { usableArea } from '../leaves/usable'
import type { Answers } from '../fit/answers'
import { largestStrip, type GrainStrip } from '../scarf/strip'
import type { Shop } from '../shop'
import { claimsOf, type Claim, type LedgerFace } from './claims'

/** What a piece left over is good for, by its largest sound strip. */
export type OffcutUse = 'edges and scarfs' | 'patches' | 'waste'

export interface Offcut {
  readonly flitch: FlitchId
  readonly leaf: number
  /** `7a`, `7b` from the numbered end on: to be chalked on it. */
  readonly label: string
  readonly outline: Polygon<'leaf'>
  /** The largest rectangle along the grain in its sound wood, as for a show face; null where there is none. */
  readonly strip: GrainStrip | null
  readonly use: OffcutUse
}

/** Narrower or shorter than this nothing is worth keeping; lengths from which a strip does for an edge. Common practice. */
const LEAST_PATCH = { width: 15, length: 60 }
const LEAST_EDGE = 300

/** A leaf from which something is taken, and what is left of it. */
export interface LeafRest {
  readonly flitch: FlitchId
  readonly flitchName: string
  readonly leaf: number
  readonly outline: Ring<'leaf'>
  readonly taken: readonly Ring<'leaf'>[]
  readonly offcuts: readonly Offcut[]
  /** All panels that take from the leaf are finished: its offcuts are no stock of the job any more. */
  readonly letGo: boolean
}

/**
 * What is left of every leaf from which something is taken, or only of the leaves of one face. All faces of the job
 * must be given: what others take is not left.
 */
export function jobRests(
  faces: readonly LedgerFace[],
  shop: Shop,
  answers: Answers,
  only: LedgerFace | null = null,
): readonly LeafRest[] {
  const claims = claimsAndPanels(faces)
  const wanted = only ? claimsOf(only) : []
  const flitches = only ? flitchesOf(only) : [...new Set(faces.flatMap(flitchesOf))]
  return flitches.flatMap((flitch) =>
    flitch.leaves
      .filter(({ number }) => !only || wanted.some((claim) => claim.flitch === flitch.id && claim.leaf === number))
      .flatMap((leaf) => restOf(flitch, leaf, claims, shop, answers) ?? []),
  )
}

/** What is left of one leaf; null where nothing is taken from it. All faces of the job must be given. */
export function leafRest(
  faces: readonly LedgerFace[],
  shop: Shop,
  answers: Answers,
  flitch: Flitch,
  number: number,
): LeafRest | null {
  const leaf = findLeaf(flitch, number)
  return leaf && restOf(flitch, leaf, claimsAndPanels(faces), shop, answers)
}

interface Claims {
  readonly claims: readonly Claim[]
  readonly finished: ReadonlySet<PartId>
}

const claimsAndPanels = (faces: readonly LedgerFace[]): Claims => ({
  claims: faces.flatMap(claimsOf),
  finished: new Set(faces.flatMap(({ part }) => (part.finished ? [part.id] : []))),
})

function restOf(
  flitch: Flitch,
  leaf: Leaf,
  { claims, finished }: Claims,
  shop: Shop,
  answers: Answers,
): LeafRest | null {
  const planned = claims.filter((claim) => claim.flitch === flitch.id && claim.leaf === leaf.number && !claim.cut)
  const taken = [
    ...planned.flatMap(({ region }) => region.map(([outer]) => outer)),
    ...leaf.cuts.map(({ outline }) => outline),
  ]
  if (taken.length === 0) return null
  const offcuts = answers('offcuts', [flitch, leaf, shop, ...taken], () => leafOffcuts(flitch, leaf, shop, taken))
  const letGo = [...planned, ...leaf.cuts].every(({ part }) => finished.has(part))
  const { id, name } = flitch
  return {
    flitch: id,
    flitchName: name,
    leaf: leaf.number,
    outline: leafOutline(flitch, leaf),
    taken,
    offcuts,
    letGo,
  }
}

/** What is left of a leaf from which this is taken. */
export function leafOffcuts(flitch: Flitch, leaf: Leaf, shop: Shop, taken: readonly Ring<'leaf'>[]): readonly Offcut[] {
  const outline = leafOutline(flitch, leaf)
  const rest = regionLess<'leaf'>([[outline]], ...taken.map((ring): Region<'leaf'> => [[ring]]))
  const sound = usableArea(flitch, leaf, shop, 'show')
  // knife or saw goes round the pieces, through what is left
  const between = shop.betweenPieces
  const left = regionLess(sound, ...taken.map((ring) => grown<'leaf'>({ shape: 'area', ring }, between)))
  const pieces = bandsBetween(boxAround(outline), taken.map(boxAround), between).flatMap(({ band, left: box }) =>
    fallsApart(intersect<'leaf'>(rest, [[boxRing(band)]])).map((piece) => ({ piece, box })),
  )
  let kept = 0
  return pieces.map(({ piece, box }) => {
    const strip = largestSound(piece, intersect<'leaf'>(left, [[boxRing(box)]]))
    const use = useOf(strip, shop)
    return {
      flitch: flitch.id,
      leaf: leaf.number,
      label: use === 'waste' ? '' : `${leaf.number}${letter(kept++)}`,
      outline: piece,
      strip,
      use,
    }
  })
}

/** `a` … `z`, `aa`, `ab` … */
const letter = (nth: number): string =>
  (nth >= 26 ? letter(Math.floor(nth / 26) - 1) : '') + String.fromCharCode(97 + (nth % 26))

/**
 * The stretches of a leaf between the crosscuts: where pieces lie side by side there is one from end to end of them all.
 * What a cut takes comes off the stretches without pieces: that is what they have left.
 */
function bandsBetween(
  { min, max }: Box<'leaf'>,
  taken: readonly Box<'leaf'>[],
  between: number,
): readonly { readonly band: Box<'leaf'>; readonly left: Box<'leaf'> }[] {
  const ends: [number, number][] = []
  for (const box of [...taken].sort((p, q) => p.min.y - q.min.y)) {
    const last = ends.at(-1)
    if (last && box.min.y < last[1] - TOGETHER) last[1] = Math.max(last[1], box.max.y)
    else ends.push([box.min.y, box.max.y])
  }
  const stretch = (from: number, to: number): Box<'leaf'> => ({
    min: point<'leaf'>(min.x - 1, from),
    max: point<'leaf'>(max.x + 1, to),
  })
  const levels = [min.y - 1, ...ends.flat(), max.y + 1].map((y) => Math.min(Math.max(y, min.y - 1), max.y + 1))
  return levels.slice(1).flatMap((to, i) => {
    const from = levels[i]!
    if (to - from <= TOGETHER) return []
    const isBare = i % 2 === 0
    const first = from + (isBare && i > 0 ? between : 0)
    const last = to - (isBare && i + 2 < levels.length ? between : 0)
    return [{ band: stretch(from, to), left: stretch(first, Math.max(first, last)) }]
  })
}

// crosscuts nearer to each other than this are one
const TOGETHER = 0.01

const fallsApart = (region: Region<'leaf'>): readonly Polygon<'leaf'>[] =>
  withoutSlivers(region).filter((polygon) => polygonArea(polygon) > 1)

function largestSound(piece: Polygon<'leaf'>, sound: Region<'leaf'>): GrainStrip | null {
  const region = intersect<'leaf'>([piece], sound)
  return region.length > 0 ? largestStrip(region, 0) : null
}

function useOf(strip: GrainStrip | null, shop: Shop): OffcutUse {
  if (!strip) return 'waste'
  const { width, length } = strip
  if (width >= shop.sliver && length >= LEAST_EDGE) return 'edges and scarfs'
  return width >= LEAST_PATCH.width && length >= LEAST_PATCH.length ? 'patches' : 'waste'
}

/** Those worth keeping, in the order of their labels; none of leaves whose panels are finished. */
export const worthKeeping = (rests: readonly LeafRest[]): readonly Offcut[] =>
  rests.flatMap(({ offcuts, letGo }) => (letGo ? [] : offcuts.filter(({ use }) => use !== 'waste')))

/** The leaves whose offcuts are let go of: all panels that take from them are finished. */
export const leavesLetGo = (rests: readonly LeafRest[]): readonly number[] =>
  rests.flatMap(({ leaf, letGo }) => (letGo ? [leaf] : []))
