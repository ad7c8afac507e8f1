import * as v from 'valibot'
import { point } from '../geometry/point'
import { DEFECT_KINDS } from './flitch-shape'
import { MEASURED_AT } from './job'
import { MOST_PLANKS, MOST_POINTS } from './limits'
import { pressingShape } from './press-shape'
import { aBox, aName, anId, aNumber, aPoint, aWholeNumber, byName, notAList, oneOf, someEdges } from './shape-pieces'

const leafCount = 'a whole number or “fewest”'

const anyRecipe = {
  count: v.optional(v.union([v.pipe(v.number(), v.integer(leafCount)), v.literal('fewest')], leafCount)),
  firstLeaf: v.optional(aWholeNumber),
}

const spine = v.optional(oneOf(['left', 'right']))

const match = v.optional(oneOf(['book', 'slip']))
const equal = v.optional(oneOf(['before trimming', 'after trimming']))
const numberedEnds = v.optional(oneOf(['outside', 'inside']))
const acrossLaying = v.optional(oneOf(['by spine', 'left to right', 'right to left']))

const stripShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('strips'),
  spine,
  match: v.optional(oneOf(['book', 'slip', 'reverse slip', 'slip-centre-book'])),
  arrangement: v.optional(oneOf(['running', 'balance', 'centre balance'])),
  equal,
  centreOn: v.optional(oneOf(['seam', 'leaf', 'either'])),
  startAt: v.optional(oneOf(['left', 'right'])),
  laying: acrossLaying,
  sideUp: v.optional(oneOf(['numbered', 'other'])),
})

const fourWayShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('four-way'),
  spine,
  equal,
  laying: acrossLaying,
  numberedEnds,
})

const endMatchShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('end match'),
  order: v.optional(oneOf(['column by column', 'down and up', 'panel'])),
  rows: v.optional(aWholeNumber),
  spine,
  equal,
  laying: acrossLaying,
  numberedEnds,
})

const sideUp = v.optional(oneOf(['numbered', 'other']))

const diamondShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('diamond'),
  runs: v.optional(oneOf(['round', 'to the centre'])),
  angle: v.optional(v.union([v.number(), v.literal('mid-sides')], 'a number or “mid-sides”')),
  sideUp,
  numberedEnds,
  sheetOf: v.optional(aWholeNumber),
})

const boxShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('box'),
  grain: v.optional(oneOf(['along the edges', 'across the edges'])),
  sideUp,
  numberedEnds,
  sheetOf: v.optional(aWholeNumber),
})

const radialShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('radial'),
  spine,
  match,
  firstSeam: v.optional(aNumber),
  centre: v.optional(aPoint<'panel'>()),
  laying: v.optional(oneOf(['by spine', 'clockwise', 'anticlockwise'])),
  order: v.optional(oneOf(['in a circle', 'both ways'])),
  numberedEnds,
  cutFull: v.optional(aNumber),
  eachFrom: v.optional(oneOf(['one leaf', 'booked pair'])),
})

const herringboneShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('herringbone'),
  angle: v.optional(aNumber),
  stripWidth: v.optional(aNumber),
  columns: v.optional(aWholeNumber),
  points: v.optional(oneOf(['up', 'down'])),
  sideUp,
  numberedEnds,
})

const parquetShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('parquet'),
  columns: v.optional(aWholeNumber),
  rows: v.optional(aWholeNumber),
  strips: v.optional(aWholeNumber),
  firstBlock: v.optional(oneOf(['upright', 'lying'])),
  sideUp,
})

const planksShape = v.strictObject({
  ...anyRecipe,
  pattern: v.literal('planks'),
  look: v.optional(oneOf(['random', 'planked'])),
  widths: v.optional(
    v.union(
      [
        v.literal('seeded'),
        v.pipe(v.array(v.number()), v.maxLength(MOST_PLANKS, `a list of at most ${MOST_PLANKS} widths`)),
      ],
      `“seeded” or a list of at most ${MOST_PLANKS} widths`,
    ),
  ),
  seed: v.optional(aWholeNumber),
  unevenness: v.optional(aNumber),
  order: v.optional(oneOf(['as they come', 'shuffled'])),
  ends: v.optional(oneOf(['alike', 'mixed'])),
  sideUp,
})

const recipeShape = v.variant(
  'pattern',
  [
    stripShape,
    fourWayShape,
    endMatchShape,
    radialShape,
    diamondShape,
    boxShape,
    herringboneShape,
    parquetShape,
    planksShape,
  ],
  'one of “strips”, “four-way”, “end match”, “radial”, “diamond”, “box”, “herringbone”, “parquet”, “planks”',
)

export type RecipeInFile = v.InferOutput<typeof recipeShape>

const cutShape = v.strictObject({
  through: aPoint<'leaf'>(),
  runs: oneOf(['right', 'left']),
  slope: aNumber,
  gain: aNumber,
  loss: aNumber,
})

const anyMakeUp = {
  leaf: v.optional(v.nullable(aWholeNumber), null),
  spacing: v.optional(v.nullable(aNumber), null),
}

const makeUpShape = v.variant(
  'how',
  [
    v.strictObject({ how: v.literal('longer'), ...anyMakeUp, cut: cutShape }),
    v.strictObject({
      how: v.literal('wider'),
      ...anyMakeUp,
      side: oneOf(['left', 'right']),
      kept: aBox<'leaf'>(),
      from: v.optional(v.nullable(aWholeNumber), null),
      offcut: aBox<'leaf'>(),
      cut: v.optional(v.nullable(cutShape), null),
      strip: aBox<'leaf'>(),
      loss: aNumber,
    }),
  ],
  'one of “longer”, “wider”',
)

const aCorner = v.union(
  [
    v.pipe(
      v.strictTuple([aNumber, aNumber]),
      v.transform(([x, y]) => ({ at: point<'panel'>(x, y), bulge: 0 })),
    ),
    v.pipe(
      v.strictTuple([aNumber, aNumber, aNumber]),
      v.transform(([x, y, bulge]) => ({ at: point<'panel'>(x, y), bulge })),
    ),
  ],
  'a corner [x, y] or [x, y, bulge]',
)

const outlineShape = v.variant(
  'shape',
  [
    v.strictObject({ shape: v.literal('rectangle') }),
    v.strictObject({ shape: v.literal('circle') }),
    v.strictObject({ shape: v.literal('ellipse') }),
    v.strictObject({ shape: v.literal('polygon'), sides: aWholeNumber }),
    v.strictObject({ shape: v.literal('arch top'), rise: aNumber }),
    v.strictObject({
      shape: v.literal('drawn'),
      corners: v.pipe(
        v.array(aCorner, 'a list of corners'),
        v.minLength(2, 'a list of at least 2 corners'),
        v.maxLength(MOST_POINTS, `a list of at most ${MOST_POINTS} corners`),
      ),
    }),
  ],
  'one of “rectangle”, “circle”, “ellipse”, “polygon”, “arch top”, “drawn”',
)

const asCutShape = v.pipe(notAList, v.strictObject(v.entriesFromList(MEASURED_AT, v.optional(aNumber))))

const borderShape = v.strictObject({
  width: aNumber,
  grain: v.optional(oneOf(['across', 'along'])),
  corners: v.optional(oneOf(['mitred', 'sides through', 'ends through'])),
  pieceLength: v.optional(aNumber),
  flitch: v.optional(anId),
  count: anyRecipe.count,
  firstLeaf: v.optional(
    v.union([v.pipe(v.number(), v.integer()), v.literal('after the field')], 'a leaf number or “after the field”'),
  ),
  sideUp: v.optional(oneOf(['numbered', 'other'])),
  string: v.optional(v.nullable(v.strictObject({ width: aNumber, species: v.optional(aName) }))),
})

export type BorderInFile = v.InferOutput<typeof borderShape>

/** A part as it stands in a file; what may be left out is filled in by `fillJob`. */
export const partShape = v.strictObject({
  id: v.optional(anId),
  name: v.optional(aName),
  width: aNumber,
  length: aNumber,
  outline: v.optional(outlineShape),
  showClass: v.optional(oneOf(['show', 'now and then', 'hidden'])),
  core: v.optional(someEdges),
  overhang: v.optional(someEdges),
  jointing: v.optional(oneOf(['packet', 'pair', 'overlap'])),
  allowance: v.optional(aNumber),
  laterAllowance: v.optional(aNumber),
  lying: v.optional(v.boolean('true or false')),
  finished: v.optional(v.boolean('true or false')),
  flitch: v.optional(anId),
  recipe: v.optional(recipeShape),
  windowTurn: v.optional(aNumber),
  positions: v.optional(byName(aPoint<'leaf'>()), {}),
  chosen: v.optional(byName(aWholeNumber), {}),
  nudges: v.optional(byName(v.strictObject({ leaf: aWholeNumber, by: aPoint<'leaf'>() })), {}),
  madeUp: v.optional(byName(makeUpShape), {}),
  asCut: v.optional(asCutShape, {}),
  border: v.optional(v.nullable(borderShape), null),
  pressing: v.optional(pressingShape),
})

export type PartInFile = v.InferOutput<typeof partShape>

/** Two parts that are read as one. */
export const pairShape = v.strictObject({
  first: anId,
  second: anId,
  meet: v.optional(oneOf(['booked', 'running through', 'same leaves'])),
  gap: v.optional(aNumber),
  pressed: v.optional(oneOf(['apart', 'one board'])),
  overhang: v.optional(aNumber),
})

export type PairInFile = v.InferOutput<typeof pairShape>

const kinds = v.optional(v.pipe(v.array(oneOf(DEFECT_KINDS), 'a list'), v.maxLength(20, 'a list of at most 20')))
const clearance = v.optional(aNumber)

/** What the shop does otherwise than usual. */
export const shopShape = v.pipe(
  notAList,
  v.strictObject({
    clearance: v.optional(
      v.pipe(
        notAList,
        v.strictObject({
          knot: clearance,
          hole: clearance,
          split: clearance,
          stain: clearance,
          sapwood: clearance,
          tear: clearance,
        }),
      ),
    ),
    tolerates: v.optional(v.pipe(notAList, v.strictObject({ show: kinds, 'now and then': kinds, hidden: kinds }))),
    splitTape: v.optional(oneOf(['show side', 'glue side'])),
    sliver: v.optional(aNumber),
    leastOverhang: v.optional(aNumber),
    offCentre: v.optional(aNumber),
    longestSeam: v.optional(aNumber),
    betweenPieces: v.optional(aNumber),
  }),
)

export type ShopInFile = v.InferOutput<typeof shopShape>
