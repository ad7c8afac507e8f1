/**
 * Leaves of a simulated log laid down anyhow, and their drift found again.
 *
 * [R9] With wild edges the drift of a flitch is found to 1 mm a leaf along and 0.5 mm in all across, in flat-cut walnut whose
 *   crowns wander by 17 mm a leaf; read for the figure, the wandering stays in.
 * [R10] Without wild edges what grows evenly is left out, and a leaf that lies off the others is found.
 * [R11] Where pictures don't tell, wild edges do; where neither does, a leaf lies as the one before it. A candidate chosen
 *   by hand counts.
 */
import { describe, expect, it } from 'vitest'
import { edgeDrift } from '../../src/core/figure/align/edge-drift'
import { evenGrowth } from '../../src/core/figure/align/even-growth'
import { figureDrift } from '../../src/core/figure/align/drift'
import type { FoundShift } from '../../src/core/figure/align/find-shift'
import { driftLooks, registered, type DriftLook } from '../../src/core/figure/align/registration'
import { withinOutline } from '../../src/core/figure/align/within-outline'
import { demoFlitch } from '../../src/core/figure/demo-flitch'
import { leafOutline } from '../../src/core/figure/log/leaf-outline'
import { add, point, subtract, type Point } from '../../src/core/geometry/point'
import { leafLying, logOf } from './known-shifts'

const lies: readonly Point<'leaf'>[] = [
  point(0, 0),
  point(1.4, -3),
  point(-0.8, 2.6),
  point(0.3, 25),
  point(1.9, -1.2),
  point(-1.1, 3.4),
]

const looksAt = (outlines: readonly DriftLook['outline'][]): readonly DriftLook[] =>
  outlines.map((outline, i) => ({
    leaf: i + 1,
    outline,
    box: { min: point(0, 0), max: point(1, 1) },
    drift: point(0, 0),
    place: i,
  }))

const shift = (across: number, along: number, trust: FoundShift['trust'] = 'clear'): FoundShift => ({
  trust,
  candidates: [
    { across, along, score: 0.8 },
    { across, along: along + 9, score: 0.75 },
  ],
  before: null,
})

describe('registration of a flitch', () => {
  const log = logOf('walnut', 4177)
  const pictures = lies.map(({ x, y }, i) => leafLying(log, i + 3, { dx: x, dy: y }, { length: 700, pxPerMm: 0.4 }))
  const found = pictures.slice(1).map((picture, i) => figureDrift(pictures[i]!, picture))
  const wild = looksAt(lies.map((by, i) => leafOutline(log, i + 3).map((p) => add(p, by))))

  it('[R9] by pictures and wild edges', () => {
    const { leaves, wander, by } = registered(wild, found, 'log')
    expect(by).toBe('edges')
    for (const [i, { drift }] of leaves.entries()) {
      const off = subtract(drift, lies[i]!)
      expect(Math.abs(off.x)).toBeLessThan(0.5)
      expect(Math.abs(off.y)).toBeLessThan(1 + i)
    }
    expect(wander![0]).toBeGreaterThan(14)
    expect(wander![1]).toBeLessThan(21)
    const figure = registered(wild, found, 'figure').leaves.at(-1)!.drift
    expect(figure.y).toBeCloseTo(
      found.reduce((sum, { candidates }) => sum + candidates[0]!.along, 0),
      0,
    )
  })

  it('[R10] by what does not grow evenly', () => {
    const square = looksAt(lies.map(() => [point(0, 0), point(200, 0), point(200, 900), point(0, 900)]))
    const { leaves, by } = registered(square, found, 'log')
    expect(by).toBe('even growth')
    expect(leaves[3]!.drift.y - leaves[2]!.drift.y).toBeGreaterThan(18)
    expect(evenGrowth([0, 1, 2, 3, 4, 5, 6], [0, 17, 34, 76, 68, 85, 102])[3]).toBeCloseTo(51, 3)
    expect(evenGrowth([0, 3], [0, 50])).toEqual([0, 50].map((v) => expect.closeTo(v, 6) as number))
  })

  it('[R11] without a picture that tells', () => {
    const square = looksAt(lies.slice(0, 4).map(() => [point(0, 0), point(200, 0), point(200, 900), point(0, 900)]))
    const some = [shift(1, 10), null, shift(-2, 99, 'any')]
    expect(registered(square, some, 'figure').leaves.map(({ drift }) => drift)).toEqual([
      point(0, 0),
      point(1, 10),
      point(1, 10),
      point(-1, 10),
    ])
    expect(registered(square, some, 'figure', () => 1).leaves[1]!.drift).toEqual(point(1, 19))
    const byEdges = registered(
      wild,
      wild.slice(1).map(() => null),
      'log',
    )
    expect(byEdges.wander).toBeNull()
    expect(Math.abs(byEdges.leaves[3]!.drift.y - byEdges.leaves[2]!.drift.y - 22.4)).toBeLessThan(3)
    expect(edgeDrift(square[0]!.outline, square[1]!.outline)).toBeNull()
  })

  it('[R11] is looked at about the drift that leaves have, within their outlines', () => {
    const flitch = demoFlitch()
    const leaves = flitch.leaves.map((leaf) => (leaf.number === 7 ? { ...leaf, drift: point<'leaf'>(4, 30) } : leaf))
    const looks = driftLooks({ ...flitch, leaves, missing: [{ after: 2, count: 3 }] }, (leaf) => leaf !== 3)
    expect(looks.slice(0, 4).map(({ leaf, place }) => [leaf, place])).toEqual([
      [1, 0],
      [2, 1],
      [4, 6],
      [5, 7],
    ])
    const [one, seventh] = [looks[0]!, looks.find(({ leaf }) => leaf === 7)!]
    expect(subtract(seventh.box.min, one.box.min)).toEqual(point(4, 30))
    const triangle = [point<'leaf'>(0, 0), point<'leaf'>(10, 0), point<'leaf'>(0, 10)]
    const plain = { width: 10, height: 10, pxPerMm: 1, origin: point<'leaf'>(0, 0), values: new Float32Array(100) }
    const { known } = withinOutline({ ...plain, known: new Uint8Array(100).fill(1) }, triangle)
    expect([known[0], known[8], known[9], known[90], known[99]]).toEqual([1, 1, 1, 1, 0])
  })
})
