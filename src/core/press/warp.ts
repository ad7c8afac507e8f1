import { bendLaminate, NO_STRAIN, type Bend, type PlaneStrain, type Ply } from './laminate'
import { bowOver } from './laminate-strip'
import { woodMoisture } from './moisture'
import { bendOf, pliesOf, type MoistureChange } from './plies'
import type { Climate, Layer, PressRoom } from './pressing'

/** How far a panel bows in one season, mm, as an upper bound; positive cups are hollow on the show face. */
export interface Warp {
  /** Over the width, against a straightedge laid across. */
  readonly acrossWidth: number
  /** Over the length. */
  readonly alongLength: number
  /** One corner off the plane of the other three. */
  readonly twist: number
}

/** What a panel does in one season, and the layer that does most of it. */
export interface SeasonWarp {
  readonly warp: Warp
  /** Moisture that wood comes to, %. */
  readonly moisture: number
  /** Place of the layer that pulls most; null where nothing bends. */
  readonly driver: number | null
}

/** Less than this is nothing: it is far below what any panel can be measured to. */
const NOTHING = 0.005

/** The bows of a shape over a panel of this width (across, x) and length (y). */
export function warpOf({ curvature }: Bend, width: number, length: number): Warp {
  const clean = (bow: number): number => (Math.abs(bow) < NOTHING ? 0 : bow)
  return {
    acrossWidth: clean(bowOver(curvature.x, width)),
    alongLength: clean(bowOver(curvature.y, length)),
    twist: clean((curvature.xy * width * length) / 2),
  }
}

/** How much the moisture of each layer changes from gluing to a climate. */
export function moistureChange(layers: readonly Layer[], gluing: Climate, later: Climate): MoistureChange {
  const shop = woodMoisture(gluing)
  const then = woodMoisture(later)
  return layers.map((layer) => (layer.kind === 'glue line' ? 0 : then - (layer.moisture ?? shop)))
}

/** The panel in one climate. */
export function warpIn(layers: readonly Layer[], size: PanelSize, gluing: Climate, later: Climate): SeasonWarp {
  const change = moistureChange(layers, gluing, later)
  const warp = warpOf(bendOf(layers, change), size.width, size.length)
  return { warp, moisture: woodMoisture(later), driver: driverOf(layers, change, size, warp) }
}

export interface PanelSize {
  readonly width: number
  readonly length: number
}

/** Both ends of the year. */
export function warpOverYear(
  layers: readonly Layer[],
  size: PanelSize,
  room: Pick<PressRoom, 'gluing' | 'driest' | 'dampest'>,
): { driest: SeasonWarp; dampest: SeasonWarp } {
  return {
    driest: warpIn(layers, size, room.gluing, room.driest),
    dampest: warpIn(layers, size, room.gluing, room.dampest),
  }
}

/** The largest bow of either season and any direction, without its sign. */
export const worstBow = (warps: readonly Warp[]): number =>
  Math.max(0, ...warps.flatMap((warp) => Object.values(warp) as number[]).map(Math.abs))

/**
 * The layer whose moving pulls most in the direction that bends most. A movement shared by all bends nothing, so each
 * is measured against the thickest layer's: the shares then add up to the whole.
 */
function driverOf(layers: readonly Layer[], change: MoistureChange, size: PanelSize, whole: Warp): number | null {
  const worst = (Object.keys(whole) as (keyof Warp)[]).reduce((a, b) =>
    Math.abs(whole[b]) > Math.abs(whole[a]) ? b : a,
  )
  if (whole[worst] === 0) return null
  const shares = bowShares(layers, change, size).map((share) => share[worst] * Math.sign(whole[worst]))
  return shares.reduce((best, share, i) => (share > shares[best]! ? i : best), 0)
}

/** What each layer adds to the bow by moving otherwise than the thickest one; together they are the whole bow. */
export function bowShares(layers: readonly Layer[], change: MoistureChange, size: PanelSize): Warp[] {
  const plies = pliesOf(layers, change)
  const common = bendLaminate(plies[thickestOf(layers)]!).stretch
  return plies.map((_, i) =>
    bowsOf(bendLaminate(plies.flatMap((own, k) => own.map((ply) => moving(ply, k === i, common)))), size),
  )
}

/** Place of the thickest layer, the first of equals: what the others pull at. */
export const thickestOf = (layers: readonly Layer[]): number =>
  layers.reduce((best, layer, i) => (layer.thickness > layers[best]!.thickness ? i : best), 0)

const moving = (ply: Ply, moves: boolean, common: PlaneStrain): Ply => ({
  ...ply,
  strain: moves ? { x: ply.strain.x - common.x, y: ply.strain.y - common.y, xy: ply.strain.xy - common.xy } : NO_STRAIN,
})

const bowsOf = ({ curvature }: Bend, { width, length }: PanelSize): Warp => ({
  acrossWidth: bowOver(curvature.x, width),
  alongLength: bowOver(curvature.y, length),
  twist: (curvature.xy * width * length) / 2,
})

/** The same panel with nothing behind its core, and with its front layers repeated behind it. */
export function facedOnce(layers: readonly Layer[]): readonly Layer[] {
  return layers.slice(0, coreEnd(layers) + 1)
}

export function facedTwice(layers: readonly Layer[]): readonly Layer[] {
  const front = layers.slice(0, coreStart(layers))
  return [...facedOnce(layers), ...[...front].reverse()]
}

const isFacing = (layer: Layer): boolean => layer.kind === 'veneer' || layer.kind === 'glue line'

const coreStart = (layers: readonly Layer[]): number => {
  const first = layers.findIndex((layer) => !isFacing(layer))
  return first === -1 ? Math.max(0, layers.length - 1) : first
}

const coreEnd = (layers: readonly Layer[]): number => {
  const last = layers.findLastIndex((layer) => !isFacing(layer))
  return last === -1 ? layers.length - 1 : last
}

/** How much the width and the length change from gluing to a climate, mm: the panel's, and the face's if it were free. */
export function panelMovement(
  layers: readonly Layer[],
  size: PanelSize,
  gluing: Climate,
  later: Climate,
): PanelMovement {
  const change = moistureChange(layers, gluing, later)
  const { stretch } = bendOf(layers, change)
  const free = bendOf(layers.slice(0, 1), change.slice(0, 1)).stretch
  return {
    panel: { width: stretch.x * size.width, length: stretch.y * size.length },
    freeFace: { width: free.x * size.width, length: free.y * size.length },
  }
}

export interface PanelMovement {
  readonly panel: PanelSize
  readonly freeFace: PanelSize
}
