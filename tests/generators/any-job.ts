import fc from 'fast-check'
import type { PanelOutline } from '../../src/core/geometry/panel-outline'
import { withOwnUnnamed } from '../../src/core/job/part-flitches'
import { partTrouble } from '../../src/core/job/check-part'
import { fittedPart } from '../../src/core/job/fitted-part'
import { MEASURED_AT, type Job, type Pair, type Part } from '../../src/core/job/job'
import type { MakeUp } from '../../src/core/job/make-up'
import type { Point } from '../../src/core/geometry/point'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Defect, DefectKind, Leaf } from '../../src/core/leaves/leaf'
import type { Border } from '../../src/core/patterns/border'
import { takesItsCount } from '../../src/core/patterns/count-taken'
import { isRunning, type Recipe } from '../../src/core/patterns/recipe'
import { pressingTroubles, roomTroubles } from '../../src/core/press/press-trouble'
import type { Curve, DataSheet, EdgeWork, Layer, Pressing, PressRoom } from '../../src/core/press/pressing'
import type { Shop } from '../../src/core/shop'

/** Sound jobs of every kind, for the laws that hold for all of them. */
const between = (min: number, max: number) =>
  fc.oneof(
    fc.integer({ min: Math.ceil(min), max: Math.floor(max) }),
    // -0 is 0: JSON has only one of them
    fc.double({ min, max, noNaN: true }).map((n) => n + 0),
  )
const length = between(0.5, 19_000)
const point: fc.Arbitrary<Point<'leaf'>> = fc.record({ x: between(-9_000, 9_000), y: between(-9_000, 9_000) })
const text = fc.string({ maxLength: 12, unit: 'binary' })
const kind = fc.constantFrom<DefectKind>('knot', 'hole', 'split', 'stain', 'sapwood', 'tear')

/** A ring that runs positively and does not cross itself: distances from a centre, by angle. */
const ring: fc.Arbitrary<readonly Point<'leaf'>[]> = fc.oneof(
  fc.tuple(length, length).map(([w, l]) => [
    { x: 0, y: 0 },
    { x: w, y: 0 },
    { x: w, y: l },
    { x: 0, y: l },
  ]),
  fc.tuple(point, fc.array(between(20, 900), { minLength: 3, maxLength: 40 })).map(([centre, radii]) =>
    radii.map((r, i) => ({
      x: centre.x + r * Math.cos((2 * Math.PI * i) / radii.length),
      y: centre.y + r * Math.sin((2 * Math.PI * i) / radii.length),
    })),
  ),
)

const anyDefect = (id: string): fc.Arbitrary<Defect> =>
  fc
    .tuple(anyShapedDefect(id), fc.boolean())
    .map(([defect, slanted]) => (slanted ? { ...defect, through: 'slanted' as const } : defect))

const anyShapedDefect = (id: string): fc.Arbitrary<Defect> =>
  fc.oneof(
    fc.record({
      id: fc.constant(id),
      kind,
      note: text,
      shape: fc.constant('spot' as const),
      centre: point,
      radius: between(0.1, 300),
    }),
    fc.record({ id: fc.constant(id), kind, note: text, shape: fc.constant('area' as const), ring }),
    fc
      .record({ id: fc.constant(id), kind, note: text, shape: fc.constant('line' as const), from: point, to: point })
      .filter(({ from, to }) => from.x !== to.x || from.y !== to.y),
  )

const picture = fc.record({
  hash: fc.stringMatching(/^[a-z0-9]{1,32}$/).map((name) => `${name}.webp`),
  width: fc.integer({ min: 1, max: 4_000 }),
  height: fc.integer({ min: 1, max: 4_000 }),
  mmPerPx: between(0.05, 10).filter((n) => n > 0),
  origin: point,
})

const id = fc.constantFrom('part 1', 'part 2', 'L1', 'C')

const anyLeaf = (flitch: string, number: number, nth: number): fc.Arbitrary<Leaf> =>
  fc.record({
    number: fc.constant(number),
    outline: fc.option(ring),
    defects: fc
      .nat(2)
      .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyDefect(`${flitch}.${nth}.${i}`)))),
    state: fc.constantFrom('in use', 'spare', 'set aside'),
    drift: nth === 0 ? fc.constant({ x: 0, y: 0 }) : point,
    note: text,
    picture: fc.option(picture),
    cuts: fc.array(fc.record({ part: id, cell: id, outline: ring }), { maxLength: 2 }),
  })

const leafNumbers = fc.oneof(
  fc.integer({ min: 1, max: 12 }).map((n) => Array.from({ length: n }, (_, i) => i + 1)),
  fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 12 }),
)

const anyFlitch = (id: string): fc.Arbitrary<Flitch> =>
  leafNumbers.chain((numbers) =>
    fc.record({
      id: fc.constant(id),
      name: text,
      species: text,
      cut: fc.constantFrom('flat', 'quarter', 'rift', 'half round', 'rotary', 'sawn'),
      figure: fc.constantFrom<Flitch['figure']>('straight', 'burl', 'burl', 'crotch'),
      upEnd: fc.constantFrom('numbered', 'far'),
      thickness: between(0.3, 6),
      lossBetween: between(0, 5),
      leafOneAt: fc.constantFrom('top', 'bottom'),
      numberedFace: fc.constantFrom('upper', 'lower'),
      numberedFaceIs: fc.constantFrom('tight', 'loose'),
      outline: ring,
      leaves: fc.tuple(...numbers.map((number, i) => anyLeaf(id, number, i))),
      missing: fc
        .subarray(numbers)
        .chain((after) =>
          fc.tuple(...after.map((n) => fc.record({ after: fc.constant(n), count: fc.integer({ min: 1, max: 5 }) }))),
        ),
      sideMargin: between(0, 50),
      endMargin: between(0, 200),
    }),
  )

const edges = (min: number, max: number) => {
  const edge = between(min, max)
  return fc.oneof(
    fc.record({ top: edge, right: edge, bottom: edge, left: edge }),
    fc.tuple(edge, edge).map(([ends, sides]) => ({ top: ends, right: sides, bottom: ends, left: sides })),
    edge.map((all) => ({ top: all, right: all, bottom: all, left: all })),
  )
}

const run = {
  count: fc.oneof(fc.constant('fewest' as const), fc.integer({ min: 1, max: 40 })),
  firstLeaf: fc.integer({ min: 1, max: 60 }),
}
const shared = { ...run, spine: fc.constantFrom('left' as const, 'right' as const) }
const sideUp = fc.constantFrom('numbered' as const, 'other' as const)
const equal = fc.constantFrom('before trimming' as const, 'after trimming' as const)
const acrossLaying = fc.constantFrom('by spine' as const, 'left to right' as const, 'right to left' as const)
const match = fc.constantFrom('book' as const, 'slip' as const)
const numberedEnds = fc.constantFrom('outside' as const, 'inside' as const)

export const anyRecipe: fc.Arbitrary<Recipe> = fc.oneof(
  fc.record({
    ...shared,
    pattern: fc.constant('strips' as const),
    match: fc.constantFrom('book' as const, 'slip' as const, 'reverse slip' as const),
    equal,
    arrangement: fc.constantFrom('running' as const, 'balance' as const, 'centre balance' as const),
    centreOn: fc.constantFrom('seam' as const, 'leaf' as const, 'either' as const),
    startAt: fc.constantFrom('left' as const, 'right' as const),
    laying: acrossLaying,
    sideUp: fc.constantFrom('numbered' as const, 'other' as const),
  }),
  fc.record({
    ...shared,
    pattern: fc.constant('strips' as const),
    match: fc.constant('slip-centre-book' as const),
    equal,
    arrangement: fc.constant('centre balance' as const),
    centreOn: fc.constant('either' as const),
    startAt: fc.constant('left' as const),
    laying: acrossLaying,
    sideUp: fc.constant('numbered' as const),
  }),
  fc.record({ ...shared, pattern: fc.constant('four-way' as const), equal, laying: acrossLaying, numberedEnds }),
  fc.record({
    ...shared,
    pattern: fc.constant('end match' as const),
    order: fc.constantFrom('column by column' as const, 'down and up' as const, 'panel' as const),
    rows: fc.integer({ min: 2, max: 8 }),
    equal,
    laying: acrossLaying,
    numberedEnds,
  }),
  fc.record({
    ...run,
    pattern: fc.constant('diamond' as const),
    runs: fc.constantFrom('round' as const, 'to the centre' as const),
    angle: fc.oneof(fc.constant('mid-sides' as const), between(1, 89)),
    sideUp,
    numberedEnds,
    sheetOf: fc.integer({ min: 1, max: 6 }),
  }),
  fc.record({
    ...run,
    pattern: fc.constant('box' as const),
    grain: fc.constantFrom('along the edges' as const, 'across the edges' as const),
    sideUp,
    numberedEnds,
    sheetOf: fc.integer({ min: 1, max: 6 }),
  }),
  fc.record({
    ...run,
    pattern: fc.constant('herringbone' as const),
    angle: between(10, 60),
    stripWidth: between(500, 1000),
    columns: fc.integer({ min: 2, max: 6 }),
    points: fc.constantFrom('up' as const, 'down' as const),
    sideUp,
    numberedEnds,
  }),
  fc.record({
    ...run,
    pattern: fc.constant('parquet' as const),
    columns: fc.integer({ min: 2, max: 10 }),
    rows: fc.integer({ min: 2, max: 10 }),
    strips: fc.integer({ min: 1, max: 3 }),
    firstBlock: fc.constantFrom('upright' as const, 'lying' as const),
    sideUp,
  }),
  fc.record({
    ...run,
    pattern: fc.constant('planks' as const),
    look: fc.constantFrom('random' as const, 'planked' as const),
    widths: fc.oneof(fc.constant('seeded' as const), fc.array(between(5, 900), { maxLength: 9 })),
    seed: fc.integer({ min: 1, max: 9999 }),
    unevenness: between(0, 80),
    order: fc.constantFrom('as they come' as const, 'shuffled' as const),
    ends: fc.constantFrom('alike' as const, 'mixed' as const),
    sideUp,
  }),
  fc.record({
    ...shared,
    pattern: fc.constant('radial' as const),
    match,
    firstSeam: between(-360, 360),
    centre: fc.oneof(fc.constant({ x: 0, y: 0 }), fc.record({ x: between(-300, 300), y: between(-300, 300) })),
    laying: fc.constantFrom('by spine' as const, 'clockwise' as const, 'anticlockwise' as const),
    order: fc.constantFrom('in a circle' as const, 'both ways' as const),
    numberedEnds,
    cutFull: between(0, 2),
    eachFrom: fc.constantFrom('one leaf' as const, 'booked pair' as const),
  }),
)

const cell = fc.constantFrom('C', 'L1', 'L2', 'R1', 'R2', 'W1', 'W7', '1,1', '-1,2', 'XT1')
const leafNumber = fc.integer({ min: 1, max: 60 })
const byName = <T>(key: fc.Arbitrary<string>, value: fc.Arbitrary<T>) =>
  fc.dictionary(key, value, { maxKeys: 4, noNullPrototype: true })

const anyCut = fc.record({
  through: point,
  runs: fc.constantFrom('right' as const, 'left' as const),
  slope: between(0.01, 2),
  gain: between(0, 900),
  loss: between(0, 5),
})
const box = fc
  .record({ min: point, size: fc.record({ x: between(1, 9_000), y: between(1, 9_000) }) })
  .map(({ min, size }) => ({
    min,
    max: { x: min.x + size.x, y: min.y + size.y },
  }))
export const anyMakeUp: fc.Arbitrary<MakeUp> = fc.oneof(
  fc.record({
    how: fc.constant('longer' as const),
    leaf: fc.option(leafNumber),
    spacing: fc.option(between(0.5, 90)),
    cut: anyCut,
  }),
  fc.record({
    how: fc.constant('wider' as const),
    leaf: fc.option(leafNumber),
    spacing: fc.option(between(0.5, 90)),
    side: fc.constantFrom('left' as const, 'right' as const),
    kept: box,
    from: fc.option(leafNumber),
    offcut: box,
    cut: fc.option(anyCut),
    strip: box,
    loss: between(0, 5),
  }),
)

const anyOutline: fc.Arbitrary<PanelOutline> = fc.oneof(
  fc.constantFrom<PanelOutline>({ shape: 'rectangle' }, { shape: 'circle' }, { shape: 'ellipse' }),
  fc.record({ shape: fc.constant('polygon' as const), sides: fc.integer({ min: 3, max: 64 }) }),
  fc.record({ shape: fc.constant('arch top' as const), rise: between(0.1, 4_000) }),
  fc.array(between(20, 900), { minLength: 3, maxLength: 20 }).map((radii) => ({
    shape: 'drawn' as const,
    corners: radii.map((r, i) => ({
      at: {
        x: r * Math.cos((2 * Math.PI * i) / radii.length),
        y: r * Math.sin((2 * Math.PI * i) / radii.length),
      },
      bulge: i === 0 ? 0.125 : 0,
    })),
  })),
)

const cut = fc.constantFrom('flat', 'quarter', 'rift', 'half round', 'rotary', 'sawn')
const wood = {
  species: text,
  cut,
  thickness: between(0.3, 60),
  grain: fc.oneof(between(-360, 360), fc.constant('no single grain' as const)),
  moisture: fc.option(between(4, 15)),
}
const anyLayer: fc.Arbitrary<Layer> = fc.oneof(
  fc.record({ kind: fc.constantFrom('veneer' as const, 'solid' as const), ...wood }),
  fc.record({
    kind: fc.constant('board' as const),
    board: fc.constantFrom('birch plywood' as const, 'light plywood' as const),
    thickness: between(3, 30),
    grain: between(-360, 360),
    plies: fc.option(fc.integer({ min: 3, max: 13 })),
    moisture: fc.option(between(4, 15)),
  }),
  fc.record({ kind: fc.constant('glue line' as const), thickness: between(0, 1) }),
)
const anyEdge: fc.Arbitrary<EdgeWork> = fc.oneof(
  fc.constant({ edge: 'bare' as const }),
  fc.record({
    edge: fc.constantFrom('lipped before', 'lipped after', 'edge veneer first', 'edge veneer last'),
    thickness: between(0.2, 20),
  }) as fc.Arbitrary<EdgeWork>,
)
const anyCurve: fc.Arbitrary<Curve> = fc.record({
  by: fc.constant('rise' as const),
  rise: between(100, 400),
  chord: between(500, 900),
  show: fc.constantFrom('hollow' as const, 'round' as const),
})
const anyPressing: fc.Arbitrary<Pressing> = fc
  .record({
    layers: fc.array(anyLayer, { minLength: 1, maxLength: 5 }),
    wantedThickness: fc.option(between(1, 60)),
    gluedBefore: fc.uniqueArray(fc.nat(3), { maxLength: 2 }),
    method: fc.constantFrom('bag' as const, 'cauls' as const, 'leaf by leaf' as const),
    glue: fc.constantFrom('PVA' as const, 'epoxy' as const, 'hide' as const, 'plastic resin, powder' as const),
    edges: fc.record({ top: anyEdge, right: anyEdge, bottom: anyEdge, left: anyEdge }),
    curve: fc.option(anyCurve),
  })
  .filter((pressing) => pressingTroubles(pressing).length === 0)

const anySheet: fc.Arbitrary<DataSheet> = fc.record({
  spread: fc.option(between(50, 400)),
  openMinutes: fc.option(between(1, 90)),
  pressHours: fc.option(between(1, 30)),
  leastTemperature: fc.option(between(0, 30)),
  cureDays: fc.option(between(0, 9)),
  density: fc.option(between(0.9, 1.5)),
  ratio: fc.option(fc.tuple(between(1, 10), between(1, 10))),
  pressure: fc.constant(0.7),
})
const climate = fc.record({ temperature: between(-5, 40), humidity: fc.double({ min: 0.1, max: 0.9, noNaN: true }) })
const size = fc.record({ width: between(300, 3000), length: between(300, 3000) })
const count = fc.nat(40)
const anyPressRoom: fc.Arbitrary<PressRoom> = fc
  .record({
    gluing: climate,
    driest: climate,
    dampest: climate,
    coreTemperature: between(-5, 40),
    dataSheets: fc.oneof(fc.constant({}), fc.record({ PVA: anySheet, epoxy: anySheet })),
    suction: fc.oneof(
      fc.record({ by: fc.constant('gauge' as const), inHg: between(0, 29) }),
      fc.record({ by: fc.constant('pump' as const), inHg: between(0, 29), altitude: between(-100, 3000) }),
    ),
    platen: size,
    bag: size,
    hands: fc.integer({ min: 1, max: 4 }),
    clamps: fc.record({
      'light bar': count,
      'F-clamp': count,
      'parallel-jaw': count,
      pipe: count,
      'heavy C-clamp': count,
    }),
  })
  .filter((room) => roomTroubles(room).length === 0)

const anyPart = (id: string, flitches: readonly string[]): fc.Arbitrary<Part> =>
  anyPlainPart(id, flitches)
    .map((part) => withOwnUnnamed(fittedPart(part, 'width')))
    .map((part) =>
      takesItsCount(part.recipe) ? part : { ...part, recipe: { ...part.recipe, count: 'fewest' as const } },
    )
    .filter((part) => partTrouble(part, '') === null)

const anyBorder = (flitches: readonly string[]): fc.Arbitrary<Border> =>
  fc.record({
    width: between(3, 90),
    grain: fc.constantFrom('across' as const, 'along' as const),
    corners: fc.constantFrom('mitred' as const, 'sides through' as const, 'ends through' as const),
    pieceLength: between(60, 900),
    flitch: fc.option(fc.constantFrom(...flitches)),
    count: run.count,
    firstLeaf: fc.oneof(fc.constant('after the field' as const), leafNumber),
    sideUp,
    string: fc.option(fc.record({ width: between(0.5, 6), species: text })),
  })

const anyPlainPart = (id: string, flitches: readonly string[]): fc.Arbitrary<Part> =>
  fc.record({
    id: fc.constant(id),
    name: text,
    width: between(1.5, 9_000),
    length: between(1.5, 9_000),
    outline: anyOutline,
    showClass: fc.constantFrom('show', 'now and then', 'hidden'),
    core: edges(-0.7, 20),
    overhang: edges(0, 40),
    jointing: fc.constantFrom('packet', 'pair', 'overlap'),
    allowance: between(0, 20),
    laterAllowance: between(0, 20),
    lying: fc.boolean(),
    finished: fc.boolean(),
    flitch: fc.constantFrom(...flitches),
    recipe: anyRecipe,
    windowTurn: between(-360, 360),
    positions: byName(fc.constantFrom('all', 'outer', 'wedges', 'border'), point),
    chosen: byName(cell, leafNumber),
    nudges: byName(cell, fc.record({ leaf: leafNumber, by: point })),
    madeUp: byName(fc.oneof(fc.constant('run'), cell), anyMakeUp),
    asCut: fc.dictionary(fc.constantFrom(...MEASURED_AT), length, { maxKeys: 8, noNullPrototype: true }),
    border: fc.option(anyBorder(flitches), { freq: 1 }),
    pressing: anyPressing,
  })

const kinds = fc.subarray<DefectKind>(['knot', 'hole', 'split', 'stain', 'sapwood', 'tear'])
const gap = between(0, 30)
const anyShop: fc.Arbitrary<Shop> = fc.record({
  clearance: fc.record({ knot: gap, hole: gap, split: gap, stain: gap, sapwood: gap, tear: gap }),
  tolerates: fc.record({ show: kinds, 'now and then': kinds, hidden: kinds }),
  splitTape: fc.constantFrom('show side', 'glue side'),
  sliver: between(0, 90),
  leastOverhang: gap,
  offCentre: between(0, 5),
  longestSeam: between(100, 3000),
  betweenPieces: between(0, 6),
})

const FLITCHES = ['walnut', 'maple', 'oak']

/** Each part may follow the one before it. */
const anyPairs = (parts: readonly Part[]): fc.Arbitrary<readonly Pair[]> =>
  parts.length < 2
    ? fc.constant([])
    : fc
        .tuple(
          ...parts.slice(1).map(({ id }, i) =>
            fc.option(
              fc.record({
                first: fc.constant(parts[i]!.id),
                second: fc.constant(id),
                meet: fc.constantFrom('booked' as const, 'running through' as const, 'same leaves' as const),
                gap: between(0, 200),
                pressed: fc.constantFrom('apart' as const, 'one board' as const),
                overhang: between(0, 40),
              }),
            ),
          ),
        )
        .map((pairs) => pairs.filter((pair) => pair !== null))

export const anyJob: fc.Arbitrary<Job> = fc
  .integer({ min: 1, max: 3 })
  .chain((n) => {
    const ids = FLITCHES.slice(0, n)
    return fc.record({
      name: text,
      unit: fc.constantFrom('mm' as const, 'in' as const),
      shop: anyShop,
      pressRoom: anyPressRoom,
      flitches: fc.tuple(...ids.map(anyFlitch)),
      parts: fc.nat(3).chain((m) => fc.tuple(...Array.from({ length: m }, (_, i) => anyPart(`part ${i + 1}`, ids)))),
    })
  })
  .chain((job) => anyPairs(job.parts).map((pairs) => ({ ...job, pairs })))
  .map((job) => ({ ...job, parts: job.parts.map((part) => turnedOnlyInBurl(part, job.flitches)) }))

/** A window is turned on burl alone. */
function turnedOnlyInBurl(part: Part, flitches: readonly Flitch[]): Part {
  const isBurl = flitches.some(({ id, figure }) => id === part.flitch && figure === 'burl')
  return isBurl && !isRunning(part.recipe) ? part : { ...part, windowTurn: 0 }
}
