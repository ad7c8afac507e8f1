import { point } from '../geometry/point'
import type { Job, Part } from '../job/job'
import { usualPart } from '../job/usual'
import { USUAL_RADIAL } from '../patterns/radial'
import { USUAL_STRIPS } from '../patterns/strips'
import type { StripRecipe } from '../patterns/recipe'
import { USUAL_ROOM } from '../press/usual-pressing'
import { USUAL_SHOP } from '../shop'
import { demoFlitch } from './demo-flitch'
import { DOOR, END, HIDDEN, LAMP_TABLE, pressedOn, TOP } from './demo-pressings'

/** The demonstration: a sideboard for a music room and a lamp table, all faces from one flitch of walnut. */
export function demoJob(): Job {
  const flitch = demoFlitch()
  const part = (id: string, name: string, width: number, length: number, rest: Partial<Part>): Part => ({
    ...usualPart(id, name, width, length, flitch),
    pressing: pressedOn(flitch, 'strips', HIDDEN),
    ...rest,
  })
  const strips = (firstLeaf: number, more: Partial<StripRecipe> = {}): StripRecipe => ({
    ...USUAL_STRIPS,
    firstLeaf,
    ...more,
  })
  const hidden = { showClass: 'hidden', overhang: { top: 10, right: 8, bottom: 10, left: 8 } } as const
  const door = (nth: number, name: string): Part =>
    part(`door-${nth}`, name, 372, 560, {
      pressing: pressedOn(flitch, 'strips', DOOR),
      recipe: strips(2 * nth + 1, { count: 2 }),
      positions: { window: point(DOOR_WINDOW.x, DOOR_WINDOW.y) },
    })
  return {
    name: 'Music-room sideboard',
    unit: 'mm',
    shop: USUAL_SHOP,
    pressRoom: USUAL_ROOM,
    flitches: [flitch],
    pairs: [],
    parts: [
      door(1, 'Door, far left'),
      door(2, 'Door, left'),
      door(3, 'Door, right'),
      door(4, 'Door, far right'),
      part('top', 'Top', 420, 1500, {
        lying: true,
        pressing: pressedOn(flitch, 'strips', TOP),
        recipe: strips(1, { count: 2 }),
      }),
      part('end-left', 'End, left', 420, 640, {
        pressing: pressedOn(flitch, 'strips', END),
        recipe: strips(17, { count: 2 }),
        positions: { window: point(170, 420) },
      }),
      part('end-right', 'End, right', 420, 640, {
        pressing: pressedOn(flitch, 'strips', END),
        recipe: strips(17, { count: 2 }),
        positions: { window: point(170, 1120) },
      }),
      part('lamp-table', 'Lamp table', 560, 560, {
        outline: { shape: 'circle' },
        overhang: { top: 8, right: 8, bottom: 8, left: 8 },
        pressing: pressedOn(flitch, 'radial', LAMP_TABLE),
        recipe: { ...USUAL_RADIAL, count: 12, firstLeaf: 3 },
        positions: { window: point(LAMP_WINDOW.x, LAMP_WINDOW.y) },
      }),
      part('bottom', 'Bottom', 400, 1460, {
        ...hidden,
        recipe: strips(19, { arrangement: 'balance', count: 'fewest' }),
      }),
      part('back', 'Back', 600, 1460, { ...hidden, recipe: strips(21, { arrangement: 'balance', count: 'fewest' }) }),
    ],
  }
}

/** Where the doors take the crown of the figure, and the table what lies beyond it. */
const DOOR_WINDOW = { x: 170, y: 640 }
const LAMP_WINDOW = { x: 170, y: 1100 }
