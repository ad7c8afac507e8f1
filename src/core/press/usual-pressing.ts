import { NO_DATA_SHEET, type Grain, type Layer, type Pressing, type PressRoom } from './pressing'

/** Grain along the panel's length, and across it, as a layer says it. */
export const ALONG = 90
export const ACROSS = 0

/** A leaf with its grain along the panel. */
export const leafLayer = (species: string, thickness: number, grain: Grain = ALONG): Layer => ({
  kind: 'veneer',
  species,
  cut: 'flat',
  thickness,
  grain,
  moisture: null,
})

/** Face and backer alike on MDF, to be pressed in the bag with a rigid glue. */
export function usualPressing(species: string, leaf: number): Pressing {
  return {
    layers: [
      leafLayer(species, leaf),
      { kind: 'board', board: 'MDF', thickness: 18, grain: ALONG, plies: null, moisture: null },
      leafLayer(species, leaf),
    ],
    wantedThickness: null,
    gluedBefore: [],
    method: 'bag',
    glue: 'plastic resin, powder',
    dataSheet: NO_DATA_SHEET,
    edges: { top: { edge: 'bare' }, right: { edge: 'bare' }, bottom: { edge: 'bare' }, left: { edge: 'bare' } },
    curve: null,
  }
}

/** A small heated shop in a temperate place. */
export const USUAL_ROOM: PressRoom = {
  gluing: { temperature: 21, humidity: 0.45 },
  driest: { temperature: 21, humidity: 0.3 },
  dampest: { temperature: 21, humidity: 0.6 },
  coreTemperature: 21,
  suction: { by: 'gauge', inHg: 24 },
  platen: { width: 1220, length: 2440 },
  bag: { width: 1370, length: 2600 },
  clamps: { 'light bar': 0, 'F-clamp': 0, 'parallel-jaw': 0, pipe: 0, 'heavy C-clamp': 0 },
}
