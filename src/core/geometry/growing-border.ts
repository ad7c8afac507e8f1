/**
 * A border that grows downwards: lines that leave it to the right take the place of its end.
 *
 * Input: lines on the grid that go down (y grows) or level. Output: a line that does too. Tolerance: meeting points are
 * rounded to the grid; each is found on the border's edges as they were before any cut, so that no rounding builds on
 * another. Failure: none.
 */

/** Points in order, as two lists that are filled up to a size; longer lists are kept, to be filled again. */
export interface Line {
  readonly x: number[]
  readonly y: number[]
  size: number
}

export function putPoint(line: Line, x: number, y: number) {
  line.x[line.size] = x
  line.y[line.size++] = y
}

/** A line that keeps of each corner the edge that leads on from it, as that was before it was cut. */
export interface GrowingBorder extends Line {
  readonly startX: number[]
  readonly startY: number[]
  readonly endX: number[]
  readonly endY: number[]
}

export const emptyBorder = (): GrowingBorder => ({ x: [], y: [], startX: [], startY: [], endX: [], endY: [], size: 0 })

/** Adds a corner; the edge before it leads to it. */
export function putPlace(border: GrowingBorder, x: number, y: number) {
  const { size } = border
  putPoint(border, x, y)
  border.startX[size] = x
  border.startY[size] = y
  if (size === 0) return
  border.endX[size - 1] = x
  border.endY[size - 1] = y
}

/** Where a line joins a border: the line's corner that comes next, and whether their meeting point was put before it. */
export interface Joint {
  readonly next: number
  readonly isPut: boolean
}

/** Takes the end off a border that lies left of a line, up to where they meet. */
export function joinLine(border: GrowingBorder, line: Line): Joint {
  const covered = takeCovered(border, line)
  const joint = covered && border.size > 0 ? meet(border, line) : { next: 0, isPut: false }
  const { next } = joint
  if (next > 0) {
    // the way on from here lies on an edge of the line
    border.startX[border.size - 1] = line.x[next - 1]!
    border.startY[border.size - 1] = line.y[next - 1]!
  }
  return joint
}

/** Whether anything was taken; the corner taken last stays behind the border's end. */
function takeCovered(border: GrowingBorder, line: Line): boolean {
  const { size } = border
  let step = line.size - 2
  while (border.size > 0) {
    const [x, y] = [border.x[border.size - 1]!, border.y[border.size - 1]!]
    // the border may step out to where the line begins, on its level
    if (y < line.y[0]! || (y === line.y[0]! && x < line.x[0]!)) break
    while (step > 0 && line.y[step]! > y) step--
    if (leftOf(line, step, x, y) < 0) break
    border.size--
  }
  return border.size < size
}

/** Positive where a point lies left, as seen, of the way down from a corner of a line to the next; negative right of it. */
const leftOf = ({ x, y }: Line, k: number, px: number, py: number): number =>
  (x[k + 1]! - x[k]!) * (py - y[k]!) - (y[k + 1]! - y[k]!) * (px - x[k]!)

/** Adds to a border the place where the way on to its covered corner meets a line. */
function meet(border: GrowingBorder, line: Line): Joint {
  const last = border.size - 1
  const [ax, ay] = [border.startX[last]!, border.startY[last]!]
  const [dx, dy] = [border.endX[last]! - ax, border.endY[last]! - ay]
  const inside = (k: number) => dx * (line.y[k]! - ay) - dy * (line.x[k]! - ax)
  const [y, coveredY] = [border.y[last]!, border.y[last + 1]!]
  let next = 0
  while (line.y[next]! < y || (line.y[next]! < coveredY && inside(next) >= 0)) next++
  const after = inside(next)
  if (after >= 0) {
    const isStart = next === 0 && border.x[last + 1] === line.x[0] && coveredY === line.y[0]
    border.size++
    return { next: isStart ? 1 : next, isPut: true }
  }
  const before = next > 0 ? inside(next - 1) : -1
  // rounding may have put the border a hair inside: then the line goes on from the border as it is
  return { next, isPut: before >= 0 && putMeeting(border, line, next, before / (before - after)) }
}

/** Adds the place at a share of the way to a corner of a line, not above the border's end or below its covered corner. */
function putMeeting(border: GrowingBorder, { x, y }: Line, next: number, share: number): boolean {
  const last = border.size - 1
  const meetsX = Math.round(x[next - 1]! + share * (x[next]! - x[next - 1]!))
  const meetsY = Math.round(y[next - 1]! + share * (y[next]! - y[next - 1]!))
  const [dx, dy] = [border.endX[last]! - border.startX[last]!, border.endY[last]! - border.startY[last]!]
  const along = (k: number) => dx * (meetsX - border.x[k]!) + dy * (meetsY - border.y[k]!)
  // edges that run nearly alike may cross far from where one of them was cut
  if (along(last) <= 0) return false
  if (along(last + 1) < 0) {
    border.x[last + 1] = meetsX
    border.y[last + 1] = meetsY
  }
  border.size++
  return true
}
