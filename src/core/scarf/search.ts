/**
 * The scarf that a leaf of any outline needs for a wanted size.
 *
 * Input: a region of a leaf, the wanted width and length along y, the loss. Output: a cut with the rectangle it gives,
 * made and checked by boolean operations; where none is wide enough, the widest found, and a width that none can
 * exceed. Tolerance: a search, first over a grid of slopes, places and slides, then ever finer about the best, so a
 * wider piece may be missed; what is found is real. Failure: null where not one cut gives the length.
 */
import { boxHeight, boxWidth, regionBox, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { regionArea, type Edge, type Region } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import type { LeafRef } from '../ids'
import type { SlantedCut } from '../job/make-up'
import { flattestSlope, type Sound } from './extension'
import { farHalfMove, lossAcross, onCut, scarfedPiece, type Piece } from './piece'
import { acrossFromLine } from './joint-line'
import { regionEdges, widestGap, widestRectangle } from './strip'

/**
 * The border of a piece without making it: the leaf's edges on either side, the far ones moved, and the faces of the
 * joint where only one half has wood. Edges in no order, as `strip.ts` takes them.
 */
export function pieceEdges(edges: readonly Edge<'leaf'>[], cut: SlantedCut): readonly Edge<'leaf'>[] {
  const across = lossAcross(cut)
  const move = farHalfMove(cut)
  const turns: number[] = []
  const made: Edge<'leaf'>[] = []
  const keep = (edge: Edge<'leaf'>, depthA: number, depthB: number, by: Point<'leaf'>) => {
    if (depthA < 0 && depthB < 0) return
    const cutAt = (): Point<'leaf'> => {
      const t = depthA / (depthA - depthB)
      const y = edge.a.y + (edge.b.y - edge.a.y) * t + by.y
      turns.push(y)
      return onCut(cut, y, across)
    }
    const moved = (p: Point<'leaf'>) => point<'leaf'>(p.x + by.x, p.y + by.y)
    made.push({ a: depthA < 0 ? cutAt() : moved(edge.a), b: depthB < 0 ? cutAt() : moved(edge.b) })
  }
  for (const edge of edges) {
    const [a, b] = [acrossFromLine(cut, edge.a), acrossFromLine(cut, edge.b)]
    keep(edge, a - across, b - across, NOT_MOVED)
    keep(edge, -across - a, -across - b, move)
  }
  // along the joint every turn is a change in one half: between odd and even turns just one of them is there
  turns.sort((p, q) => p - q)
  for (let i = 0; i + 1 < turns.length; i += 2)
    made.push({ a: onCut(cut, turns[i]!, across), b: onCut(cut, turns[i + 1]!, across) })
  return made
}

const NOT_MOVED: Point<'leaf'> = { x: 0, y: 0 }

/** Where a search is: the numbers that a cut is made of, and the first row of the rectangle. */
interface Try {
  readonly slope: number
  /** Where the marked line crosses the middle row of the leaf. */
  readonly middle: number
  readonly gain: number
  readonly start: number
  readonly runs: 'right' | 'left'
  readonly width: number
}

export interface ScarfSearch {
  readonly cut: SlantedCut
  readonly piece: Piece
  /** The rectangle of the wanted length, as wide as it gets. */
  readonly box: Box<'window'>
  readonly width: number
  /** The wanted width is reached. */
  readonly enough: boolean
  /** No scarf of this leaf gives a wider rectangle of the wanted length: all its wood would be in it. */
  readonly widthBound: number
}

const SLOPES = 9
const PLACES = 9
const GAINS = 4
const STARTS = 6
/** Tries that are refined, and how often the step is halved. */
const KEPT = 6
const HALVINGS = 12

/** The cut and slide that give the widest rectangle of the wanted length that the search can find. */
export function searchScarf(leaf: LeafRef, region: Region<'leaf'>, wanted: Sound, loss: number): ScarfSearch | null {
  const edges = regionEdges(region)
  if (edges.length === 0) return null
  const box = regionBox(region)
  const scene: Scene = { edges, box, wanted, loss, row: (box.min.y + box.max.y) / 2 }
  const first = widestFirst(gridOfTries(scene)).slice(0, KEPT)
  for (const tried of widestFirst(first.map((start) => refined(scene, start)))) {
    const made = checked(leaf, region, scene, tried)
    if (made) return made
  }
  return null
}

interface Scene {
  readonly edges: readonly Edge<'leaf'>[]
  readonly box: Box<'leaf'>
  readonly wanted: Sound
  readonly loss: number
  /** The middle row of the leaf. */
  readonly row: number
}

const widestFirst = (tries: readonly Try[]): Try[] =>
  tries.filter(({ width }) => width > 0).sort((p, q) => q.width - p.width)

const cutOf = ({ loss, row }: Scene, { slope, middle, gain, runs }: Omit<Try, 'width'>): SlantedCut => ({
  slope,
  gain,
  loss,
  runs,
  through: point(middle, row),
})

function gapWidthOf(edges: readonly Edge<'leaf'>[], start: number, length: number): number {
  const gap = widestGap(edges, start, start + length)
  return gap ? gap.to - gap.from : 0
}

const steps = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count)

function gridOfTries(scene: Scene): Try[] {
  const { box, wanted, loss } = scene
  const [width, length] = [boxWidth(box), boxHeight(box)]
  const corner = Math.max(flattestSlope({ width, length }, loss), width / (4 * length))
  const least = Math.max(0, wanted.length - length)
  const tries: Try[] = []
  for (const runs of ['right', 'left'] as const)
    for (const slope of steps(-1, 2, SLOPES).map((power) => corner * 2 ** power))
      for (const middle of [box.min.x + width / 2, ...steps(box.min.x, box.max.x, PLACES)])
        for (const gain of [0.02, ...steps(0, 0.6, GAINS)].map((share) => least + share * (length - least))) {
          const cut = { slope, middle, gain, runs }
          const edges = pieceEdges(scene.edges, cutOf(scene, { ...cut, start: 0 }))
          const room = length + gain - wanted.length
          const starts = [0, ...steps(0, room, STARTS - 2), room].map((y) => box.min.y + y)
          const best = starts
            .map((start) => ({ start, width: gapWidthOf(edges, start, wanted.length) }))
            .reduce((p, q) => (q.width > p.width ? q : p))
          tries.push({ ...cut, ...best })
        }
  return tries
}

/** Each number is moved a step either way for as long as the piece gets wider, then the steps are halved. */
function refined(scene: Scene, from: Try): Try {
  const length = boxHeight(scene.box)
  const step = { slope: from.slope / 4, middle: boxWidth(scene.box) / PLACES, gain: length / 8, start: length / 16 }
  let best = from
  for (let n = 0; n < HALVINGS; n++) {
    const size = 2 ** -n
    let better = true
    for (let turns = 0; better && turns < 6; turns++) {
      better = false
      for (const changed of neighbours(best, step, size)) {
        const width = widthOf(scene, changed)
        if (width <= best.width) continue
        best = { ...changed, width }
        better = true
      }
    }
  }
  return best
}

function neighbours(at: Try, step: Pick<Try, 'slope' | 'middle' | 'gain' | 'start'>, size: number): Try[] {
  const names = ['slope', 'middle', 'gain', 'start'] as const
  const alone = names.flatMap((name) => [1, -1].map((way) => ({ ...at, [name]: at[name] + way * size * step[name] })))
  // where the slide changes, the rectangle mostly has to begin elsewhere too
  const paired = [1, -1].flatMap((way) =>
    [0.5, 1].map((share) => ({
      ...at,
      gain: at.gain + way * size * step.gain,
      start: at.start + way * size * step.gain * share,
    })),
  )
  return [...alone, ...paired].filter(({ slope, gain }) => slope > 0.005 && slope < 2 && gain >= 0)
}

const widthOf = (scene: Scene, tried: Try): number =>
  gapWidthOf(pieceEdges(scene.edges, cutOf(scene, tried)), tried.start, scene.wanted.length)

/** The try made by boolean operations, with the widest rectangle in what that gives. */
function checked(leaf: LeafRef, region: Region<'leaf'>, scene: Scene, tried: Try): ScarfSearch | null {
  const { wanted } = scene
  const cut = cutOf(scene, tried)
  const piece = scarfedPiece(leaf, region, cut)
  const strip = piece && widestRectangle(regionEdges([piece.outline]), wanted.length)
  if (!piece || !strip) return null
  const width = boxWidth(strip.box)
  const widthBound = regionArea(region) / wanted.length
  return { cut, piece, box: strip.box, width, enough: width >= wanted.width - 2 * GRID, widthBound }
}
