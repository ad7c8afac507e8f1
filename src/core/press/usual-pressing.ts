import type { Cut } from '../leaves/flitch'
import { PRESS_RANGES } from './press-trouble'
import type { Grain, Layer, Pressing, PressRoom } from './pressing'

/** Grain along the panel's length, and across it, as a layer says it. */
export const ALONG = 90
export const ACROSS = 0

/** A leaf with its grain along the panel. */
export const leafLayer = (
  species: string,
  thickness: number,
  grain: Grain = ALONG,
  cut: Cut = 'flat',
): Layer & { readonly kind: 'veneer' | 'solid' } => ({
  kind: 'veneer',
  species,
  cut,
  thickness,
  grain,
  moisture: null,
})

const BARE = { edge: 'bare' } as const

/** What most panels are pressed on. */
export const USUAL_BOARD: Layer & { readonly kind: 'board' } = {
  kind: 'board',
  board: 'MDF',
  thickness: 18,
  grain: ALONG,
  plies: null,
  moisture: null,
}

/** Face and backer alike on MDF, to be pressed in the bag with a rigid glue. */
export function usualPressing(species: string, leaf: number, cut: Cut = 'flat'): Pressing {
  // a leaf thinner than any that can be pressed is taken for the thinnest
  const face = leafLayer(species, Math.max(leaf, PRESS_RANGES.thickness.least), ALONG, cut)
  return {
    layers: [face, USUAL_BOARD, face],
    wantedThickness: null,
    gluedBefore: [],
    method: 'bag',
    glue: 'plastic resin, powder',
    edges: { top: BARE, right: BARE, bottom: BARE, left: BARE },
    curve: null,
  }
}

/** A small heated shop in a temperate place. */
export const USUAL_ROOM: PressRoom = {
  gluing: { temperature: 21, humidity: 0.45 },
  driest: { temperature: 21, humidity: 0.3 },
  dampest: { temperature: 21, humidity: 0.6 },
  coreTemperature: 21,
  dataSheets: {},
  suction: { by: 'gauge', inHg: 24 },
  platen: { width: 1220, length: 2440 },
  bag: { width: 1370, length: 2600 },
  hands: 1,
  clamps: { 'light bar': 0, 'F-clamp': 0, 'parallel-jaw': 0, pipe: 0, 'heavy C-clamp': 0 },
}
