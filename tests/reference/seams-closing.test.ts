/**
 * Closing a sunburst. Source of the values: arithmetic, gap at the rim = radius x count x error in radians (small
 * angles), to three figures in inches and two decimals in mm; and a maker's account of a template of 30.2° for twelve
 * wedges, whose halves add up to 181.2°: 0.6° off each edge, 0.188 in at 18 in or 4.7 mm at 450 mm.
 *
 * [S24] What opens or overlaps at the last joint, and what truing the halves takes, is the chord and the sine of the sum.
 */
import { describe, expect, it } from 'vitest'
import { closing, leftToPlane } from '../../src/core/seams/closing'

const degrees = (angle: number) => (angle * Math.PI) / 180

describe('[S24] the last joint of a sunburst', () => {
  it.each([
    { count: 8, inches: 0.251, mm: 3.14 },
    { count: 12, inches: 0.377, mm: 4.71 },
    { count: 16, inches: 0.503, mm: 6.28 },
    { count: 24, inches: 0.754, mm: 9.42 },
  ])('$count wedges: $inches in at 18 in for 0.1°, $mm mm at 450 mm for 0.05°', ({ count, inches, mm }) => {
    expect(closing({ count, radius: 18 }, degrees(0.1)).opening).toBeCloseTo(inches, 3)
    expect(closing({ count, radius: 450 }, degrees(-0.05)).opening).toBeCloseTo(mm, 2)
  })

  it('a template of 30.2° for twelve', () => {
    const wrong = degrees(30.2 - 360 / 12)
    expect(closing({ count: 12, radius: 18 }, wrong).truing).toBeCloseTo(0.188, 3)
    expect(closing({ count: 12, radius: 450 }, wrong).truing).toBeCloseTo(4.7, 1)
  })

  it('is what polygons laid one after the other leave open', () => {
    for (const count of [6, 8, 12, 24])
      for (const error of [-0.4, -0.05, 0.1, 0.3].map(degrees)) {
        // the rays of the wedges, laid one by one from +x
        const last = Array.from({ length: count }, () => (2 * Math.PI) / count + error).reduce((sum, a) => sum + a, 0)
        const [radius, end] = [450, { x: 450 * Math.cos(last), y: 450 * Math.sin(last) }]
        const found = closing({ count, radius }, error)
        expect(found.opening).toBeCloseTo(Math.hypot(end.x - radius, end.y), 9)
        expect(found.state).toBe(end.y > 0 ? 'overlaps' : 'gapes')
        // a half laid with its middle upright: how far its edges fall short of, or pass, the line across
        const half = (last / 2 - Math.PI) / 2
        expect(found.truing).toBeCloseTo(Math.abs(radius * Math.sin(half)), 9)
      }
  })

  it('[A4] wedges cut full leave the sum of it to plane off each half', () => {
    for (const count of [6, 8, 12, 24])
      for (const full of [0.05, 0.1, 0.7].map(degrees)) {
        const left = leftToPlane({ count, radius: 450 }, full)!
        // the wedges of a half laid side by side from +x: what passes the line straight across
        let end = 0
        for (let i = 0; i < count / 2; i++) end += (2 * Math.PI) / count + full
        expect(left.over).toBeCloseTo(end - Math.PI, 9)
        expect(left.inAll).toBeCloseTo(-450 * Math.sin(end), 9)
        // shared between both edges it is what truing takes
        expect(left.each).toBeCloseTo(closing({ count, radius: 450 }, full).truing!, 9)
      }
    expect(leftToPlane({ count: 9, radius: 450 }, degrees(0.1))).toBeNull()
  })

  it('an odd count has no halves, and exact wedges close', () => {
    expect(closing({ count: 9, radius: 450 }, degrees(0.1)).truing).toBeNull()
    expect(closing({ count: 12, radius: 450 }, 0)).toEqual({ state: 'closes', opening: 0, truing: 0 })
  })
})
