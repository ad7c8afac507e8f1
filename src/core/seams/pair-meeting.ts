/**
 * What the figure does across the gap of a pair, on the two finished parts as they hang.
 *
 * Input: both as laid, the pair holding. Output: worst of all stretches; places in panel mm of the first, the edge taken
 * along the middle of the gap, jumps in log coordinates. Failure: null where a piece at the gap has no leaf.
 */
import type { LaidFace, Piece } from '../fit/lay-face'
import { asTheyHang, lostBetween, meetingEdges } from '../fit/pair-edges'
import type { Box, Side } from '../geometry/box'
import { point } from '../geometry/point'
import { ringEdges, type Edge } from '../geometry/polygon'
import { GRID, MEETS } from '../geometry/tolerance'
import { compose, translation } from '../geometry/transform'
import type { Pair } from '../job/job'
import { depthShown } from '../leaves/bundle'
import { figureJump, howFigureMeets, type Meets } from './meeting'
import { partStretches, type PartStretch } from './part-stretches'

/** Runs on: one leaf goes through under the gap. Steps: it does, but what both sheets lose there is missing. */
export type PairMeets = Meets | 'runs on' | 'steps'

export interface PairMeeting {
  readonly meets: PairMeets
  /** How far the figure misses itself at the middle of the gap; null where the same stretch is only shown again. */
  readonly jump: number | null
  /** How far apart in the log lie the faces on both sides, where they mirror. */
  readonly depthOffset: number | null
  /** Wood between the two finished edges that is not seen. */
  readonly lost: number
}

export function pairMeeting(pair: Pair, first: LaidFace, second: LaidFace): PairMeeting | null {
  const found = stretchesAtGap(pair, first, second).map((stretch) => judged(first, stretch))
  if (found.length === 0 || found.some((one) => one === null)) return null
  const all = found.flatMap((one) => one ?? [])
  const meets = all.map((one) => one.meets).reduce((p, q) => (WORST.indexOf(q) > WORST.indexOf(p) ? q : p))
  const largest = (values: readonly (number | null)[]) =>
    values.some((value) => value !== null) ? Math.max(...values.map((value) => value ?? 0)) : null
  return {
    meets,
    jump: meets === 'repeats' ? null : largest(all.map(({ jump }) => jump)),
    depthOffset: meets === 'mirrors' ? largest(all.map(({ depthOffset }) => depthOffset)) : null,
    lost: lostBetween(pair),
  }
}

const WORST: readonly PairMeets[] = ['runs on', 'mirrors', 'repeats', 'steps', 'breaks']

type Judged = Pick<PairMeeting, 'meets' | 'jump' | 'depthOffset'>

function judged({ flitch }: LaidFace, { edge, left, right, turns }: GapStretch): Judged | null {
  if (left.leaf === null || right.leaf === null) return null
  const jump = figureJump(edge, left.logToPanel, right.logToPanel)
  const meets = howFigureMeets(edge, left.logToPanel, right.logToPanel)
  if (left.leaf === right.leaf && meets === 'repeats')
    return { meets: jump <= MEETS ? 'runs on' : 'steps', jump, depthOffset: null }
  const depth = (leaf: number, over: boolean) => depthShown(flitch, leaf, over)
  const depthOffset = Math.abs(depth(left.leaf, turns[0]) - depth(right.leaf, turns[1]))
  return { meets, jump: meets === 'repeats' ? null : jump, depthOffset }
}

interface GapStretch extends PartStretch {
  readonly turns: readonly [boolean, boolean]
}

/** The gap cut where a piece on either side ends, along its middle, between the ends of the finished edges. */
function stretchesAtGap(pair: Pair, first: LaidFace, second: LaidFace): readonly GapStretch[] {
  const shift = asTheyHang(pair, first.part, second.part)
  const sides = meetingEdges(pair)
  const { max } = first.sizes.finished
  const isLevel = pair.meet === 'same leaves'
  const at = (along: number) =>
    isLevel ? point<'panel'>(along, max.y + pair.gap / 2) : point<'panel'>(max.x + pair.gap / 2, along)
  const theirs = second.pieces.map((piece) => hung(piece, shift))
  const within = rangeOf(first.sizes.finished, isLevel)
  return first.pieces.flatMap((piece) =>
    reachesAlong(piece, sides.first, isLevel).flatMap(([from, to]) =>
      theirs.flatMap((other) =>
        reachesAlong(other, sides.second, isLevel).flatMap(([begin, end]) => {
          const [low, high] = [Math.max(from, begin, within[0]), Math.min(to, end, within[1])]
          if (high - low < GRID * 10) return []
          const edge: Edge<'panel'> = { a: at(low), b: at(high) }
          const turns = [piece.cell.turn.turnedOver, other.cell.turn.turnedOver] as const
          return partStretches(edge, piece, other).map((stretch) => ({ ...stretch, turns }))
        }),
      ),
    ),
  )
}

const rangeOf = ({ min, max }: Box<'panel'>, isLevel: boolean): readonly [number, number] =>
  isLevel ? [min.x, max.x] : [min.y, max.y]

/** From where to where a piece lies along the edge at the gap. */
const reachesAlong = (
  { cell: { face } }: Piece,
  side: Side,
  isLevel: boolean,
): readonly (readonly [number, number])[] =>
  ringEdges(face.ring).flatMap(({ a, b }, i) => {
    const tag = face.tags[i]
    if (tag?.kind !== 'outer' || tag.side !== side) return []
    const [p, q] = isLevel ? [a.x, b.x] : [a.y, b.y]
    return [[Math.min(p, q), Math.max(p, q)] as const]
  })

/** A piece where it hangs beside, or below, the other part. */
function hung(piece: Piece, { x, y }: { readonly x: number; readonly y: number }): Piece {
  const move = translation<'panel'>(x, y)
  return {
    ...piece,
    leafToPanel: compose(move, piece.leafToPanel),
    logToPanel: compose(move, piece.logToPanel),
  }
}
