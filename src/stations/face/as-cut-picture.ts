import type { ThreeSizes } from '../../core/faces/face'
import type { Side } from '../../core/geometry/box'
import type { AsCut } from '../../core/seams/as-cut'

interface Place {
  readonly x: number
  readonly y: number
}

interface Stroke {
  readonly from: Place
  readonly to: Place
}

/** A sheet on its core in the units of a small drawing. */
export interface AsCutPicture {
  readonly viewBox: string
  readonly sheet: string
  readonly core: string
  readonly seams: readonly Stroke[]
  readonly centre: readonly Stroke[]
  readonly marks: readonly { readonly at: Place; readonly anchor: 'start' | 'end' | 'middle'; readonly over: number }[]
  /** Where the words stand, under the sheet. */
  readonly words: Place
}

const ROOM = 64
/** The core's longer side, and the widest overhang, as drawn. */
const LONG = 240
const WIDEST = 30

/**
 * The core to scale, and round it what stands over, so enlarged that the widest is plain to see; the seams are off the
 * centre by as much more than life.
 */
export function asCutPicture(answer: AsCut, { core, sheet }: ThreeSizes, hasCross: boolean): AsCutPicture {
  const [width, height] = [core.max.x - core.min.x, core.max.y - core.min.y]
  const scale = LONG / Math.max(width, height)
  const [w, h] = [Math.max(120, width * scale), Math.max(120, height * scale)]
  const overs = answer.edges.flatMap(({ ends }) => ends.map(({ over }) => over))
  const plannedEnds = [core.min.y - sheet.min.y, sheet.max.y - core.max.y]
  const much = WIDEST / Math.max(1, ...[...overs, ...plannedEnds].map(Math.abs))
  const over = (side: Side, at: Side): number => {
    const end = answer.edges.find((edge) => edge.side === side)?.ends.find((one) => one.at === at)
    return end?.over ?? plannedEnds[side === 'top' ? 0 : 1]!
  }
  const [left, top, right, foot] = [ROOM, ROOM, ROOM + w, ROOM + h]
  const corner = (x: number, y: number, side: Side, end: Side): Place => ({
    x: x + (side === 'left' ? -1 : 1) * over(side, end) * much,
    y: y + (end === 'top' ? -1 : 1) * over(end, side) * much,
  })
  // the core's centre line lies where the panel's centre lies in it
  const cx = left - core.min.x * (w / width)
  const cy = top - core.min.y * (h / height)
  const { off } = answer
  const seam = { from: { x: cx + off.top * much, y: top }, to: { x: cx + off.bottom * much, y: foot } }
  const cross = {
    from: { x: left, y: cy + (off.left ?? 0) * much },
    to: { x: right, y: cy + (off.right ?? 0) * much },
  }
  const upright = { from: { x: cx, y: top - 44 }, to: { x: cx, y: foot + 44 } }
  const level = { from: { x: left - 44, y: cy }, to: { x: right + 44, y: cy } }
  return {
    viewBox: `0 0 ${Math.round(w + 2 * ROOM)} ${Math.round(h + 2 * ROOM + 36)}`,
    sheet: points([
      corner(left, top, 'left', 'top'),
      corner(right, top, 'right', 'top'),
      corner(right, foot, 'right', 'bottom'),
      corner(left, foot, 'left', 'bottom'),
    ]),
    core: points([
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: foot },
      { x: left, y: foot },
    ]),
    seams: hasCross ? [seam, cross] : [seam],
    centre: hasCross ? [upright, level] : [upright],
    marks: answer.edges.flatMap(({ side, ends }) =>
      ends.map((end) => ({ ...markPlace(side, end.at, { left, top, right, foot }), over: end.over })),
    ),
    words: { x: (left + right) / 2, y: foot + ROOM + 2 },
  }
}

/** Numbers stand inside the core beside the edge that they measure. */
function markPlace(
  side: Side,
  at: Side,
  { left, top, right, foot }: { left: number; top: number; right: number; foot: number },
): { at: Place; anchor: 'start' | 'end' | 'middle' } {
  const anchor = side === 'left' || at === 'left' ? 'start' : 'end'
  const x = anchor === 'start' ? left + 5 : right - 5
  if (side === 'left' || side === 'right') return { at: { x, y: at === 'top' ? top + 40 : foot - 30 }, anchor }
  return { at: { x: anchor === 'start' ? left + 30 : right - 30, y: side === 'top' ? top + 16 : foot - 7 }, anchor }
}

const points = (places: readonly Place[]): string =>
  places.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
