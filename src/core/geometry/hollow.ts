/**
 * Hollows of a shape that are too narrow for a piece, filled up.
 *
 * Input: a ring on the grid that goes round a shape positively, without repeats and spikes; how wide the piece is all
 * along its lower edge. Output: a ring that the piece touches in the same positions. Tolerance: where a hollow is
 * closed, its border is rounded to the grid. Failure: none.
 *
 * A hollow that opens upwards can be filled to the level where it becomes wider than the piece's lower edge: a piece
 * that comes in no lower than its floor stands on both of its sides, and one that goes through the floor touches that.
 */
import { gridBetween, gridCross, withoutSpikes, type GridPoint, type GridRing } from './clip-grid'

/** A ring as a circle of places, so that places can be taken out. */
interface Circle {
  readonly at: GridPoint[]
  readonly next: number[]
  readonly before: number[]
}

/** The ring with its hollows that open upwards (towards smaller y) filled as far as a width reaches across. */
export function withHollowsFilled(ring: GridRing, width: number): GridRing {
  const n = ring.length
  const circle: Circle = {
    at: [...ring],
    next: ring.map((_, i) => (i + 1) % n),
    before: ring.map((_, i) => (i + n - 1) % n),
  }
  let here = 0
  for (let toGo = n; toGo > 0; toGo--) {
    const filled = fillAt(circle, here, width)
    // what is filled may be part of the floor of a larger hollow
    if (filled !== null) toGo = Math.max(toGo, 4)
    here = filled === null ? circle.next[here]! : circle.before[filled]!
  }
  return ringFrom(circle, here)
}

function ringFrom({ at, next }: Circle, start: number): GridRing {
  const ring: GridRing = []
  let here = start
  do {
    ring.push(at[here]!)
    here = next[here]!
  } while (here !== start)
  return withoutSpikes(ring)
}

/** Fills the hollow whose floor begins at a place; where its left side then ends, or null when there is nothing to fill. */
function fillAt(circle: Circle, floor: number, width: number): number | null {
  const { at, next, before } = circle
  if (at[before[floor]!]!.y >= at[floor]!.y) return null
  let [left, right] = [floor, floor]
  while (at[next[right]!]!.y === at[right]!.y) right = next[right]!
  if (at[next[right]!]!.y > at[right]!.y || !turnsLeft(circle, floor)) return null
  const level = climb(circle, left, right, width)
  if (!level) return null
  ;({ left, right } = level)
  at[left] = raised(at[left]!, at[before[left]!]!, level.y)
  at[right] = raised(at[right]!, at[next[right]!]!, level.y)
  next[left] = right
  before[right] = left
  return left
}

/** Climbs both sides of a hollow while it is narrower than a width: how far, and the corners at or just under that level. */
function climb({ at, next, before }: Circle, floorLeft: number, floorRight: number, width: number) {
  let [left, right] = [floorLeft, floorRight]
  if (at[right]!.x - at[left]!.x >= width) return null
  let reached: { left: number; right: number; y: number } | null = null
  for (;;) {
    const [l, r] = [before[left]!, next[right]!]
    const isTop = at[l]!.y > at[left]!.y || at[r]!.y > at[right]!.y || l === right || r === left || l === r
    if (isTop) return reached
    const y = Math.max(at[l]!.y, at[r]!.y)
    if (xAt(at[r]!, at[right]!, y) - xAt(at[l]!, at[left]!, y) >= width) return reached
    if (at[l]!.y === y) left = l
    if (at[r]!.y === y) right = r
    reached = { left, right, y }
  }
}

/** A corner moved up along its edge to a level. */
const raised = (corner: GridPoint, upper: GridPoint, y: number): GridPoint =>
  corner.y === y ? corner : { x: Math.round(xAt(upper, corner, y)), y }

/** Where the way from one point down to another crosses a level; the upper one where all of it is level. */
function xAt(upper: GridPoint, lower: GridPoint, y: number): number {
  if (y === upper.y) return upper.x
  return y === lower.y ? lower.x : upper.x + ((y - upper.y) / (lower.y - upper.y)) * (lower.x - upper.x)
}

function turnsLeft({ at, next, before }: Circle, corner: number): boolean {
  const here = at[corner]!
  return gridCross(gridBetween(at[before[corner]!]!, here), gridBetween(here, at[next[corner]!]!)) < 0
}
