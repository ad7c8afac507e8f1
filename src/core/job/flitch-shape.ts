import * as v from 'valibot'
import { MOST_CUTS, MOST_DEFECTS, MOST_LEAVES } from './limits'
import { aName, aNote, anId, aNumber, aPoint, aRing, aWholeNumber, oneOf } from './shape-pieces'

export const DEFECT_KINDS = ['knot', 'hole', 'split', 'stain', 'sapwood', 'tear'] as const

export const FLITCH_CUTS = ['flat', 'quarter', 'rift', 'half round', 'rotary', 'sawn'] as const

const anyDefect = {
  id: v.optional(anId),
  kind: oneOf(DEFECT_KINDS),
  note: v.optional(aNote, ''),
  through: v.optional(oneOf(['square', 'slanted'])),
}

const defectShape = v.variant(
  'shape',
  [
    v.strictObject({ ...anyDefect, shape: v.literal('spot'), centre: aPoint<'leaf'>(), radius: aNumber }),
    v.strictObject({ ...anyDefect, shape: v.literal('area'), ring: aRing<'leaf'>() }),
    v.strictObject({ ...anyDefect, shape: v.literal('line'), from: aPoint<'leaf'>(), to: aPoint<'leaf'>() }),
  ],
  'one of “spot”, “area”, “line”',
)

/** What a picture is called beside the job: the hash of its content and its kind. */
const PICTURE_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]{0,100}\.[a-z0-9]{1,8}$/
const PICTURE_FILE = 'the name of a file in photos/'

/** A piece that has been cut. */
const cutShape = v.strictObject({ part: anId, cell: anId, outline: aRing<'leaf'>() })

const leafShape = v.strictObject({
  number: aWholeNumber,
  outline: v.optional(aRing<'leaf'>()),
  defects: v.optional(
    v.pipe(v.array(defectShape, 'a list'), v.maxLength(MOST_DEFECTS, `a list of at most ${MOST_DEFECTS} defects`)),
    [],
  ),
  state: v.optional(oneOf(['in use', 'spare', 'set aside']), 'in use'),
  drift: v.optional(aPoint<'leaf'>(), () => [0, 0] as [number, number]),
  note: v.optional(aNote, ''),
  picture: v.optional(
    v.strictObject({
      hash: v.pipe(v.string(PICTURE_FILE), v.regex(PICTURE_NAME, PICTURE_FILE)),
      width: aWholeNumber,
      height: aWholeNumber,
      mmPerPx: aNumber,
      origin: aPoint<'leaf'>(),
    }),
  ),
  cuts: v.optional(
    v.pipe(v.array(cutShape, 'a list'), v.maxLength(MOST_CUTS, `a list of at most ${MOST_CUTS} pieces`)),
    [],
  ),
})

const leafCount = `a whole number from 1 to ${MOST_LEAVES}, or a list of that many leaf numbers`

/** How many leaves, numbered from 1, or their numbers in sequence. */
const leavesShape = v.union(
  [
    v.pipe(v.number(), v.integer(leafCount), v.minValue(1, leafCount), v.maxValue(MOST_LEAVES, leafCount)),
    v.pipe(v.array(aWholeNumber), v.minLength(1, leafCount), v.maxLength(MOST_LEAVES, leafCount)),
  ],
  leafCount,
)

/** A flitch as it stands in a file; what may be left out has its usual value, or is filled in by `fillJob`. */
export const flitchShape = v.strictObject({
  id: v.optional(anId),
  name: v.optional(aName),
  species: v.optional(aName),
  cut: v.optional(oneOf(FLITCH_CUTS)),
  figure: v.optional(oneOf(['straight', 'burl', 'crotch'])),
  upEnd: v.optional(oneOf(['numbered', 'far'])),
  thickness: v.optional(aNumber),
  lossBetween: v.optional(aNumber),
  leafOneAt: v.optional(oneOf(['top', 'bottom'])),
  numberedFace: v.optional(oneOf(['upper', 'lower'])),
  numberedFaceIs: v.optional(oneOf(['tight', 'loose'])),
  size: v.optional(v.strictTuple([aNumber, aNumber], 'a size [width, length]')),
  outline: v.optional(aRing<'leaf'>()),
  leaves: leavesShape,
  differing: v.optional(
    v.pipe(v.array(leafShape, 'a list'), v.maxLength(MOST_LEAVES, `a list of at most ${MOST_LEAVES} leaves`)),
    [],
  ),
  missing: v.optional(
    v.pipe(
      v.array(v.strictObject({ after: aWholeNumber, count: aWholeNumber }), 'a list'),
      v.maxLength(MOST_LEAVES, `a list of at most ${MOST_LEAVES} gaps`),
    ),
    [],
  ),
  sideMargin: v.optional(aNumber),
  endMargin: v.optional(aNumber),
})

export type FlitchInFile = v.InferOutput<typeof flitchShape>
export type LeafInFile = FlitchInFile['differing'][number]
