import * as v from 'valibot'
import type { Box } from '../geometry/box'
import { point, type Space } from '../geometry/point'
import { LONGEST_NAME, LONGEST_NOTE, MOST_ENTRIES, MOST_POINTS } from './limits'

/**
 * The pieces that the shapes of flitches and parts are made of. A message says what is wanted at its place and
 * completes “… should be”; whether a number is too large or too small is judged later, on the job itself.
 */
export const aNumber = v.number('a number')
export const aWholeNumber = v.pipe(v.number('a whole number'), v.integer('a whole number'))
export const aName = v.pipe(
  v.string('a text'),
  v.maxLength(LONGEST_NAME, `a text of at most ${LONGEST_NAME} characters`),
)
export const aNote = v.pipe(
  v.string('a text'),
  v.maxLength(LONGEST_NOTE, `a text of at most ${LONGEST_NOTE} characters`),
)
export const anId = v.pipe(
  v.string('an id'),
  v.minLength(1, 'an id of at least 1 character'),
  v.maxLength(LONGEST_NAME, `an id of at most ${LONGEST_NAME} characters`),
)

export const oneOf = <const T extends readonly string[]>(words: T) =>
  v.picklist(words, `one of ${words.map((word) => `“${word}”`).join(', ')}`)

export const aPoint = <S extends Space>() =>
  v.pipe(
    v.strictTuple([aNumber, aNumber], 'a point [x, y]'),
    v.transform(([x, y]) => point<S>(x, y)),
  )

/** A box as its two corners, that with the smaller x and y first. */
export const aBox = <S extends Space>() =>
  v.pipe(
    v.strictTuple([aPoint<S>(), aPoint<S>()], 'two corners [[x, y], [x, y]]'),
    v.check(([min, max]) => min.x < max.x && min.y < max.y, 'two corners, the one with the smaller x and y first'),
    v.transform(([min, max]): Box<S> => ({ min, max })),
  )

export const aRing = <S extends Space>() =>
  v.pipe(
    v.array(aPoint<S>(), 'a list of points [x, y]'),
    v.minLength(3, 'a list of at least 3 points'),
    v.maxLength(MOST_POINTS, `a list of at most ${MOST_POINTS} points`),
  )

const EDGES = 'one number, [top, right, bottom, left] or { "sides": …, "ends": … }'

/** One number for all edges, four from the top clockwise, or one for the sides and one for the ends. */
export const someEdges = v.pipe(
  v.union(
    [
      v.number(),
      v.strictTuple([v.number(), v.number(), v.number(), v.number()]),
      v.strictObject({ sides: v.number(), ends: v.number() }),
    ],
    EDGES,
  ),
  v.transform((given) => {
    if (typeof given === 'number') return { top: given, right: given, bottom: given, left: given }
    if ('sides' in given) return { top: given.ends, right: given.sides, bottom: given.ends, left: given.sides }
    const [top, right, bottom, left] = given
    return { top, right, bottom, left }
  }),
)

/** To an object all of whose fields may be left out, an empty list would look like one. */
export const notAList = v.pipe(
  v.unknown(),
  v.check((held) => !Array.isArray(held), 'an object'),
)

/** Values by a name of the program's own, such as a cell's. */
export const byName = <S extends v.GenericSchema>(value: S) =>
  v.pipe(
    notAList,
    v.record(v.string(), value, 'an object'),
    v.check((held) => Object.keys(held).length <= MOST_ENTRIES, `an object of at most ${MOST_ENTRIES} fields`),
  )
