import type { Point } from '../geometry/point'

/**
 * What has been decided about a face. One member of the union for each pattern; the file of the pattern turns
 * it into cells.
 */
export type Recipe =
  | StripRecipe
  | FourWayRecipe
  | EndMatchRecipe
  | RadialRecipe
  | DiamondRecipe
  | BoxRecipe
  | HerringboneRecipe
  | ParquetRecipe
  | PlanksRecipe

/** A number of leaves, or the fewest that will do. */
export type LeafCount = number | 'fewest'

/** The edge on which the first pair is opened like a book, seen from the numbered side. */
export type Spine = 'left' | 'right'

/** By spine: so that the first pair shows the two faces of one knife cut. */
export type Laying = 'by spine' | 'left to right' | 'right to left'

/**
 * Book: every other leaf turned over. Slip: all as they lie. Reverse slip (also called swing): every other leaf spun.
 * Slip-centre-book: two slipped halves, booked at the centre.
 */
export type StripMatch = 'book' | 'slip' | 'reverse slip' | 'slip-centre-book'

/** Leaves side by side over the full length of the face. */
export interface StripRecipe {
  readonly pattern: 'strips'
  readonly match: StripMatch
  readonly arrangement: 'running' | 'balance' | 'centre balance'
  readonly count: LeafCount
  readonly firstLeaf: number
  /** Balance family: equal widths of the taped sheet (before) or of the finished face (after). */
  readonly equal: 'before trimming' | 'after trimming'
  /** Balance: whether a seam, a leaf or whichever comes lies on the centre. */
  readonly centreOn: 'seam' | 'leaf' | 'either'
  /** Running: the edge at which laying starts. */
  readonly startAt: 'left' | 'right'
  readonly spine: Spine
  readonly laying: Laying
  /** Slip and reverse slip: which side of all the leaves is up. */
  readonly sideUp: 'numbered' | 'other'
}

/** Leaves as wide as they go, from one edge on. */
export const isRunning = (recipe: Recipe): boolean => recipe.pattern === 'strips' && recipe.arrangement === 'running'

/** Rows of leaves booked side to side and end to end about the centre of the face; four, or two rows of more. */
export interface FourWayRecipe {
  readonly pattern: 'four-way'
  readonly count: LeafCount
  readonly firstLeaf: number
  readonly equal: 'before trimming' | 'after trimming'
  readonly spine: Spine
  readonly laying: Laying
  /** Where the numbered ends lie: at the cross seam, or at the outer ends. */
  readonly numberedEnds: 'outside' | 'inside'
}

/** Wedges round the centre of the face, grain on their bisectors. */
export interface RadialRecipe {
  readonly pattern: 'radial'
  readonly match: 'book' | 'slip'
  readonly count: LeafCount
  readonly firstLeaf: number
  /** Direction of the first seam, degrees from +x towards +y (clockwise as seen). */
  readonly firstSeam: number
  /** Where the seams meet, from the middle of the panel. */
  readonly centre: Point<'panel'>
  readonly spine: Spine
  readonly laying: 'by spine' | 'clockwise' | 'anticlockwise'
  /** 1 2 3 4 … round to the first again; or 1 2 4 6 … 5 3, from the first leaf both ways. */
  readonly order: 'in a circle' | 'both ways'
  readonly numberedEnds: 'inside' | 'outside'
  /** By how much each wedge is cut wider than its share of the round, degrees. */
  readonly cutFull: number
  /** Of what a wedge is cut: a leaf, or a sheet of two that were booked and joined before, the joint on its middle line. */
  readonly eachFrom: 'one leaf' | 'booked pair'
}

/** Rows of leaves booked side to side, each row end over end against the next. */
export interface EndMatchRecipe {
  readonly pattern: 'end match'
  /** For two rows of four: 1 3 5 7 / 2 4 6 8, or 1 4 5 8 / 2 3 6 7 (both architectural), or 1 2 3 4 / 8 7 6 5. */
  readonly order: 'column by column' | 'down and up' | 'panel'
  readonly rows: number
  readonly count: LeafCount
  readonly firstLeaf: number
  readonly equal: 'before trimming' | 'after trimming'
  readonly spine: Spine
  readonly laying: Laying
  /** Where the numbered ends of the top row lie: at the top edge, or at its seam with the next row. */
  readonly numberedEnds: 'outside' | 'inside'
}

/** Four quadrants of slanted grain, mirrored in both centre lines. */
export interface DiamondRecipe {
  readonly pattern: 'diamond'
  /** Closing round the centre, or, in a reverse diamond, running to it. */
  readonly runs: 'round' | 'to the centre'
  /** Between grain and width, degrees; so that the diamonds touch the middles of the sides, unless a number is given. */
  readonly angle: number | 'mid-sides'
  readonly count: LeafCount
  readonly firstLeaf: number
  /** Which side of the first leaf is up; neighbours lie the other side up. */
  readonly sideUp: 'numbered' | 'other'
  /** Inside: at the centre, or where grain runs round it, at the upright seam. */
  readonly numberedEnds: 'outside' | 'inside'
  /** Of how many leaves, slid beside each other and joined before, the sheet of each piece is; 1: a piece is cut of a leaf. */
  readonly sheetOf: number
}

/** Four mitred pieces round the panel. */
export interface BoxRecipe {
  readonly pattern: 'box'
  /** Along in a box, across in a reverse box. */
  readonly grain: 'along the edges' | 'across the edges'
  readonly count: LeafCount
  readonly firstLeaf: number
  /** Which side of the first leaf is up; neighbours lie the other side up. */
  readonly sideUp: 'numbered' | 'other'
  /** Across the edges: at the panel's edges, or inside. */
  readonly numberedEnds: 'outside' | 'inside'
  /** Of how many leaves, slid beside each other and joined before, the sheet of each piece is; 1: a piece is cut of a leaf. */
  readonly sheetOf: number
}

/** Columns of slanted strips, mirrored at every column seam. */
export interface HerringboneRecipe {
  readonly pattern: 'herringbone'
  /** Between grain and width, degrees. */
  readonly angle: number
  /** Across the grain. */
  readonly stripWidth: number
  readonly columns: number
  /** Where the strips of the pair of columns at the centre point. */
  readonly points: 'up' | 'down'
  /** Of leaves, a multiple of the columns: each gives several strips, one behind the other. */
  readonly count: LeafCount
  readonly firstLeaf: number
  /** Which side of the first leaf is up; neighbouring columns lie the other side up. */
  readonly sideUp: 'numbered' | 'other'
  /** Inside: at the seam of the pair of columns at the centre. */
  readonly numberedEnds: 'outside' | 'inside'
}

/** A grid of blocks, neighbours turned by a quarter; in a basket each block is made of several strips. */
export interface ParquetRecipe {
  readonly pattern: 'parquet'
  readonly columns: number
  readonly rows: number
  /** Strips in a block: one in a plain parquet. */
  readonly strips: number
  /** How the grain of the upper left block lies. */
  readonly firstBlock: 'upright' | 'lying'
  /** Of leaves: each gives several pieces, one behind the other. */
  readonly count: LeafCount
  readonly firstLeaf: number
  readonly sideUp: 'numbered' | 'other'
}

/** Strips of unequal width side by side; no match is wanted. */
export interface PlanksRecipe {
  readonly pattern: 'planks'
  /** Random: leaves side by side, unlike on purpose. Planked: as boards, whose edges may be seen. */
  readonly look: 'random' | 'planked'
  /** From a seed, or finished widths from the left edge; the last strip is what is left of the panel. */
  readonly widths: 'seeded' | readonly number[]
  readonly seed: number
  /** Seeded: by how much a width may differ from the mean, percent. */
  readonly unevenness: number
  readonly order: 'as they come' | 'shuffled'
  /** All numbered ends at the top, or some leaves spun. */
  readonly ends: 'alike' | 'mixed'
  readonly count: LeafCount
  readonly firstLeaf: number
  readonly sideUp: 'numbered' | 'other'
}
