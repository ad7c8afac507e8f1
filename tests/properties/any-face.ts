import { point, type Point } from '../../src/core/geometry/point'
import type { Part } from '../../src/core/job/job'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Defect, DefectKind, Leaf } from '../../src/core/leaves/leaf'
import type { DiamondRecipe, EndMatchRecipe, LeafCount, PlanksRecipe, Recipe } from '../../src/core/patterns/recipe'
import { box, spread, starRing, whole, wildLeaf, type Chance } from '../fixtures/geometry/shapes'
import {
  boxed,
  diamond,
  endMatch,
  flitchOf,
  fourWay,
  herringbone,
  parquet,
  partOf,
  planks,
  radial,
  strips,
} from './job-builders'

export interface AnyFace {
  readonly part: Part
  readonly flitch: Flitch
}

export const oneOf = <T>(chance: Chance, ...choices: readonly T[]): T => choices[whole(chance, 0, choices.length - 1)]!

/** A part and a flitch for it, all sorts of both; most faces have leaves enough and room to move. */
export function anyFace(chance: Chance): AnyFace {
  const recipe = anyRecipe(chance)
  const flitch = anyFlitch(chance)
  return { flitch, part: anyPart(chance, recipe, flitch) }
}

export function anyRecipe(chance: Chance): Recipe {
  const shared = {
    firstLeaf: 10 * (chance() < 0.6 ? 1 : whole(chance, 2, 6)),
    spine: oneOf(chance, 'left' as const, 'right' as const),
    equal: oneOf(chance, 'before trimming' as const, 'after trimming' as const),
  }
  const laying = oneOf(chance, 'by spine' as const, 'left to right' as const, 'right to left' as const)
  if (chance() < 0.25) return anySetPiece(chance, { ...shared, laying })
  const kind = chance()
  if (kind < 0.22) return fourWay({ ...shared, laying, count: oneOf(chance, 4, 8, 12), numberedEnds: ends(chance) })
  if (kind < 0.45)
    return radial({
      ...shared,
      match: oneOf(chance, 'book', 'book', 'slip'),
      count: whole(chance, 3, 12) * 2 + (chance() < 0.1 ? 1 : 0),
      firstSeam: oneOf(chance, 0, 0, 45, 7.5, spread(chance, -360, 360)),
      laying: oneOf(chance, 'by spine', 'clockwise', 'anticlockwise'),
      numberedEnds: ends(chance),
      eachFrom: oneOf(chance, 'one leaf', 'one leaf', 'booked pair'),
    })
  const arrangement = oneOf(chance, 'running' as const, 'balance' as const, 'centre balance' as const)
  if (chance() < 0.2)
    return strips({
      ...shared,
      laying,
      match: 'slip-centre-book',
      count: chance() < 0.3 ? 'fewest' : 2 * whole(chance, 2, 4),
    })
  return strips({
    ...shared,
    laying,
    arrangement,
    match: oneOf(chance, 'book', 'slip', 'reverse slip'),
    count: arrangement === 'running' || chance() < 0.3 ? 'fewest' : whole(chance, 1, 8),
    centreOn: oneOf(chance, 'seam', 'leaf', 'either'),
    startAt: oneOf(chance, 'left', 'right'),
    sideUp: oneOf(chance, 'numbered', 'other'),
  })
}

function anySetPiece(chance: Chance, shared: Partial<EndMatchRecipe>): Recipe {
  const [firstLeaf, numberedEnds] = [shared.firstLeaf!, ends(chance)]
  const sideUp = oneOf(chance, 'numbered' as const, 'other' as const)
  const kind = whole(chance, 0, 5)
  if (kind > 2) return anyNewPiece(chance, kind, { firstLeaf, numberedEnds, sideUp })
  if (kind === 0)
    return diamond({
      firstLeaf,
      numberedEnds,
      sideUp,
      runs: oneOf(chance, 'round', 'to the centre'),
      angle: oneOf<DiamondRecipe['angle']>(chance, 'mid-sides', 45, spread(chance, 1, 89)),
      sheetOf: oneOf(chance, 1, 2, 3),
    })
  if (kind === 1)
    return boxed({
      firstLeaf,
      numberedEnds,
      sideUp,
      grain: oneOf(chance, 'along the edges', 'across the edges'),
      sheetOf: oneOf(chance, 1, 2, 3),
    })
  const rows = whole(chance, 2, 4)
  const count = oneOf<LeafCount>(chance, 'fewest', rows * whole(chance, 1, 4))
  return endMatch({
    ...shared,
    numberedEnds,
    rows,
    count,
    order: oneOf(chance, 'column by column', 'down and up', 'panel'),
  })
}

/** Small pieces, several to a leaf, and strips without match. */
function anyNewPiece(
  chance: Chance,
  kind: number,
  { firstLeaf, numberedEnds, sideUp }: Pick<DiamondRecipe, 'firstLeaf' | 'numberedEnds' | 'sideUp'>,
): Recipe {
  if (kind === 3) {
    const columns = whole(chance, 2, 4)
    return herringbone({
      firstLeaf,
      numberedEnds,
      sideUp,
      columns,
      angle: oneOf(chance, 45, 30, spread(chance, 10, 75)),
      stripWidth: spread(chance, 60, 180),
      points: oneOf(chance, 'up', 'down'),
      count: oneOf<LeafCount>(chance, 'fewest', columns * whole(chance, 1, 4)),
    })
  }
  if (kind === 4)
    return parquet({
      firstLeaf,
      sideUp,
      columns: whole(chance, 2, 5),
      rows: whole(chance, 2, 5),
      strips: whole(chance, 1, 3),
      firstBlock: oneOf(chance, 'upright', 'lying'),
      count: oneOf<LeafCount>(chance, 'fewest', whole(chance, 1, 12)),
    })
  return planks({
    firstLeaf,
    sideUp,
    look: oneOf(chance, 'random', 'planked'),
    widths: oneOf<PlanksRecipe['widths']>(chance, 'seeded', [90.5, 120, 70]),
    seed: whole(chance, 1, 9999),
    unevenness: oneOf(chance, 0, 35, spread(chance, 0, 80)),
    order: oneOf(chance, 'as they come', 'shuffled'),
    ends: oneOf(chance, 'alike', 'mixed'),
    count: oneOf<LeafCount>(chance, 'fewest', whole(chance, 2, 6)),
  })
}

const ends = (chance: Chance) => oneOf(chance, 'inside' as const, 'outside' as const)

export function anyFlitch(chance: Chance): Flitch {
  const [width, length] = [spread(chance, 160, 320), spread(chance, 900, 2600)]
  const count = whole(chance, 16, 28)
  const leaves = Array.from({ length: count }, (_, i) => anyLeaf(chance, i, width, length))
  return flitchOf({
    leaves,
    outline: lopsided(chance, width, length),
    thickness: oneOf(chance, 0.6, 0.55, 2.5),
    lossBetween: chance() < 0.2 ? spread(chance, 1, 5) : 0,
    leafOneAt: oneOf(chance, 'top', 'bottom'),
    numberedFace: oneOf(chance, 'upper', 'lower'),
    missing: chance() < 0.3 ? [{ after: leaves[2]!.number, count: whole(chance, 1, 3) }] : [],
    sideMargin: oneOf(chance, 0, 0, 4, 11.5),
    endMargin: oneOf(chance, 0, 0, 15, 40.25),
  })
}

/** Chalked in tens, so that no number is taken for a place in the sequence. */
function anyLeaf(chance: Chance, i: number, width: number, length: number): Leaf {
  const ownOutline = chance() < 0.25
  return {
    number: 10 * (i + 1),
    outline: ownOutline
      ? lopsided(chance, width * spread(chance, 0.95, 1.1), length * spread(chance, 0.95, 1.05))
      : null,
    defects: chance() < 0.15 ? [anyDefect(chance, `d${i}`, width, length)] : [],
    state: i > 0 && chance() < 0.05 ? oneOf(chance, 'spare', 'set aside') : 'in use',
    drift: i === 0 ? point(0, 0) : point(spread(chance, -4, 4), spread(chance, -12, 12)),
    note: '',
    picture: null,
    cuts: [],
  }
}

/** Wild edges, tapering to one side, the ends out of square. */
function lopsided(chance: Chance, width: number, length: number) {
  if (chance() < 0.3) return box(0, 0, width, length)
  const lean = spread(chance, -0.04, 0.04)
  const skew = spread(chance, -0.05, 0.05)
  return wildLeaf(chance, width, length, whole(chance, 8, 40)).map(({ x, y }) =>
    point<'leaf'>(x + lean * y, y + skew * x),
  )
}

function anyDefect(chance: Chance, id: string, width: number, length: number): Defect {
  const kind = oneOf<DefectKind>(chance, 'knot', 'hole', 'split', 'stain', 'sapwood', 'tear')
  const at: Point<'leaf'> = point(
    oneOf(chance, 0.06, 0.9, chance()) * width,
    oneOf(chance, 0.1, 0.9, chance()) * length,
  )
  const shape = whole(chance, 0, 3)
  if (shape === 0) return { id, kind, note: '', shape: 'spot', centre: at, radius: spread(chance, 1, 14) }
  if (shape === 1) return { id, kind, note: '', shape: 'area', ring: starRing(chance, at, 16, whole(chance, 4, 9)) }
  if (shape === 2) return { id, kind, note: '', shape: 'area', ring: box(at.x, at.y, at.x + 12, at.y + 9) }
  const to = point<'leaf'>(at.x + spread(chance, -9, 9), at.y + spread(chance, 5, 60))
  return { id, kind, note: '', shape: 'line', from: at, to }
}

function anyPart(chance: Chance, recipe: Recipe, flitch: Flitch): Part {
  const [leafWidth, leafLength] = [0, 1].map((axis) => {
    const along = flitch.outline.map((p) => (axis === 0 ? p.x : p.y))
    return Math.max(...along) - Math.min(...along)
  }) as [number, number]
  const share = spread(chance, 0.35, 0.8)
  const sound = leafWidth - 2 * flitch.sideMargin
  const length = leafLength * spread(chance, 0.25, 0.7)
  const edge = (least: number, most: number) => oneOf(chance, least, 0, spread(chance, least, most))
  const count = recipe.count === 'fewest' ? whole(chance, 1, 8) : recipe.count
  const isSetPiece = recipe.pattern === 'diamond' || recipe.pattern === 'box'
  const isSmall = recipe.pattern === 'herringbone' || recipe.pattern === 'parquet'
  const size = isSmall
    ? { width: spread(chance, 300, 700), length: spread(chance, 300, 700) }
    : isSetPiece
      ? setPieceSize(chance, sound * share)
      : recipe.pattern === 'radial'
        ? radialSize(chance, recipe.count as number, sound * share, length)
        : recipe.pattern === 'four-way'
          ? { width: (sound * share * count) / 2, length: length * 1.2 }
          : recipe.pattern === 'end match'
            ? { width: (sound * share * Math.max(count, recipe.rows)) / recipe.rows, length: length * 1.2 }
            : { width: sound * share * count, length }
  return partOf({
    ...size,
    recipe,
    showClass: oneOf(chance, 'show', 'now and then', 'hidden'),
    core: { top: edge(-4, 15), right: edge(-8, 15), bottom: edge(-4, 15), left: edge(-8, 15) },
    overhang: { top: edge(3, 14), right: edge(3, 9), bottom: edge(3, 14), left: edge(3, 9) },
    allowance: oneOf(chance, 3, 1.5, 0, spread(chance, 0, 9)),
    laterAllowance: oneOf(chance, 8, 0, spread(chance, 0, 12)),
  })
}

/** Any shape that a piece can be cut for; a square one now and then. */
function setPieceSize(chance: Chance, across: number) {
  const width = across * spread(chance, 0.6, 1.6)
  return { width, length: chance() < 0.25 ? width : across * spread(chance, 0.6, 1.6) }
}

/** So large that a wedge is about as wide as given where it is widest. */
function radialSize(chance: Chance, count: number, widest: number, longest: number) {
  const radius = Math.min(longest * 0.8, widest / (2 * Math.tan(Math.PI / count)) / 1.2)
  const shape = spread(chance, 0.6, 1)
  return { width: 1.4 * radius * shape, length: 1.4 * radius }
}
