/** What a number in a job may be. Ends included, unless `above` says that the least is not. */
export interface Limits {
  readonly least: number
  readonly most: number
  readonly above?: boolean
  readonly whole?: boolean
  readonly unit: 'mm' | 'degrees' | 'none'
}

/** No leaf, panel or coordinate is larger than this. */
export const LARGEST = 20_000

/** All flitches of a job together. */
export const MOST_LEAVES = 2_000
export const MOST_FLITCHES = 200
export const MOST_PARTS = 500
export const MOST_POINTS = 5_000
export const MOST_DEFECTS = 500
/** Pieces cut from one leaf. */
export const MOST_CUTS = 200
/** Pieces of one face. */
export const MOST_PIECES = 300
/** Widths typed for one planked face. */
export const MOST_PLANKS = 63
/** Positions, chosen leaves or nudges of one part. */
export const MOST_ENTRIES = 2_000
export const LONGEST_NAME = 200
export const LONGEST_NOTE = 5_000

const mm = (least: number, most: number): Limits => ({ least, most, unit: 'mm' })
const size = (most: number): Limits => ({ least: 0, most, above: true, unit: 'mm' })
const whole = (least: number, most: number): Limits => ({ least, most, whole: true, unit: 'none' })

/** One entry for each number of a job, by the name it has there. */
export const LIMITS = {
  width: size(LARGEST),
  length: size(LARGEST),
  coordinate: mm(-LARGEST, LARGEST),
  core: mm(-1_000, 1_000),
  overhang: mm(0, 1_000),
  sides: whole(3, 64),
  rise: size(LARGEST),
  borderWidth: mm(3, 1_000),
  borderPiece: mm(10, LARGEST),
  stringWidth: mm(0.3, 30),
  bulge: { least: -20, most: 20, unit: 'none' },
  allowance: mm(0, 100),
  laterAllowance: mm(0, 100),
  thickness: size(20),
  lossBetween: mm(0, 20),
  sideMargin: mm(0, 1_000),
  endMargin: mm(0, 5_000),
  radius: size(LARGEST),
  clearance: mm(0, 500),
  slope: { least: 0.001, most: 4, unit: 'none' },
  gain: mm(0, LARGEST),
  truing: mm(0, 50),
  spacing: size(1_000),
  sliver: mm(0, 1_000),
  leastOverhang: mm(0, 1_000),
  offCentre: mm(0, 100),
  longestSeam: size(LARGEST),
  betweenPieces: mm(0, 20),
  gap: mm(0, 200),
  cutFull: { least: 0, most: 2, unit: 'degrees' },
  measured: size(LARGEST),
  firstSeam: { least: -360, most: 360, unit: 'degrees' },
  windowTurn: { least: -360, most: 360, unit: 'degrees' },
  angle: { least: 1, most: 89, unit: 'degrees' },
  rows: whole(2, 8),
  sheetOf: whole(1, 6),
  // steeper a strip would run along its column, flatter it would lie across it
  boneAngle: { least: 10, most: 80, unit: 'degrees' },
  boneColumns: whole(2, 12),
  stripWidth: mm(10, 1_000),
  grid: whole(2, 16),
  blockStrips: whole(1, 8),
  plankWidth: mm(5, LARGEST),
  seed: whole(1, 9_999),
  unevenness: { least: 0, most: 80, unit: 'none' },
  count: whole(1, 500),
  pixels: whole(1, 32_767),
  mmPerPx: { least: 0.01, most: 20, unit: 'none' },
  leafNumber: whole(1, 99_999),
  leaves: whole(1, MOST_LEAVES),
  missing: whole(1, MOST_LEAVES),
} as const satisfies Record<string, Limits>
