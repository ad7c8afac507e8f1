import type { DefectKind } from './leaves/leaf'

/** How much a face is looked at. */
export type ShowClass = 'show' | 'now and then' | 'hidden'

/** What this workshop can and will do: the same for all parts of a job. */
export interface Shop {
  /** Sound wood kept round each kind of defect. */
  readonly clearance: Readonly<Record<DefectKind, number>>
  /** What may stay in a face, by how much it is looked at. */
  readonly tolerates: Readonly<Record<ShowClass, readonly DefectKind[]>>
  /** Where splits are taped: gummed tape on the show side stays on through the press, tape on the glue side comes off before. */
  readonly splitTape: 'show side' | 'glue side'
  /** A finished strip narrower than this is a sliver. */
  readonly sliver: number
  /** The least a sheet should stand over the core. */
  readonly leastOverhang: number
  /** How far the centre seam may be off the centre. */
  readonly offCentre: number
  /** The longest edge that this shop trues in one go: its jig, its plane’s board, its rule. */
  readonly longestSeam: number
  /** Kept between two rough pieces on a leaf, for knife or saw; what jointing takes is in the pieces. */
  readonly betweenPieces: number
}

/** Common practice in small furniture shops; every figure can be changed in the job. */
export const USUAL_SHOP: Shop = {
  clearance: { knot: 3, hole: 5, split: 3, stain: 2, sapwood: 0, tear: 3 },
  tolerates: { show: [], 'now and then': ['stain', 'sapwood'], hidden: ['stain', 'sapwood', 'knot'] },
  splitTape: 'show side',
  sliver: 30,
  leastOverhang: 5,
  offCentre: 0.5,
  longestSeam: 2500,
  betweenPieces: 2,
}
