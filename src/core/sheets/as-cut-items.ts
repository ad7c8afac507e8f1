/**
 * A taped sheet as it lies on its core.
 *
 * Input: the answer for the sheet as cut, its planned sizes, and the box to fill. Output: items within the box: the core
 * true to its shape, what stands over it so enlarged that the widest is plain to see, and the seams as much off the
 * centre. Panels that are very long or wide are drawn less so, with room for the numbers. Failure: none.
 */
import { closedLine, crossMark, line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { ThreeSizes } from '../faces/face'
import { boxHeight, boxWidth, type Box, type Side } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import type { AsCut } from '../seams/as-cut'
import { bareLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** Round the core, for what stands over. */
const ROOM = 16
/** The widest overhang as drawn. */
const WIDEST = 9
/** No side of the core is drawn shorter. */
const NARROWEST = 42
const NUMBER = 4.2

interface Scene {
  readonly answer: AsCut
  readonly sizes: ThreeSizes
  readonly hasCross: boolean
  readonly unit: LengthUnit
}

/** Where the core's edges are drawn, and how much larger than life lengths across them are. */
interface Drawn {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly foot: number
  readonly much: number
  readonly over: (side: Side, at: Side) => number
}

export function asCutItems(scene: Scene, box: Box<'sheet'>): readonly Item[] {
  const drawn = drawnCore(scene, box)
  const { left, top, right, foot, much, over } = drawn
  const onSheet = (x: 'left' | 'right', y: 'top' | 'bottom'): Point<'sheet'> =>
    point(
      (x === 'left' ? left : right) + (x === 'left' ? -1 : 1) * over(x, y) * much,
      (y === 'top' ? top : foot) + (y === 'top' ? -1 : 1) * over(y, x) * much,
    )
  const corners: readonly Point<'sheet'>[] = [
    point(left, top),
    point(right, top),
    point(right, foot),
    point(left, foot),
  ]
  return [
    closedLine('cut', [
      onSheet('left', 'top'),
      onSheet('right', 'top'),
      onSheet('right', 'bottom'),
      onSheet('left', 'bottom'),
    ]),
    closedLine('trim', corners, { dash: [4, 2] }),
    ...corners.flatMap((corner) => crossMark('mark', corner, 5, { pen: 0.35 })),
    ...seamItems(scene, drawn),
    ...scene.answer.edges.flatMap(({ side, ends }) =>
      ends.map(({ at, over: far }) => numberAt(side, at, bareLength(far, scene.unit, 'seam'), drawn)),
    ),
  ]
}

function drawnCore({ answer, sizes: { core, sheet } }: Scene, { min, max }: Box<'sheet'>): Drawn {
  const [width, length] = [boxWidth(core), boxHeight(core)]
  const [w, h] = [max.x - min.x - 2 * ROOM, max.y - min.y - 2 * ROOM]
  const scale = Math.min(w / width, h / length)
  const [across, along] = [width, length].map((side) => Math.max(NARROWEST, side * scale)) as [number, number]
  const [x, y] = [(min.x + max.x) / 2, (min.y + max.y) / 2]
  const planned = { top: core.min.y - sheet.min.y, bottom: sheet.max.y - core.max.y }
  const over = (side: Side, at: Side): number =>
    answer.edges.find((edge) => edge.side === side)?.ends.find((end) => end.at === at)?.over ??
    planned[side === 'top' ? 'top' : 'bottom']
  const overs = [...answer.edges.flatMap(({ ends }) => ends.map((end) => end.over)), planned.top, planned.bottom]
  const much = WIDEST / Math.max(1, ...overs.map(Math.abs))
  return { left: x - across / 2, right: x + across / 2, top: y - along / 2, foot: y + along / 2, much, over }
}

/** The panel's centre lines, and the seams beside them. */
function seamItems({ answer: { off }, sizes: { core }, hasCross }: Scene, drawn: Drawn): readonly Item[] {
  const { left, top, right, foot, much } = drawn
  // the panel's centre need not be that of the core
  const x = left - core.min.x * ((right - left) / boxWidth(core))
  const y = top - core.min.y * ((foot - top) / boxHeight(core))
  const centre = { dash: [8, 2, 1, 2], pen: 0.2 }
  const upright = [
    line('mark', [point(x, top - ROOM + 2), point(x, foot + ROOM - 2)], centre),
    line('seam', [point(x + off.top * much, top), point(x + off.bottom * much, foot)], { pen: 0.5 }),
  ]
  if (!hasCross) return upright
  return [
    ...upright,
    line('mark', [point(left - ROOM + 2, y), point(right + ROOM - 2, y)], centre),
    line('seam', [point(left, y + (off.left ?? 0) * much), point(right, y + (off.right ?? 0) * much)], { pen: 0.5 }),
  ]
}

/** Numbers stand inside the core beside the edge that they measure. */
function numberAt(side: Side, at: Side, words: string, { left, top, right, foot }: Drawn): Item {
  const isLeft = side === 'left' || at === 'left'
  const isUpright = side === 'left' || side === 'right'
  const aside = isUpright ? 4 : 11
  const x = isLeft ? left + aside : right - aside
  const isTop = side === 'top' || at === 'top'
  const far = isUpright ? 14 : 7
  const y = isTop ? top + far : foot - far + NUMBER * 0.7
  return text(point(x, y), words, { size: NUMBER, weight: 'bold', anchor: isLeft ? 'start' : 'end' })
}
