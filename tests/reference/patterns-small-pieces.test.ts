/**
 * Herringbones, parquets and planked faces against what is known of them from elsewhere.
 *
 * [P9] A strip w wide at θ to the width of its column takes w / cos θ of the column and is colwidth / cos θ long along its
 *   middle. Source: projections, by hand. The strips of neighbouring columns mirror about the line between them. Source:
 *   trade glossaries on herringbone or V-book.
 * [P10] Blocks of a parquet are turned by 90° against their neighbours. Source: from memory, common practice.
 * [P11] Planked: strips of unequal width in a chosen order. Source: a trade magazine's glossary.
 * [P12] Wood can be cut once. Source: common sense.
 */
import { describe, expect, it } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { signedArea } from '../../src/core/geometry/polygon'
import { rectangle } from '../../src/core/job/usual'
import {
  allEdges,
  codesOf,
  faceOf,
  flitchOf,
  herringbone,
  parquet,
  partOf,
  plainLeaves,
  planks,
} from '../properties/job-builders'

const wide = flitchOf({ outline: rectangle(420, 2400), leaves: plainLeaves(40) })
const bare = { overhang: allEdges(0), allowance: 0, laterAllowance: 0 }
const pieceOf = (face: DerivedPart, id: string) => face.pieces.find(({ cell }) => cell.id === id)!

/** Direction of the grain, degrees from +x towards +y, between 0 and 180. */
function grainIn(face: DerivedPart, id: string): number {
  const { c, d } = pieceOf(face, id).logToPanel
  return ((Math.atan2(d, c) * 180) / Math.PI + 360) % 180
}

describe('herringbone', () => {
  it.each([
    [45, 100, 300, 141.421, 424.264],
    [30, 90, 200, 103.923, 230.94],
    [60, 60, 150, 120, 300],
  ])(
    '[P9] at %f°, %f mm strips in a column of %f mm: %f mm of it each, %f mm long',
    (angle, w, column, takes, long) => {
      const recipe = herringbone({ angle, stripWidth: w })
      const face = faceOf(partOf({ ...bare, width: 2 * column, length: 900, recipe }), wide)
      const ring = pieceOf(face, 'L1+0').cell.face.ring
      expect(ring).toHaveLength(4)
      expect(signedArea(ring)).toBeCloseTo(takes * column, 0)
      expect(signedArea(ring)).toBeCloseTo(long * w, 0)
      const [left, right] = [grainIn(face, 'L1+0'), grainIn(face, 'R1+0')]
      // pointing up: the left column rises to the right, the right one falls
      expect([left, right]).toEqual([expect.closeTo(180 - angle, 9), expect.closeTo(angle, 9)])
      const spine = face.seams.filter(({ kind }) => kind === 'mitre')
      expect(spine.map(({ meets }) => meets)).toEqual(['mirrors'])
      expect(spine[0]!.jump).toBeCloseTo(0, 9)
    },
  )

  it('[P9] puts the numbered ends where it says, and the points', () => {
    for (const points of ['up', 'down'] as const)
      for (const numberedEnds of ['inside', 'outside'] as const) {
        const face = faceOf(partOf({ width: 600, length: 600, recipe: herringbone({ points, numberedEnds }) }), wide)
        // the grain's way from numbered to far end, in the left column
        const { c, d } = pieceOf(face, 'L1+0').logToPanel
        expect(Math.sign(c)).toBe(numberedEnds === 'inside' ? -1 : 1)
        expect(Math.sign(c) * Math.sign(d)).toBe(points === 'up' ? -1 : 1)
      }
  })

  it('[C2] keeps the names of its strips when the panel grows', () => {
    const idsAt = (length: number) =>
      faceOf(partOf({ width: 500, length, recipe: herringbone() }), wide).pieces.map(({ cell }) => cell.id)
    const [small, large] = [idsAt(400), idsAt(800)]
    expect(small.length).toBeGreaterThan(6)
    expect(small.every((id) => large.includes(id))).toBe(true)
    const middleOf = (length: number) => {
      const ring = pieceOf(faceOf(partOf({ width: 500, length, recipe: herringbone() }), wide), 'R1+1').cell.face.ring
      return ring.map(({ y }) => y).sort((a, b) => a - b)[0]!
    }
    expect(middleOf(600)).toBeCloseTo(middleOf(800), 9)
  })
})

describe('parquet', () => {
  it('[P10] turns grain by a quarter from block to block', () => {
    const face = faceOf(partOf({ width: 600, length: 400, recipe: parquet({ columns: 3, rows: 2 }) }), wide)
    const rows = ['T1', 'B1'].map((row) => ['L1', 'C', 'R1'].map((column) => Math.round(grainIn(face, row + column))))
    expect(rows).toEqual([
      [90, 0, 90],
      [0, 90, 0],
    ])
  })

  it('[P10] has equal strips along the grain of a basket’s blocks', () => {
    const recipe = parquet({ columns: 2, rows: 2, strips: 3, firstBlock: 'lying' })
    const face = faceOf(partOf({ ...bare, width: 600, length: 480, recipe }), wide)
    expect(face.pieces).toHaveLength(12)
    const size = (id: string) => {
      const { ring } = pieceOf(face, id).cell.face
      const [x, y] = [ring.map((p) => p.x), ring.map((p) => p.y)]
      return [Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y)]
    }
    for (const s of [1, 2, 3]) {
      expect(size(`T1L1.${s}`)).toEqual([expect.closeTo(300, 9), expect.closeTo(80, 9)])
      expect(size(`T1R1.${s}`)).toEqual([expect.closeTo(100, 9), expect.closeTo(240, 9)])
    }
  })
})

describe('pieces from one leaf', () => {
  it.each([1, 2, 5, 9])('[P12] a parquet from %i leaves: nothing is used twice, all in sound wood', (count) => {
    const part = partOf({ width: 300, length: 360, recipe: parquet({ columns: 3, rows: 3, count }) })
    const face = faceOf(part, flitchOf({ outline: rectangle(215, 4000) }))
    expect(new Set(face.pieces.map(({ leaf }) => leaf!.number)).size).toBe(count)
    expect(codesOf(face)).not.toContain('used-twice')
    expect(codesOf(face)).not.toContain('play-empty')
  })

  it('[P12] a herringbone takes the fewest leaves that will do, as many for each column', () => {
    const face = faceOf(partOf({ width: 420, length: 520, recipe: herringbone({ stripWidth: 90 }) }))
    const used = [...new Set(face.pieces.map(({ leaf }) => leaf!.number))]
    expect(used.length).toBe(face.count)
    expect(face.count % 2).toBe(0)
    expect(codesOf(face)).not.toContain('used-twice')
    expect(face.play.region.length).toBeGreaterThan(0)
    const fewer = faceOf(
      partOf({ width: 420, length: 520, recipe: herringbone({ stripWidth: 90, count: face.count - 2 }) }),
    )
    expect(face.count === 2 || fewer.play.region.length === 0).toBe(true)
  })
})

describe('planked', () => {
  const widthsOf = (face: DerivedPart) => face.plan.columns!.map(({ from, to }) => to - from)

  it('[P11] has the widths typed, and what is left', () => {
    const recipe = planks({ look: 'planked', widths: [140, 95, 180] })
    const face = faceOf(partOf({ width: 520, recipe }), wide)
    expect(widthsOf(face)).toEqual([140, 95, 180, 105].map((w) => expect.closeTo(w, 9)))
    // the panel made narrower cuts off what it does not reach
    expect(widthsOf(faceOf(partOf({ width: 230, recipe }), wide))).toEqual([140, 90].map((w) => expect.closeTo(w, 9)))
  })

  it('[P11] draws the same widths from the same seed, and others from another', () => {
    const drawn = (seed: number) => widthsOf(faceOf(partOf({ width: 900, recipe: planks({ seed, count: 6 }) }), wide))
    expect(drawn(7)).toEqual(drawn(7))
    expect(drawn(7)).not.toEqual(drawn(8))
    for (let seed = 1; seed <= 200; seed++) {
      const widths = drawn(seed)
      expect(widths.reduce((sum, w) => sum + w)).toBeCloseTo(900, 9)
      // shares from 65 to 135 % of one another's mean
      expect(Math.max(...widths) / Math.min(...widths)).toBeLessThanOrEqual(1.35 / 0.65 + 1e-9)
    }
  })

  it('[P11] shuffles leaves without losing one', () => {
    const face = faceOf(partOf({ width: 900, recipe: planks({ seed: 3, count: 8, order: 'shuffled' }) }), wide)
    const leaves = face.pieces.map(({ leaf }) => leaf!.number)
    expect(leaves).not.toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    expect([...leaves].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    expect(codesOf(face)).not.toContain('sequence-broken')
  })
})
