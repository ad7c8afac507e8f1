import { line } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { point } from '../geometry/point'

/** The tick in a box that reaches `half` to each side of a place: what it stands for is done already. */
export const checkMark = (x: number, y: number, half: number): Item =>
  line(
    'mark',
    [
      [-0.7, 0],
      [-0.2, 0.6],
      [0.75, -0.65],
    ].map(([right = 0, down = 0]) => point<'sheet'>(x + right * half, y + down * half)),
    { pen: 0.7 },
  )
