import { boxCentre, boxesOverlap, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'

/** A tag's box, and the spot that it belongs to when it could not stand there. */
export interface PlacedTag {
  readonly box: Box<'sheet'>
  readonly led: Point<'sheet'> | null
}

/** Directions and rounds in which a free place is looked for. */
const WAYS = 16
const ROUNDS = 12

/**
 * Tags where none covers another: each in the middle of its own box, the ones with most room (`rooms`) first; one that
 * would lie on another is moved to the nearest free place and led back by a line. Where there is none it stays.
 */
export function placeTags(
  boxes: readonly Box<'sheet'>[],
  rooms: readonly number[],
  step: number,
): readonly PlacedTag[] {
  const placed: PlacedTag[] = boxes.map((box) => ({ box, led: null }))
  const order = boxes.map((_, i) => i).sort((i, j) => rooms[j]! - rooms[i]!)
  const taken: Box<'sheet'>[] = []
  for (const i of order) {
    const box = boxes[i]!
    const free = placesAbout(box, step).find((place) => !taken.some((other) => boxesOverlap(other, place)))
    if (free && free !== box) placed[i] = { box: free, led: boxCentre(box) }
    taken.push(placed[i]!.box)
  }
  return placed
}

/** The box itself, then places farther and farther round it. */
const placesAbout = (box: Box<'sheet'>, step: number): readonly Box<'sheet'>[] => [
  box,
  ...Array.from({ length: ROUNDS * WAYS }, (_, i) => {
    const [round, angle] = [Math.floor(i / WAYS) + 1, (i * 2 * Math.PI) / WAYS]
    return moved(box, Math.cos(angle) * step * round, Math.sin(angle) * step * round)
  }),
]

const moved = ({ min, max }: Box<'sheet'>, x: number, y: number): Box<'sheet'> => ({
  min: point(min.x + x, min.y + y),
  max: point(max.x + x, max.y + y),
})
