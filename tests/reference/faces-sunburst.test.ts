/**
 * Sunburst faces. Source of the definition: Architectural Woodwork Standards, 1st edition 2009, section 4 (six or more
 * leaves cut to the angle, grain radiating from the centre, book matched). The values are arithmetic from the angle:
 * chord at the rim 2 sin(180°/N), width of a wedge of height 1 is 2 tan(180°/N), its long side 1 / cos(180°/N). Areas by
 * JSTS on the same points.
 */
import { describe, expect, it } from 'vitest'
import { toGridPolygons } from '../../src/core/geometry/clip-grid'
import { boxWidth, regionBox } from '../../src/core/geometry/box'
import { point } from '../../src/core/geometry/point'
import { signedArea } from '../../src/core/geometry/polygon'
import { rectangle } from '../../src/core/job/usual'
import { jstsArea } from '../fixtures/geometry/oracles'
import { allEdges, codesOf, faceOf, flitchOf, partOf, plainLeaves, radial } from '../properties/job-builders'

/** N, chord, width of the triangle, side, each for a radius of 1. */
const TABLE = [
  [6, 1, 1.1547, 1.1547],
  [8, 0.7654, 0.8284, 1.0824],
  [10, 0.618, 0.6498, 1.0515],
  [12, 0.5176, 0.5359, 1.0353],
  [16, 0.3902, 0.3978, 1.0196],
  [20, 0.3129, 0.3168, 1.0125],
  [24, 0.2611, 0.2633, 1.0086],
  [32, 0.196, 0.197, 1.0048],
] as const

const wide = flitchOf({ outline: rectangle(1400, 1400), leaves: plainLeaves(32) })
const square = (radius: number, count: number, more = {}) =>
  faceOf(
    partOf({ width: 2 * radius, length: 2 * radius, overhang: allEdges(0), recipe: radial({ count, ...more }) }),
    wide,
  )

/** The two long edges of the wedge that points to the right, cut at a distance from the tip along them or along the grain. */
function rightWedge(count: number) {
  // the first seam so that the bisector of the first wedge is +x
  const face = square(500, count, { firstSeam: -180 / count })
  const ring = face.pieces[0]!.cell.face.ring
  const tip = ring.find(({ x, y }) => Math.hypot(x, y) < 1e-6)!
  const angles = face.pieces[0]!.cell.face.ring.filter((p) => p !== tip).map(({ x, y }) => Math.atan2(y, x))
  return { from: Math.min(...angles), to: Math.max(...angles), face }
}

describe('wedges', () => {
  it.each(TABLE)('[C3] %i of them: chord %f, triangle %f, side %f', (count, chord, triangle, side) => {
    const { from, to } = rightWedge(count)
    expect(2 * Math.sin((to - from) / 2)).toBeCloseTo(chord, 4)
    expect(Math.tan(to) - Math.tan(from)).toBeCloseTo(triangle, 4)
    expect(1 / Math.cos(to)).toBeCloseTo(side, 4)
  })

  it.each([
    [8, 344.4],
    [12, 232.9],
    [16, 175.6],
  ])('[C3] %i of radius 450 mm: %f mm at the rim', (count, chord) => {
    const { from, to } = rightWedge(count)
    expect(900 * Math.sin((to - from) / 2)).toBeCloseTo(chord, 1)
  })

  it.each([6, 7, 8, 12, 24])('[C3] %i close round: the angles of their tips are 360° in all', (count) => {
    const face = square(300, count)
    const sum = face.pieces.reduce((all, { cell }) => all + tipAngle(cell.face.ring), 0)
    expect((sum * 180) / Math.PI).toBeCloseTo(360, 6)
  })

  it.each([6, 8, 12, 24])('[C3] %i: the rough piece overruns its tip by the allowance / sin(180°/N)', (count) => {
    // wedge edges only: at the diameter another allowance is in force
    const face = faceOf(
      partOf({ width: 600, length: 600, allowance: 3, laterAllowance: 3, recipe: radial({ count, cutFull: 0 }) }),
      wide,
    )
    for (const { rough } of face.pieces)
      expect(-Math.min(...rough.map(({ y }) => y))).toBeCloseTo(3 / Math.sin(Math.PI / count), 6)
  })

  it.each([
    [6, 0.05],
    [8, 0.1],
    [12, 1.3],
    [9, 2],
  ])(
    '[A3] %i cut %f° full: the point stays, both long edges turn by half of it, and the play holds it',
    (count, full) => {
      // on a round sheet of radius R the wedge is 2·R·sin(θ/2) wide where it is widest; the rough one is wider by what its
      // long edges lose, square to them, and its tip overruns by the allowance / sin(θ/2)
      const [radius, lost] = [310, 3]
      const part = partOf({
        width: 2 * (radius - 10),
        length: 2 * (radius - 10),
        outline: { shape: 'circle' },
        allowance: lost,
        laterAllowance: lost,
        recipe: radial({ count, cutFull: full }),
      })
      const face = faceOf(part, wide)
      const half = ((360 / count + full) * Math.PI) / 360
      for (const { cell, rough } of face.pieces) {
        const { ring } = cell.toCut
        expect(Math.min(...ring.map(({ x, y }) => Math.hypot(x, y)))).toBeCloseTo(0, 9)
        const angles = ring.filter(({ x, y }) => Math.hypot(x, y) > 1).map(({ x, y }) => Math.atan2(x, y))
        expect(Math.max(...angles)).toBeCloseTo(half, 9)
        expect(Math.min(...angles)).toBeCloseTo(-half, 9)
        expect(Math.max(...ring.map(({ x }) => x)) / radius).toBeCloseTo(Math.sin(half), 4)
        expect(-Math.min(...rough.map(({ y }) => y))).toBeCloseTo(lost / Math.sin(half), 6)
        // as it lies in the face it keeps its share
        expect(tipAngle(cell.face.ring)).toBeCloseTo((2 * Math.PI) / count, 9)
      }
      const widest = Math.max(...face.pieces.map(({ rough }) => Math.max(...rough.map(({ x }) => x))))
      expect(Math.abs(widest - radius * Math.sin(half) - lost * Math.cos(half))).toBeLessThan(0.1)
      const play = regionBox(face.play.region)
      expect(boxWidth(play)).toBeCloseTo(1400 - 2 * widest, 2)
    },
  )

  it('[A3] a leaf that holds a wedge of its share, but not one cut full, has no play', () => {
    const leaf = flitchOf({ outline: rectangle(2 * 300 * Math.sin(Math.PI / 12) + 1, 1400), leaves: plainLeaves(12) })
    const on = (cutFull: number) => {
      const recipe = radial({ count: 12, cutFull })
      return faceOf(
        partOf({
          width: 600,
          length: 600,
          outline: { shape: 'circle' },
          overhang: allEdges(0),
          allowance: 0,
          laterAllowance: 0,
          recipe,
        }),
        leaf,
      ).play.region
    }
    // 1 mm of room: 0.05° more take a quarter of it, 0.25° five quarters
    expect(on(0)).not.toEqual([])
    expect(on(0.05)).not.toEqual([])
    expect(on(0.25)).toEqual([])
  })

  it('[C3] areas agree with JSTS on the same points', () => {
    for (const count of [6, 9, 12, 24])
      for (const firstSeam of [0, 17.3]) {
        const face = faceOf(
          partOf({
            width: 431.7,
            length: 612.3,
            overhang: { top: 3, right: 7.7, bottom: 12, left: 0.4 },
            recipe: radial({ count, firstSeam }),
          }),
          wide,
        )
        const { min, max } = face.sizes.sheet
        const sheet = toGridPolygons<'panel'>([[[min, point(max.x, min.y), max, point(min.x, max.y)]]])
        for (const { cell } of face.pieces) {
          // the wedge by its angle alone, far beyond the sheet, cut by the other library
          const nth = Number(cell.id.slice(1)) - 1
          const ray = (k: number) => ((firstSeam + (360 * k) / count) * Math.PI) / 180
          const far = (angle: number) => point<'panel'>(5000 * Math.cos(angle), 5000 * Math.sin(angle))
          const wedge = toGridPolygons<'panel'>([[[point<'panel'>(0, 0), far(ray(nth)), far(ray(nth + 1))]]])
          const area = jstsArea('intersection', wedge, sheet)! / 1e6
          expect(Math.abs(signedArea(cell.face.ring) - area) / area).toBeLessThan(1e-5)
        }
      }
  })
})

function tipAngle(ring: readonly { x: number; y: number }[]): number {
  const i = ring.findIndex(({ x, y }) => Math.hypot(x, y) < 1e-6)
  const [before, after] = [ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!]
  return Math.acos(
    (before.x * after.x + before.y * after.y) / (Math.hypot(before.x, before.y) * Math.hypot(after.x, after.y)),
  )
}

describe('the definition', () => {
  it('[C3] six or more: fewer are not laid', () => {
    for (const count of [1, 4, 5] as const) expect(square(300, count).count).toBe(6)
    expect(
      faceOf(partOf({ width: 300, length: 300, recipe: radial({ count: 'fewest' }) }), wide).count,
    ).toBeGreaterThanOrEqual(6)
  })

  it('[C3] an even number is a mirror at every seam, of an odd number one seam is not', () => {
    for (const count of [6, 8, 12])
      expect(square(300, count).seams.every(({ meets }) => meets === 'mirrors')).toBe(true)
    for (const count of [7, 9]) {
      const face = square(300, count)
      expect(face.seams.filter(({ meets }) => meets !== 'mirrors')).toHaveLength(1)
      expect(codesOf(face)).toContain('figure-breaks')
    }
  })

  it('[C3] the first seam lies at 0°, which is +x, and the seams cross at the centre', () => {
    const face = square(300, 8)
    expect(face.seams[0]!.edge).toEqual({
      a: { x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) },
      b: { x: 300, y: expect.closeTo(0, 9) },
    })
    expect([face.centre.x, face.centre.y]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)])
  })
})
