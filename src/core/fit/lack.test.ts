import { describe, expect, it } from 'vitest'
import { chanceFrom, leafWithHoles, spread, whole, type Chance } from '../../../tests/fixtures/geometry/shapes'
import { intersect, regionLess } from '../geometry/clip'
import { add, point } from '../geometry/point'
import { regionArea, transformRegion, transformRing, type Polygon, type Region, type Ring } from '../geometry/polygon'
import { rotation } from '../geometry/transform'
import { enlarged, lacksOf, type LeafSide } from './lack'

const box = (x1: number, y1: number, x2: number, y2: number): Ring<'leaf'> => [
  point(x1, y1),
  point(x2, y1),
  point(x2, y2),
  point(x1, y2),
]
const leaf: Region<'leaf'> = [[box(0, 0, 200, 700)]]
const leaning: Region<'leaf'> = [[[point(0, 0), point(200, 0), point(200, 700), point(8, 700)]]]
const holed: Region<'leaf'> = [[box(0, 0, 200, 700), [...box(1, 300, 12, 310)].reverse()]]
const wedge: Ring<'leaf'> = [point(100, -20), point(190, 600), point(10, 600)]

const told = (rough: Ring<'leaf'>, usable: Region<'leaf'>) =>
  lacksOf(rough, usable)
    .map(({ side, by }) => `${side} ${by.toFixed(1)}`)
    .sort()

describe('lacksOf', () => {
  it.each([
    { lies: 'within the wood', rough: box(5, 5, 195, 695), lacks: [] },
    { lies: 'exactly on its border', rough: box(0, 0, 200, 700), lacks: [] },
    { lies: '12 mm beyond the numbered end', rough: box(5, -12, 195, 650), lacks: ['numbered end 12.0'] },
    {
      lies: '300 mm beyond the far end, more than it is wide',
      rough: box(40, 100, 160, 1000),
      lacks: ['far end 300.0'],
    },
    { lies: 'beyond both ends', rough: box(5, -400, 195, 1100), lacks: ['far end 400.0', 'numbered end 400.0'] },
    { lies: 'beyond a corner', rough: box(-5, -10, 150, 500), lacks: ['left edge 5.0', 'numbered end 10.0'] },
    {
      lies: 'beyond all four edges',
      rough: box(-5, -10, 206, 707),
      lacks: ['far end 7.0', 'left edge 5.0', 'numbered end 10.0', 'right edge 6.0'],
    },
  ])('[F9] $lies', ({ rough, lacks }) => {
    expect(told(rough, leaf)).toEqual(lacks)
  })

  it('[F9] measures a slanted edge where it cuts deepest', () => {
    expect(told(box(2, 0, 190, 700), leaning)).toEqual(['left edge 6.0'])
  })

  it('[F9] takes a hole for the edge nearest to it', () => {
    expect(told(box(0, 0, 200, 700), holed)).toEqual(['left edge 12.0'])
  })

  it('[F9] measures the tip of a wedge along the grain', () => {
    expect(told(wedge, leaf)).toEqual(['numbered end 20.0'])
  })

  it('[F9] says something of a piece that lies beside its leaf', () => {
    expect(told(box(300, 0, 400, 600), leaf)).toHaveLength(1)
  })

  it('[F9] says nothing of a lack that nobody could cut', () => {
    expect(told(box(-0.01, 0, 190, 600), leaf)).toEqual([])
  })

  it.each([
    // the end falls by 30 mm over the width: at the right corner the piece lacks 20
    {
      what: 'a slanted end',
      usable: [[[point(0, 0), point(200, 30), point(200, 700), point(0, 700)]]] as Region<'leaf'>,
      rough: box(0, 10, 200, 600),
      lacks: ['numbered end 20.0'],
    },
    {
      what: 'a turned piece whose tip passes the end',
      usable: leaf,
      rough: [point(100, -6), point(180, 100), point(100, 206), point(20, 100)],
      lacks: ['numbered end 6.0'],
    },
    {
      what: 'a turned piece whose tip passes a slanted end at its side',
      usable: [[[point(0, 0), point(200, 150), point(200, 700), point(0, 700)]]] as Region<'leaf'>,
      rough: [point(100, 75), point(180, 175), point(100, 275), point(20, 175)],
      lacks: ['numbered end 0.0'],
    },
  ])('[F9] tells $what by the end', ({ usable, rough, lacks }) => {
    expect(told(rough as Ring<'leaf'>, usable)).toEqual(lacks.filter((lack) => !lack.endsWith(' 0.0')))
  })

  it('[F28] larger by what it lacks at each side, a leaf holds the piece; no side alone would need less', () => {
    const wrong: string[] = []
    let lacking = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { rough, usable } = anyLack(chanceFrom(seed))
      const lacks = lacksOf(rough, usable)
      if (lacks.length === 0) continue
      lacking++
      const larger = lacks.reduce((wood, { side, by }) => enlarged(wood, side, by + 0.01), usable)
      if (missingFrom([[rough]], larger) > 0.6) wrong.push(`${seed} still lacks ${missingFrom([[rough]], larger)}`)
      const most = Math.max(...lacks.map(({ by }) => by))
      for (const side of SIDES) {
        const less = enlarged(usable, side, most - SLACK)
        if (
          most > SLACK &&
          !hasKnots(usable) &&
          missingFrom([[rough]], less) < 1e-4 &&
          missingFrom(shorter(rough, side, most - SLACK), usable) < 1e-4
        )
          wrong.push(`${seed}: less will do at ${side}`)
      }
    }
    expect(wrong).toEqual([])
    expect(lacking).toBeGreaterThan(40)
  })
})

// a knot may be passed by the piece more cheaply than it is told
const hasKnots = (usable: Region<'leaf'>) => usable.some(({ length }) => length > 1)
const SLACK = 0.5
const SIDES: readonly LeafSide[] = ['numbered end', 'far end', 'left edge', 'right edge']

/** A convex piece with what goes at a side taken off, as far along the grain or across it from its border. */
function shorter(rough: Ring<'leaf'>, side: LeafSide, by: number): Region<'leaf'> {
  const way = { 'numbered end': [0, by], 'far end': [0, -by], 'left edge': [by, 0], 'right edge': [-by, 0] }[side]
  return intersect([[rough]], [[rough.map((p) => add(p, point(way[0]!, way[1]!)))]])
}

const missingFrom = (piece: Region<'leaf'>, usable: Region<'leaf'>) => regionArea(regionLess(piece, usable))

/** A wild leaf, some with knots, its ends slanted or as a whole turned, and a piece that lies about in its middle or off it. */
function anyLack(chance: Chance): { readonly rough: Ring<'leaf'>; readonly usable: Region<'leaf'> } {
  const slant = spread(chance, -0.4, 0.4)
  const leaf = leafWithHoles(chance, {
    width: 200,
    length: 600,
    points: whole(chance, 4, 60),
    holes: whole(chance, -3, 3) > 0 ? 2 : 0,
  })
  const slanted = leaf.map((ring) =>
    ring.map(({ x, y }) => point<'leaf'>(x, y + slant * x)),
  ) as unknown as Polygon<'leaf'>
  const turn = rotation<'leaf'>(chance() < 0.5 ? 0 : spread(chance, -0.6, 0.6))
  const [w, h] = [spread(chance, 40, 190), spread(chance, 100, 560)]
  const at = point<'leaf'>(100 - w / 2 + spread(chance, -40, 40), 300 - h / 2 + 100 * slant + spread(chance, -90, 90))
  const rough = transformRing(rotation<'leaf'>(chance() < 0.5 ? 0 : spread(chance, -0.3, 0.3)), box(0, 0, w, h))
  return {
    usable: transformRegion(turn, [slanted]),
    rough: transformRing(
      turn,
      rough.map((p) => add(p, at)),
    ),
  }
}
