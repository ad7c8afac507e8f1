import { line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import { CAP_HEIGHT, textWidth } from '../drawing/text-width'
import type { Box, Side } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { ringEdges, type Ring } from '../geometry/polygon'
import { levelCrossings } from '../geometry/segment'
import type { LandmarkPlace } from '../templates/viewfinder'

/** From the hole to the first lane of marks, and from lane to lane: one for each leaf. */
const FIRST = 9
const LANE = 6

/** The lane of the nth leaf on a card, mm from the box of the hole. */
export const laneAt = (nth: number): number => FIRST + nth * LANE

/** A landmark at one side of a card: how far along the side, and where its line begins, mm outside the box of the hole. */
interface Tick {
  readonly along: number
  readonly from: number
  readonly lane: number
  readonly leaf: number
  readonly word: string
}

/** The landmarks of one leaf on a card. */
export interface CardLeaf {
  readonly leaf: number
  readonly places: readonly LandmarkPlace[]
}

const WORDS = { 'crown tip': 'crown', knot: 'knot', stripe: 'stripe' } as const

/** Lines from the hole out to the lane of each leaf where its landmarks lie, each with the leaf's number and a word. */
export function tickItems(
  side: Side,
  window: Ring<'window'>,
  box: Box<'window'>,
  leaves: readonly CardLeaf[],
  onSheet: (p: Point<'window'>) => Point<'sheet'>,
): readonly Item[] {
  const ticks = leaves.flatMap(({ leaf, places }, nth) => ticksOf(side, window, box, places, { leaf, lane: nth }))
  const place = (along: number, out: number) => onSheet(outside(side, box, along, out))
  return [
    ...ticks.map(({ along, from, lane }) =>
      line('mark', [place(along, from), place(along, laneAt(lane))], { pen: 0.25 }),
    ),
    ...labels(side, box, ticks).map(({ along, lane, words }) =>
      text(place(along, laneAt(lane) - (isEnd(side) ? middle : -middle)), words, {
        angle: isEnd(side) ? 0 : -Math.PI / 2,
      }),
    ),
  ]
}

/** Half the height of the letters, which stand in the middle of their lane. */
const middle = (SMALLEST_TEXT * CAP_HEIGHT) / 2

const isEnd = (side: Side): boolean => side === 'top' || side === 'bottom'

/** A place beside the box of the hole: along a side in the window's frame, and so far out. */
export function outside(side: Side, { min, max }: Box<'window'>, along: number, out: number): Point<'window'> {
  if (side === 'top') return point(along, min.y - out)
  if (side === 'bottom') return point(along, max.y + out)
  return point(side === 'left' ? min.x - out : max.x + out, along)
}

function ticksOf(
  side: Side,
  window: Ring<'window'>,
  box: Box<'window'>,
  places: readonly LandmarkPlace[],
  { leaf, lane }: Pick<Tick, 'leaf' | 'lane'>,
): readonly Tick[] {
  const axis = isEnd(side) ? 'x' : 'y'
  const end = side === 'top' ? 'near' : 'far'
  return places.flatMap(({ landmark, at }) => {
    if (landmark.kind === 'stripe' && (!isEnd(side) || landmark.end !== end)) return []
    const along = at[axis]
    if (along <= box.min[axis] || along >= box.max[axis]) return []
    return [{ along, from: -depthTo(side, window, box, along), lane, leaf, word: WORDS[landmark.kind] }]
  })
}

/** From a side of the box of the hole to the hole itself. */
export function depthTo(side: Side, window: Ring<'window'>, { min, max }: Box<'window'>, along: number): number {
  const levels = levelCrossings(ringEdges(window), isEnd(side) ? 'x' : 'y', along)
  if (levels.length === 0) return 0
  if (side === 'top') return Math.min(...levels) - min.y
  if (side === 'left') return Math.min(...levels) - min.x
  return (side === 'bottom' ? max.y : max.x) - Math.max(...levels)
}

interface Label {
  readonly lane: number
  readonly words: string
  /** Where its text begins as it is read. */
  readonly along: number
  readonly from: number
  readonly to: number
}

/** Between the end of a word and the line of another landmark, mm. */
const CLEAR = 0.8

/** Beside its line where nothing is in the way, shorter where there is no room; left out where there is none at all. */
function labels(side: Side, box: Box<'window'>, ticks: readonly Tick[]): readonly Label[] {
  const axis = isEnd(side) ? 'x' : 'y'
  const placed: Label[] = []
  for (const tick of [...ticks].sort((p, q) => p.along - q.along)) {
    const ways = [`${tick.leaf} ${tick.word}`, String(tick.leaf)].flatMap((words) => waysOf(side, tick, words))
    const clear = ways.filter(
      ({ from, to }) =>
        from >= box.min[axis] - FIRST &&
        to <= box.max[axis] + FIRST &&
        placed.every((other) => other.lane !== tick.lane || other.to + 1 < from || other.from - 1 > to),
    )
    const crossed = ({ from, to }: Label) =>
      ticks.some(
        (other) => other !== tick && other.lane >= tick.lane && other.along > from - CLEAR && other.along < to + CLEAR,
      )
    const best = clear.find((way) => !crossed(way)) ?? clear[0]
    if (best) placed.push(best)
  }
  return placed
}

/** After its line, or before it. Words beside the long sides are read upwards. */
function waysOf(side: Side, { along, lane }: Tick, words: string): readonly Label[] {
  const width = textWidth(words, SMALLEST_TEXT)
  return [
    { from: along + 1, to: along + 1 + width },
    { from: along - 1 - width, to: along - 1 },
  ].map(({ from, to }) => ({ lane, words, from, to, along: isEnd(side) ? from : to }))
}
