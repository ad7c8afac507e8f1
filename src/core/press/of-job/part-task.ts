import { boxAround, boxHeight, boxWidth } from '../../geometry/box'
import type { Job, Part } from '../../job/job'
import type { Flitch } from '../../leaves/flitch'
import type { PressTask } from '../press-plan'

/** What has to be pressed of one part; `columns` are the strips of its face, where it is laid in strips. */
export function partTask(
  part: Part,
  flitch: Flitch,
  { pressRoom, unit }: Pick<Job, 'pressRoom' | 'unit'>,
  columns: Columns | null,
): PressTask {
  const { pressing, width, length, core, overhang } = part
  return {
    pressing,
    room: pressRoom,
    panel: { width, length },
    core,
    overhang,
    panels: 1,
    borders: columns?.[0] ? bordersOnCore(columns, part) : null,
    leaf: leafRoom(flitch),
    unit,
  }
}

/** Seams as they stand in the panel, between the edges of the core that lies on the bench. */
function bordersOnCore(columns: Columns, { width, core }: Part): number[] {
  return [-width / 2 - core.left, ...columns.slice(1).map(({ from }) => from), width / 2 + core.right]
}

type Columns = readonly { readonly from: number; readonly to: number }[]

/** What a leaf of the common outline has between its margins. */
function leafRoom({ outline, sideMargin, endMargin }: Flitch): PressTask['leaf'] {
  const box = boxAround(outline)
  return {
    width: Math.max(1, boxWidth(box) - 2 * sideMargin),
    length: Math.max(1, boxHeight(box) - 2 * endMargin),
  }
}

/** What the plan of a part depends on, for whoever remembers plans. */
export const taskDependsOn = ({ pressing, room, panel, core, overhang, borders, leaf, unit }: PressTask) => [
  pressing,
  room,
  core,
  overhang,
  panel.width,
  panel.length,
  borders?.join(' ') ?? '',
  leaf.width,
  leaf.length,
  unit,
]
