import { boxAround, boxHeight, boxWidth } from '../../geometry/box'
import type { Job, Part } from '../../job/job'
import type { Flitch } from '../../leaves/flitch'
import type { PressTask } from '../press-plan'

/** What has to be pressed of one part; `columns` are the strips of its face, where it is laid in strips. */
export function partTask(
  part: Part,
  flitch: Flitch,
  { pressRoom, unit }: Pick<Job, 'pressRoom' | 'unit'>,
  columns: readonly { readonly from: number; readonly to: number }[] | null,
): PressTask {
  const { pressing, width, length, core, overhang } = part
  return {
    pressing,
    room: pressRoom,
    panel: { width, length },
    core,
    overhang,
    panels: 1,
    borders: columns?.[0] ? [columns[0].from, ...columns.map(({ to }) => to)] : null,
    leaf: leafRoom(flitch),
    unit,
  }
}

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
