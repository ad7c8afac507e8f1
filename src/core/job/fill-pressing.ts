import type { Flitch } from '../leaves/flitch'
import type { Recipe } from '../patterns/recipe'
import { pressingFrom } from '../press/follow-flitch'
import { NO_DATA_SHEET, type Layer, type Pressing, type PressRoom } from '../press/pressing'
import { leafLayer, USUAL_BOARD, USUAL_ROOM } from '../press/usual-pressing'
import { given } from './given'
import type { PressingInFile, PressRoomInFile } from './press-shape'

/** The pressing that a file stands for; a leaf of which nothing is said is one of the part's flitch. */
export function fillPressing(file: PressingInFile, flitch: Flitch, pattern: Recipe['pattern']): Pressing {
  const usual = pressingFrom(flitch, pattern)
  const { layers, edges = {}, ...rest } = file
  return {
    ...usual,
    ...given(rest),
    layers: layers ? layers.map((layer) => fillLayer(layer, flitch)) : usual.layers,
    edges: { ...usual.edges, ...given(edges) },
  }
}

type LayerInFile = NonNullable<PressingInFile['layers']>[number]

function fillLayer(layer: LayerInFile, { species, thickness, cut }: Flitch): Layer {
  switch (layer.kind) {
    case 'glue line':
      return layer
    case 'board':
      return { ...USUAL_BOARD, ...given(layer) }
    default:
      return { ...leafLayer(species, thickness, undefined, cut), ...given(layer) }
  }
}

/** What the shop presses with, the usual where nothing is said. */
export const fillPressRoom = ({ clamps = {}, dataSheets = {}, ...rest }: PressRoomInFile): PressRoom => ({
  ...USUAL_ROOM,
  ...given(rest),
  dataSheets: Object.fromEntries(
    Object.entries(dataSheets).map(([glue, sheet]) => [glue, { ...NO_DATA_SHEET, ...given(sheet ?? {}) }]),
  ),
  clamps: { ...USUAL_ROOM.clamps, ...given(clamps) },
})
