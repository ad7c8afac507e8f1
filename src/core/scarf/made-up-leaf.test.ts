/**
 * [X9] A made-up leaf is what its parts cover: nothing more, nothing less, however wild the leaf.
 * [X10] A strip is put on along the grain, level with the kept piece; wood that is used twice makes no leaf.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boxRing, boxWidth, regionBox, type Box } from '../geometry/box'
import { intersect, symmetricDifference, unite } from '../geometry/clip'
import { point } from '../geometry/point'
import { regionArea, transformRegion, type Region, type Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { edgeLength } from '../geometry/segment'
import type { MakeUp, Widening } from '../job/make-up'
import { madeUpLeaf, type LeafWood, type MadeUpLeaf } from './made-up-leaf'

const box = (x: number, y: number, width: number, length: number): Box<'leaf'> => ({
  min: point(x, y),
  max: point(x + width, y + length),
})
const wood = (leaf: number, ring: Ring<'leaf'>, drift = point<'leaf'>(0, 0)): LeafWood => ({
  leaf,
  outline: [[ring]],
  usable: [[ring]],
  drift,
})
const none = () => null

const partsTogether = (made: MadeUpLeaf): Region<'leaf'> =>
  unite(...made.parts.map((part) => transformRegion(part.toMade, part.wood)))

/** Wild edges: widths and offsets at a few rows. */
const wildLeaf = fc
  .array(
    fc.record({
      left: fc.double({ min: 0, max: 40, noNaN: true }),
      right: fc.double({ min: 0, max: 40, noNaN: true }),
    }),
    {
      minLength: 4,
      maxLength: 9,
    },
  )
  .map((rows): Ring<'leaf'> => {
    const at = (i: number) => (1200 * i) / (rows.length - 1)
    return [
      ...rows.map(({ left }, i) => point<'leaf'>(left, at(i))).reverse(),
      ...rows.map(({ right }, i) => point<'leaf'>(260 - right, at(i))),
    ]
  })

const anyCut = fc.record({
  through: fc.record({
    x: fc.double({ min: 90, max: 170, noNaN: true }),
    y: fc.double({ min: 500, max: 700, noNaN: true }),
  }),
  runs: fc.constantFrom('left' as const, 'right' as const),
  slope: fc.double({ min: 0.08, max: 0.5, noNaN: true }),
  gain: fc.double({ min: 1, max: 200, noNaN: true }),
  loss: fc.double({ min: 0, max: 3, noNaN: true }),
})

describe('a leaf made longer', () => {
  it('[X9] covers what its halves cover where they lie', () => {
    let joined = 0
    fc.assert(
      fc.property(wildLeaf, anyCut, (ring, cut) => {
        const makeUp: MakeUp = { how: 'longer', leaf: null, spacing: null, cut }
        const made = madeUpLeaf(makeUp, wood(1, ring), none)
        if (!made) return
        joined++
        // the joint is closed over twice the grid
        expect(regionArea(symmetricDifference(partsTogether(made), made.usable))).toBeLessThan(GRID * 4 * 1500)
        const [near, far] = made.parts.map((part) => transformRegion(part.toMade, part.wood))
        expect(regionArea(intersect(near!, far!))).toBeLessThan(GRID * 4 * 1500)
        // both halves were taken from the leaf, and from different places of it
        const [one, other] = made.parts
        expect(regionArea(intersect(one!.wood, other!.wood))).toBeLessThan(GRID * 4 * 1500)
        expect(regionArea(unite(one!.wood, other!.wood, [[ring]])) - regionArea([[ring]])).toBeLessThan(GRID * 4 * 1500)
      }),
      { numRuns: 60 },
    )
    expect(joined).toBeGreaterThan(40)
  })

  it('[X9] a cut for a run follows the drift of the leaf, one for a leaf does not', () => {
    const cut = { through: point<'leaf'>(130, 600), runs: 'right', slope: 0.2, gain: 60, loss: 1.5 } as const
    const ring = boxRing<'leaf'>(box(0, 0, 260, 1200))
    const seamOf = (leaf: number | null, drift: { x: number; y: number }) =>
      madeUpLeaf({ how: 'longer', leaf, spacing: null, cut }, wood(5, ring, point(drift.x, drift.y)), none)!.seams[0]!
        .edge.a
    const still = seamOf(null, { x: 0, y: 0 })
    const moved = seamOf(null, { x: 0, y: 20 })
    // the line runs to the right by 1 in 5: lower by 20, it lies 4 to the left in the same row
    expect([moved.x - still.x, moved.y - still.y]).toEqual([expect.closeTo(-4, 3), expect.closeTo(0, 3)])
    expect(seamOf(5, { x: 0, y: 20 }).x).toBeCloseTo(still.x, 3)
  })
})

const widening: Widening = {
  how: 'wider',
  leaf: 1,
  spacing: null,
  side: 'right',
  kept: box(0, 0, 200, 1200),
  from: 2,
  offcut: box(0, 0, 60, 1300),
  cut: null,
  strip: box(0, 50, 40, 1200),
  loss: 1.5,
}
const ring = boxRing<'leaf'>(box(0, 0, 200, 1400))

describe('a leaf made wider', () => {
  it('[X10] by a strip from another leaf, less what truing takes', () => {
    const made = madeUpLeaf(widening, wood(1, ring), (leaf) => wood(leaf, ring))!
    expect(boxWidth(regionBox(made.usable))).toBeCloseTo(200 + 40 - 3, 3)
    expect(regionArea(made.usable)).toBeCloseTo(237 * 1200, 0)
    expect(made.seams.map(({ kind, edge }) => [kind, Math.round(edgeLength(edge))])).toEqual([['strip', 1200]])
    expect(made.parts.map(({ leaf }) => leaf)).toEqual([1, 2])
  })

  it('[X10] on the left, the strip comes to lie left of the kept piece', () => {
    const made = madeUpLeaf({ ...widening, side: 'left' }, wood(1, ring), (leaf) => wood(leaf, ring))!
    const { min, max } = regionBox(made.usable)
    expect([min.x, max.x]).toEqual([expect.closeTo(1.5 - 38.5, 3), expect.closeTo(200, 3)])
  })

  it('[X10] by a strip scarfed long enough from a wide short offcut of the same leaf', () => {
    // 800 by 200 left beyond the kept 1200: cut at 1 in 4 and slid by 400 it is 1200 long and 100 wide, less the loss
    const long = boxRing<'leaf'>(box(0, 0, 200, 2000))
    const cut = { through: point<'leaf'>(100, 1600), runs: 'right', slope: 0.25, gain: 400, loss: 0 } as const
    const strip = box(100, 1200, 90, 1200)
    const made = madeUpLeaf(
      { ...widening, leaf: null, from: null, offcut: box(0, 1200, 200, 800), cut, strip },
      wood(1, long),
      none,
    )!
    expect(made.parts).toHaveLength(3)
    expect(regionArea(made.usable)).toBeCloseTo((200 - 1.5 + 90 - 1.5) * 1200, 0)
    expect(made.seams.map(({ kind }) => kind).sort()).toEqual(['scarf', 'strip'])
  })

  it('[X10] no leaf where kept piece and strip claim the same wood, or the other leaf is gone', () => {
    expect(madeUpLeaf({ ...widening, from: null, strip: box(10, 0, 40, 1200) }, wood(1, ring), none)).toBeNull()
    expect(madeUpLeaf(widening, wood(1, ring), none)).toBeNull()
  })
})
