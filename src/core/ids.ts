/**
 * Names by which decisions refer to things. They are given out at the edge of the program (the core has
 * neither clock nor chance) and never re-used within a job.
 */
declare const brand: unique symbol
type Id<B extends string> = string & { readonly [brand]?: B }

export type FlitchId = Id<'flitch'>
export type PartId = Id<'part'>
export type DefectId = Id<'defect'>

/** A cell's place in its pattern, such as `L1`, `C` or `W7`; it survives a wider face. */
export type CellId = Id<'cell'>

/** Cells that share one window position. */
export type WindowGroup = Id<'window group'>

/** One leaf of the job: leaf numbers are unique within a flitch only. */
export interface LeafRef {
  readonly flitch: FlitchId
  readonly leaf: number
}
