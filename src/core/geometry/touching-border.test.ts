import { describe, expect, it } from 'vitest'
import {
  box,
  chanceFrom,
  convexRing,
  leafWithHoles,
  spread,
  whole,
  wildLeaf,
} from '../../../tests/fixtures/geometry/shapes'
import { boxAround, boxHeight, boxWidth } from './box'
import { symmetricDifference, withoutSlivers, woundRegion } from './clip'
import { toGridRing, withoutSpikes, type GridRing } from './clip-grid'
import { touchingPath } from './inner-fit-path'
import { scale } from './point'
import { regionArea, type Region } from './polygon'
import { touchingBorder } from './touching-border'

type Touching = (ring: GridRing, piece: GridRing) => GridRing

interface Touched {
  readonly rings: GridRing[]
  readonly piece: GridRing
}

/** A leaf's outer ring and holes, and a convex piece; null where that is as large as the leaf. */
function leafAndPiece(seed: number): Touched | null {
  const chance = chanceFrom(seed)
  chance()
  const leaf = leafWithHoles(chance, {
    width: spread(chance, 60, 200),
    length: spread(chance, 100, 400),
    points: whole(chance, 4, 80),
    holes: whole(chance, 0, 6),
  })
  const ring = convexRing(chance, spread(chance, 4, 60), whole(chance, 3, 40))
  const piece = toGridRing(ring.map((p) => scale(p, -1)))
  const rings = leaf.map((ring) => toGridRing(ring))
  const [all, part] = [boxAround<'leaf'>(rings[0]!), boxAround<'leaf'>(piece)]
  return boxWidth(part) >= boxWidth(all) || boxHeight(part) >= boxHeight(all) ? null : { rings, piece }
}

const fitBy = (touching: Touching, { rings, piece }: Touched): Region<'leaf'> =>
  woundRegion(rings.map((ring) => touching([...ring].reverse(), piece).reverse()))

/** Reversed as the outside of a leaf is, the border of its ring and of each hole must tell the same as the whole path. */
describe('the border that a convex piece touches', () => {
  it('[G3] winds round the same positions as the whole path, and makes no islands of rounding', () => {
    const wrong: number[] = []
    // of the last ones borders that are cut again and again used to leave slivers far from any border
    for (const seed of [...Array.from({ length: 40 }, (_, i) => i), 68, 106, 655, 2338, 4755]) {
      const touched = leafAndPiece(seed)
      if (!touched) continue
      const [path, border] = [fitBy(touchingPath, touched), fitBy(touchingBorder, touched)]
      const differs = withoutSlivers(symmetricDifference(path, border), 0.004)
      if (border.length !== path.length || regionArea(differs) > 0.01) wrong.push(seed)
    }
    expect(wrong).toEqual([])
  })

  it('[G3] is far shorter than the path of a wild edge', () => {
    const ring = toGridRing([...wildLeaf(chanceFrom(1), 220, 2400, 600)].reverse())
    const points = (touching: Touching) => withoutSpikes(touching(ring, toGridRing(box(-40, -120, 40, 120)))).length
    expect(points(touchingBorder)).toBeLessThan(points(touchingPath) / 2)
  })
})
