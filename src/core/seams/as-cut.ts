/**
 * Centring as cut: where a taped sheet comes to lie on its core, from what was measured on the sheet itself.
 *
 * Input: distances from the centre seam to the sheet's left and right edge, measured at the ends of the sheet as planned;
 * with a cross seam, which must be square to it, also those to the upper and lower edge at its sides. All seen from the
 * show side. Edges are taken to be straight between the measures; without a cross seam the ends are taken to be as
 * planned. Output: panel mm; off the centre is positive to the right and down, turns are clockwise. Tolerance: 1 µm.
 * Failure: where both edges can't have the least overhang, what is lacking is split between them and shows as an edge
 * that does not keep it.
 */
import { boxCentre, type Box, type Side } from '../geometry/box'
import { between, point, subtract, type Point } from '../geometry/point'
import type { Edge, Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { compose, rotation, transformPoint, transformVector, translation, type Transform } from '../geometry/transform'
import type { ThreeBoxes } from '../faces/face'
import { leastShift, STRAIGHT, type Lie, type SeamRoom } from './least-shift'

/** From the centre seam to the sheet's edges, at its two ends. */
export interface AcrossMeasures {
  readonly top: { readonly left: number; readonly right: number }
  readonly bottom: { readonly left: number; readonly right: number }
}

/** From the cross seam to the sheet's ends, at its two sides. */
export interface AlongMeasures {
  readonly left: { readonly above: number; readonly below: number }
  readonly right: { readonly above: number; readonly below: number }
}

export interface SheetMeasures {
  readonly across: AcrossMeasures
  /** null without a cross seam. */
  readonly along: AlongMeasures | null
}

/** How far a sheet's seams lie off the centre, at the core's edges; left and right are null without a cross seam. */
export interface SeamOff {
  readonly top: number
  readonly bottom: number
  readonly left: number | null
  readonly right: number | null
}

export interface AsCut {
  /** Where the seams would lie if the sheet were laid by its edges: its middle line on that of the sheet as planned. */
  readonly byEdges: SeamOff
  /** From there: first the turn about the panel's centre (radians), then the shift. */
  readonly turn: number
  readonly shift: Point<'panel'>
  /** Where the seams come to lie. */
  readonly off: SeamOff
  readonly edges: readonly EdgeAsCut[]
  /** Whether every edge keeps its least overhang. */
  readonly keeps: boolean
  readonly onCentre: boolean
  /** The sheet's four corners as laid, from the top left, clockwise. */
  readonly outline: Ring<'panel'>
}

/** One edge of the sheet, as laid, at the two corners of the core and of the finished panel beside it. */
export interface EdgeAsCut {
  readonly side: Side
  readonly ends: readonly [EdgeEnd, EdgeEnd]
  readonly keeps: boolean
}

export interface EdgeEnd {
  readonly at: Side
  /** How far the sheet stands over the core's corner: where the pencil marks it, from the sheet's edge. */
  readonly over: number
  /** What comes off down to the finished size. */
  readonly trim: number
}

/** What the measures would be if the sheet were cut as planned. */
export function plannedMeasures({ sheet: { min, max } }: ThreeBoxes, hasCross: boolean): SheetMeasures {
  const across = { left: -min.x, right: max.x }
  const along = { above: -min.y, below: max.y }
  return { across: { top: across, bottom: across }, along: hasCross ? { left: along, right: along } : null }
}

/** Lays a sheet by its seams; where that would leave an edge less than `leastOverhang`, as near to it as can be. */
export function centreAsCut(measured: SheetMeasures, sizes: ThreeBoxes, leastOverhang: number): AsCut {
  const byEdges = laidByEdges(measured, sizes.sheet)
  const lie = lieOf(measured, sizes, leastOverhang)
  const laid = placed(lie)
  const turn = Math.atan(lie.slope) - Math.atan2(byEdges.b, byEdges.a)
  const centre = transformVector(rotation<'panel'>(turn), point(byEdges.e, byEdges.f))
  const edges = edgesAsCut(measured, sizes, laid, leastOverhang)
  return {
    byEdges: seamOff(byEdges, sizes.core, measured.along !== null),
    turn,
    shift: subtract(point(lie.x, lie.y), centre),
    off: seamOff(laid, sizes.core, measured.along !== null),
    edges,
    keeps: edges.every(({ keeps }) => keeps),
    onCentre: lie.x === 0 && lie.y === 0 && lie.slope === 0,
    outline: sheetCorners(measured, sizes.sheet).map((p) => transformPoint(laid, p)),
  }
}

/** A sheet about its crossing of seams, carried onto the panel. */
type Laid = Transform<'panel', 'panel'>

const placed = ({ x, y, slope }: Lie): Laid => compose(translation<'panel'>(x, y), rotation<'panel'>(Math.atan(slope)))

function laidByEdges(measured: SheetMeasures, sheet: Box<'panel'>): Laid {
  const { left, right, top, bottom } = sheetEdges(measured, sheet)
  const head = between(left.a, right.a, 0.5)
  const foot = between(left.b, right.b, 0.5)
  const middle = point<'panel'>((head.x + foot.x) / 2, (top.a.y + top.b.y + bottom.a.y + bottom.b.y) / 4)
  const turned = rotation<'panel'>(Math.atan2(foot.x - head.x, foot.y - head.y))
  const off = subtract(boxCentre(sheet), transformPoint(turned, middle))
  return compose(translation<'panel'>(off.x, off.y), turned)
}

/** The sheet's edges about its seams: upright ones down, level ones to the right. */
function sheetEdges(
  { across, along }: SheetMeasures,
  { min, max }: Box<'panel'>,
): Readonly<Record<Side, Edge<'panel'>>> {
  const { left, right } = along ?? {
    left: { above: -min.y, below: max.y },
    right: { above: -min.y, below: max.y },
  }
  return {
    left: { a: point(-across.top.left, min.y), b: point(-across.bottom.left, max.y) },
    right: { a: point(across.top.right, min.y), b: point(across.bottom.right, max.y) },
    top: { a: point(min.x, -left.above), b: point(max.x, -right.above) },
    bottom: { a: point(min.x, left.below), b: point(max.x, right.below) },
  }
}

function sheetCorners(measured: SheetMeasures, sheet: Box<'panel'>): Ring<'panel'> {
  const { left, right, top, bottom } = sheetEdges(measured, sheet)
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ].map(([upright, level]) => corner(upright!, level!))
}

/** Where a nearly upright line meets a nearly level one. */
function corner(upright: Edge<'panel'>, level: Edge<'panel'>): Point<'panel'> {
  const lean = (upright.b.x - upright.a.x) / (upright.b.y - upright.a.y)
  const fall = (level.b.y - level.a.y) / (level.b.x - level.a.x)
  const x = (upright.a.x + lean * (level.a.y - fall * level.a.x - upright.a.y)) / (1 - lean * fall)
  return point(x, level.a.y + fall * (x - level.a.x))
}

/** Since a turn moves the edges a little besides, the rooms are measured again where the sheet has come to lie. */
function lieOf(measured: SheetMeasures, sizes: ThreeBoxes, least: number): Lie {
  let lie = STRAIGHT
  for (let i = 0; i < 8; i++) lie = leastShift(seamRooms(measured, sizes, lie, least))
  return lie
}

function seamRooms(measured: SheetMeasures, sizes: ThreeBoxes, lie: Lie, least: number): readonly SeamRoom[] {
  const { min, max } = sizes.core
  const edges = edgesAsCut(measured, sizes, placed(lie), least)
  const over = (side: Side, end: 0 | 1) => edges.find((edge) => edge.side === side)!.ends[end].over
  const room = (axis: 'x' | 'y', before: Side, after: Side, end: 0 | 1, lever: number): SeamRoom => {
    const now = lie[axis] + lie.slope * lever
    return { axis, lever, low: now + least - over(after, end), high: now + over(before, end) - least }
  }
  // levers about where the seams cross
  const across = [room('x', 'left', 'right', 0, lie.y - min.y), room('x', 'left', 'right', 1, lie.y - max.y)]
  if (!measured.along) return across
  return [...across, room('y', 'top', 'bottom', 0, min.x - lie.x), room('y', 'top', 'bottom', 1, max.x - lie.x)]
}

function edgesAsCut(measured: SheetMeasures, sizes: ThreeBoxes, laid: Laid, least: number): readonly EdgeAsCut[] {
  const edges = sheetEdges(measured, sizes.sheet)
  const sides: readonly Side[] = measured.along ? ['left', 'right', 'top', 'bottom'] : ['left', 'right']
  return sides.map((side) => {
    const { a, b } = edges[side]
    const line = { a: transformPoint(laid, a), b: transformPoint(laid, b) }
    const end = (at: Side): EdgeEnd => ({
      at,
      over: beyond(line, side, at, sizes.core),
      trim: beyond(line, side, at, sizes.finished),
    })
    const ends = isUpright(side) ? ([end('top'), end('bottom')] as const) : ([end('left'), end('right')] as const)
    return { side, ends, keeps: ends.every(({ over }) => over >= least - GRID) }
  })
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right'

/** How far a line stands out over a box, at one of the two corners on that side. */
function beyond(line: Edge<'panel'>, side: Side, at: Side, { min, max }: Box<'panel'>): number {
  const level = at === 'top' ? min.y : at === 'bottom' ? max.y : at === 'left' ? min.x : max.x
  const reach = isUpright(side) ? xAt(line, level) : yAt(line, level)
  if (side === 'left') return min.x - reach
  if (side === 'right') return reach - max.x
  return side === 'top' ? min.y - reach : reach - max.y
}

const xAt = ({ a, b }: Edge<'panel'>, y: number): number => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)
const yAt = ({ a, b }: Edge<'panel'>, x: number): number => a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)

function seamOff(laid: Laid, { min, max }: Box<'panel'>, hasCross: boolean): SeamOff {
  const ray = (x: number, y: number): Edge<'panel'> => ({
    a: transformPoint(laid, point(0, 0)),
    b: transformPoint(laid, point(x, y)),
  })
  const [upright, level] = [ray(0, 1), ray(1, 0)]
  return {
    top: xAt(upright, min.y),
    bottom: xAt(upright, max.y),
    left: hasCross ? yAt(level, min.x) : null,
    right: hasCross ? yAt(level, max.x) : null,
  }
}
