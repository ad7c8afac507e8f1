import * as v from 'valibot'
import { FLITCH_CUTS } from './flitch-shape'
import { aName, aNumber, aWholeNumber, notAList, oneOf } from './shape-pieces'

const maybe = v.optional(v.nullable(aNumber))

const anyWood = {
  species: v.optional(aName),
  cut: v.optional(oneOf(FLITCH_CUTS)),
  grain: v.optional(v.union([v.number(), v.literal('no single grain')], 'degrees or “no single grain”')),
  moisture: maybe,
}

const layerShape = v.variant(
  'kind',
  [
    // a leaf is of the flitch's unless it says otherwise
    v.strictObject({ kind: v.literal('veneer'), ...anyWood, thickness: v.optional(aNumber) }),
    v.strictObject({ kind: v.literal('solid'), ...anyWood, thickness: aNumber }),
    v.strictObject({
      kind: v.literal('board'),
      board: oneOf(['MDF', 'particleboard', 'birch plywood', 'light plywood']),
      thickness: aNumber,
      grain: v.optional(aNumber),
      plies: v.optional(v.nullable(aWholeNumber)),
      moisture: maybe,
    }),
    v.strictObject({ kind: v.literal('glue line'), thickness: aNumber }),
  ],
  'one of “veneer”, “solid”, “board”, “glue line”',
)

const edgeShape = v.variant(
  'edge',
  [
    v.strictObject({ edge: v.literal('bare') }),
    v.strictObject({
      edge: oneOf(['lipped before', 'lipped after', 'edge veneer first', 'edge veneer last']),
      thickness: aNumber,
    }),
  ],
  'one of “bare”, “lipped before”, “lipped after”, “edge veneer first”, “edge veneer last”',
)

const show = v.optional(oneOf(['hollow', 'round']), 'hollow')

const curveShape = v.variant(
  'by',
  [
    v.strictObject({ by: v.literal('radius'), radius: aNumber, chord: aNumber, show }),
    v.strictObject({ by: v.literal('rise'), rise: aNumber, chord: aNumber, show }),
  ],
  'one of “radius”, “rise”',
)

const dataSheet = v.optional(
  v.pipe(
    notAList,
    v.strictObject({
      spread: maybe,
      openMinutes: maybe,
      pressHours: maybe,
      leastTemperature: maybe,
      cureDays: maybe,
      density: maybe,
      ratio: v.optional(v.nullable(v.strictTuple([aNumber, aNumber], 'two parts [of the one, of the other]'))),
      pressure: maybe,
    }),
  ),
)

/** How a part is glued up, as it stands in a file; what may be left out is filled in by `fillPressing`. */
export const pressingShape = v.pipe(
  notAList,
  v.strictObject({
    layers: v.optional(v.pipe(v.array(layerShape, 'a list'), v.maxLength(40, 'a list of at most 40 layers'))),
    wantedThickness: maybe,
    gluedBefore: v.optional(v.pipe(v.array(aWholeNumber, 'a list'), v.maxLength(40, 'a list of at most 40 places'))),
    method: v.optional(oneOf(['bag', 'cauls', 'leaf by leaf'])),
    glue: v.optional(
      oneOf([
        'PVA',
        'plastic resin, powder',
        'plastic resin, liquid',
        'epoxy',
        'polyurethane',
        'hide',
        'contact cement',
      ]),
    ),
    edges: v.optional(
      v.pipe(
        notAList,
        v.strictObject({
          top: v.optional(edgeShape),
          right: v.optional(edgeShape),
          bottom: v.optional(edgeShape),
          left: v.optional(edgeShape),
        }),
      ),
    ),
    curve: v.optional(v.nullable(curveShape)),
  }),
)

export type PressingInFile = v.InferOutput<typeof pressingShape>

const climate = v.optional(v.strictObject({ temperature: aNumber, humidity: aNumber }))
const size = v.optional(
  v.pipe(
    v.strictTuple([aNumber, aNumber], 'a size [width, length]'),
    v.transform(([width, length]) => ({ width, length })),
  ),
)
const count = v.optional(aWholeNumber)

/** What the shop presses with, as it stands in a file. */
export const pressRoomShape = v.pipe(
  notAList,
  v.strictObject({
    gluing: climate,
    driest: climate,
    dampest: climate,
    coreTemperature: v.optional(aNumber),
    suction: v.optional(
      v.variant(
        'by',
        [
          v.strictObject({ by: v.literal('gauge'), inHg: aNumber }),
          v.strictObject({ by: v.literal('pump'), inHg: aNumber, altitude: aNumber }),
        ],
        'one of “gauge”, “pump”',
      ),
    ),
    platen: size,
    bag: size,
    dataSheets: v.optional(
      v.pipe(
        notAList,
        v.strictObject({
          PVA: dataSheet,
          'plastic resin, powder': dataSheet,
          'plastic resin, liquid': dataSheet,
          epoxy: dataSheet,
          polyurethane: dataSheet,
          hide: dataSheet,
          'contact cement': dataSheet,
        }),
      ),
    ),
    hands: count,
    clamps: v.optional(
      v.pipe(
        notAList,
        v.strictObject({
          'light bar': count,
          'F-clamp': count,
          'parallel-jaw': count,
          pipe: count,
          'heavy C-clamp': count,
        }),
      ),
    ),
  }),
)

export type PressRoomInFile = v.InferOutput<typeof pressRoomShape>
