import type { Side } from '../geometry/box'
import type { Cut } from '../leaves/flitch'

/**
 * What has been decided about gluing up one part, and nothing that can be worked out from it.
 * Temperatures are °C, angles degrees from +x towards +y of the panel: 90 lies along the length, 0 across.
 */
export interface Pressing {
  /** From the show face to the back. */
  readonly layers: readonly Layer[]
  /** The thickness that the finished panel should have; null when whatever comes will do. */
  readonly wantedThickness: number | null
  /** How the layers lie glued before: places of glue lines (0 lies behind the first layer) made in an earlier pressing. */
  readonly gluedBefore: readonly number[]
  readonly method: Method
  readonly glue: GlueName
  readonly edges: Readonly<Record<Side, EdgeWork>>
  readonly curve: Curve | null
}

/** What the shop has to press with and the air it works and lives in: one for all parts of a job. */
export interface PressRoom {
  readonly gluing: Climate
  readonly driest: Climate
  readonly dampest: Climate
  /** Of the cores as they go to be glued, °C; a cold floor makes it lower than the air's. */
  readonly coreTemperature: number
  /** What has been read on each glue's own data sheet, for all parts; it overrides the general figures. */
  readonly dataSheets: DataSheets
  readonly suction: Suction
  /** The board that carries the work in the bag. */
  readonly platen: { readonly width: number; readonly length: number }
  /** The bag laid flat, inside its seams. */
  readonly bag: { readonly width: number; readonly length: number }
  /** People who spread glue and close the press together. */
  readonly hands: number
  /** How many of each are at hand. */
  readonly clamps: Readonly<Record<ClampName, number>>
}

export interface Climate {
  /** °C */
  readonly temperature: number
  /** Relative humidity from 0 to 1. */
  readonly humidity: number
}

/** In the bag; between cauls and clamps; or leaf by leaf with the veneer hammer. */
export type Method = 'bag' | 'cauls' | 'leaf by leaf'

/** The vacuum as read on a gauge beside the bag, or as the pump is said to reach at sea level; inches of mercury. */
export type Suction =
  | { readonly by: 'gauge'; readonly inHg: number }
  | { readonly by: 'pump'; readonly inHg: number; readonly altitude: number }

export type GlueName =
  'PVA' | 'plastic resin, powder' | 'plastic resin, liquid' | 'epoxy' | 'polyurethane' | 'hide' | 'contact cement'

/** null: not on the sheet, or not looked up. */
export interface DataSheet {
  /** g/m² on one glue line, both faces together. */
  readonly spread: number | null
  /** Minutes from the first stroke of the roller to pressure. */
  readonly openMinutes: number | null
  /** Hours under pressure at the temperature of the shop. */
  readonly pressHours: number | null
  /** °C */
  readonly leastTemperature: number | null
  readonly cureDays: number | null
  /** g/ml as mixed. */
  readonly density: number | null
  /** Parts by weight: resin or powder to hardener or water. */
  readonly ratio: readonly [number, number] | null
  /** MPa */
  readonly pressure: number | null
}

/** A glue without an entry: nothing has been read on its sheet. */
export type DataSheets = Readonly<Partial<Record<GlueName, DataSheet>>>

export const NO_DATA_SHEET: DataSheet = {
  spread: null,
  openMinutes: null,
  pressHours: null,
  leastTemperature: null,
  cureDays: null,
  density: null,
  ratio: null,
  pressure: null,
}

/** The direction of a sheet's grain, or that it has no single one: sunburst, parquet, burl, crotch. */
export type Grain = number | 'no single grain'

export type BoardName = 'MDF' | 'particleboard' | 'birch plywood' | 'light plywood'

export type Layer =
  | {
      readonly kind: 'veneer' | 'solid'
      readonly species: string
      readonly cut: Cut
      readonly thickness: number
      readonly grain: Grain
      /** Moisture when glued, %; null: that of the shop's air. */
      readonly moisture: number | null
    }
  | {
      readonly kind: 'board'
      readonly board: BoardName
      readonly thickness: number
      /** Of the outer ply; MDF and particleboard have none and don't mind what stands here. */
      readonly grain: number
      /** Reckoned ply by ply; null: as one board. */
      readonly plies: number | null
      readonly moisture: number | null
    }
  | { readonly kind: 'glue line'; readonly thickness: number }

/** What is done to one edge. */
export type EdgeWork =
  | { readonly edge: 'bare' }
  /** A lipping glued to the core and flushed before the face goes over it. */
  | { readonly edge: 'lipped before'; readonly thickness: number }
  /** A lipping glued to the faced panel. */
  | { readonly edge: 'lipped after'; readonly thickness: number }
  /** Veneer on the edge, then the face over its upper edge; or the other way round. */
  | { readonly edge: 'edge veneer first'; readonly thickness: number }
  | { readonly edge: 'edge veneer last'; readonly thickness: number }

/** A panel bent about the grain's direction, measured on its show face. */
export type Curve =
  | { readonly by: 'radius'; readonly radius: number; readonly chord: number; readonly show: 'hollow' | 'round' }
  | { readonly by: 'rise'; readonly rise: number; readonly chord: number; readonly show: 'hollow' | 'round' }

export type ClampName = 'light bar' | 'F-clamp' | 'parallel-jaw' | 'pipe' | 'heavy C-clamp'
