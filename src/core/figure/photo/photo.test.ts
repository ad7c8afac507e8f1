import { describe, expect, it } from 'vitest'
import { distance, point } from '../../geometry/point'
import {
  composePhoto,
  photoSet,
  TUNING_TABLES,
  UNSEEN_TABLES,
  type PhotoOptions,
} from '../../../../tests/photographs/compose'
import { judge } from '../../../../tests/photographs/judge'
import { applyHomography, fitHomography, invertHomography } from './homography'
import { distorted, lensOf, undistorted } from './lens'
import { longestContour, simplifiedRing } from './contour'
import { rectangleCorners, viewFromCorners, viewFromMarks } from './photo-view'
import { photographOf } from './photograph'
import { findRingMarks } from './ring-marks'

/** Small, so that many can be tried: rings of 40 pixels. */
const small = (options: PhotoOptions): PhotoOptions => ({ ...options, width: 840, height: 400, leafLength: 520 })
const [walnut, maple, oak] = photoSet(TUNING_TABLES, 500, 12).map(small) as [PhotoOptions, PhotoOptions, PhotoOptions]

describe('the map between two views of a plane', () => {
  const from = [point<'leaf'>(0, 0), point<'leaf'>(600, 0), point<'leaf'>(600, 2500), point<'leaf'>(0, 2500)]
  const to = [
    point<'photo'>(210, 2890),
    point<'photo'>(180, 300),
    point<'photo'>(3700, 420),
    point<'photo'>(3905, 2790),
  ]

  it('[I1] carries four corners exactly, there and back', () => {
    const map = fitHomography(from, to)!
    from.forEach((p, i) => expect(distance(applyHomography(map, p), to[i]!)).toBeLessThan(1e-6))
    const back = invertHomography(map)
    to.forEach((p, i) => expect(distance(applyHomography(back, p), from[i]!)).toBeLessThan(1e-6))
  })

  it('[I1] keeps a middle where the diagonals cross', () => {
    const map = fitHomography(from, to)!
    const middle = applyHomography(map, point(300, 1250))
    const [a, b, c, d] = to as [typeof middle, typeof middle, typeof middle, typeof middle]
    const off = (p: typeof middle, q: typeof middle) =>
      Math.abs((q.x - p.x) * (middle.y - p.y) - (q.y - p.y) * (middle.x - p.x)) / distance(p, q)
    expect(off(a, c)).toBeLessThan(1e-6)
    expect(off(b, d)).toBeLessThan(1e-6)
  })

  it('[I1] is not made of corners in a line', () => {
    const line = [0, 1, 2, 3].map((i) => point<'photo'>(100 * i, 50 * i))
    const size = { width: 400, height: 300 }
    const rectangle = { across: 300, along: 600, diagonal: null }
    const view = viewFromCorners(line, size, rectangle, { sideUp: 'numbered', dotAt: 'numbered end' })
    expect(view).toEqual({ ok: false, reason: { trouble: 'corners in a line' } })
  })

  it('[I9] is not made of corners that go against the clock, which would mirror the leaf', () => {
    const size = { width: 4000, height: 3000 }
    const rectangle = { across: 600, along: 2500, diagonal: null }
    for (const sideUp of ['numbered', 'other'] as const) {
      const lie = { sideUp, dotAt: 'numbered end' } as const
      expect(viewFromCorners(to, size, rectangle, lie).ok).toBe(true)
      const reason = { trouble: 'corners against the clock' }
      expect(viewFromCorners([...to].reverse(), size, rectangle, lie)).toEqual({ ok: false, reason })
    }
  })

  it('[I2] undoes what a lens does', () => {
    const lens = lensOf(4000, 3000, -0.08)
    for (const p of [point<'photo'>(0, 0), point<'photo'>(3900, 200), point<'photo'>(2000, 1400)])
      expect(distance(distorted(lens, undistorted(lens, p)), p)).toBeLessThan(1e-3)
  })
})

describe('which way the leaf lies', () => {
  const rectangle = { across: 400, along: 1000, diagonal: null }
  it.each([
    { sideUp: 'numbered', dotAt: 'numbered end', first: [0, 0], turns: 1 },
    { sideUp: 'numbered', dotAt: 'far end', first: [400, 1000], turns: 1 },
    { sideUp: 'other', dotAt: 'numbered end', first: [400, 0], turns: -1 },
    { sideUp: 'other', dotAt: 'far end', first: [0, 1000], turns: -1 },
  ] as const)(
    '[I3] $sideUp side up, dot at the $dotAt: first corner at $first, mirrored if the number is down',
    (lie) => {
      const corners = rectangleCorners(rectangle, lie)
      expect([corners[0]!.x, corners[0]!.y]).toEqual(lie.first)
      const [a, b, c] = corners as [(typeof corners)[0], (typeof corners)[0], (typeof corners)[0]]
      expect(Math.sign((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x))).toBe(lie.turns)
    },
  )
})

describe('ring marks', () => {
  const { pixels, marks, rectangle } = composePhoto(walnut)

  it('[I4] are found, all four and nothing else, to a quarter of a pixel, and the dotted one told', () => {
    const found = findRingMarks(photographOf(pixels))
    expect(found).toHaveLength(4)
    for (const mark of marks) expect(Math.min(...found.map(({ centre }) => distance(centre, mark)))).toBeLessThan(0.25)
    const [dotted] = found.filter(({ isDotted }) => isDotted)
    expect(distance(dotted!.centre, marks[0]!)).toBeLessThan(0.25)
    expect(found.filter(({ isDotted }) => isDotted)).toHaveLength(1)
  })

  it('[I4] are asked for when there are too few, and when none has the dot', () => {
    const lie = { sideUp: 'numbered', dotAt: 'numbered end' } as const
    const found = findRingMarks(photographOf(pixels))
    expect(viewFromMarks(found.slice(1), pixels, rectangle, lie)).toEqual({
      ok: false,
      reason: { trouble: 'too few marks', found: 3 },
    })
    const bare = found.map((mark) => ({ ...mark, isDotted: false }))
    expect(viewFromMarks(bare, pixels, rectangle, lie)).toEqual({ ok: false, reason: { trouble: 'no dot' } })
  })

  it.each([
    { by: 'along', factor: 1.3 },
    { by: 'along', factor: 0.75 },
    { by: 'across', factor: 1.3 },
  ] as const)('[I10] tell a side given $factor of what it is $by, by the size of their rings', ({ by, factor }) => {
    const lie = { sideUp: 'numbered', dotAt: 'numbered end' } as const
    const wrong = { ...rectangle, diagonal: null, [by]: rectangle[by] * factor }
    const view = viewFromMarks(findRingMarks(photographOf(pixels)), pixels, wrong, lie)
    expect(view).toMatchObject({ ok: false, reason: { trouble: 'ring size', expected: 40 } })
    if (!view.ok && view.reason.trouble === 'ring size') expect(view.reason.measured / 40 / factor).toBeCloseTo(1, 1)
  })

  it('[I2] six of them tell what the lens does', () => {
    const bent = composePhoto({ ...walnut, k1: -0.05, middleMarks: true, blocks: 0 })
    const found = findRingMarks(photographOf(bent.pixels))
    expect(found).toHaveLength(6)
    const view = viewFromMarks(found, bent.pixels, bent.rectangle, { sideUp: 'numbered', dotAt: 'numbered end' })
    expect(view.ok && view.value.view.lens.k1).toBeCloseTo(-0.05, 2)
  })
})

describe('the outline', () => {
  it.each([
    { of: 'walnut on green cloth', options: walnut },
    { of: 'maple on green cloth', options: maple },
    { of: 'oak on a blue sheet', options: { ...oak, table: UNSEEN_TABLES[0]! } },
    {
      of: 'maple on white paper, its shadow very deep and wide',
      options: { ...maple, table: TUNING_TABLES[2]!, contact: { across: 8, along: 3, depth: 0.75 } },
    },
  ])('[I5] of $of is true to half a millimetre', ({ options }) => {
    const found = judge(composePhoto(options))
    expect(found.straight).toBeLessThan(0.4)
    expect(found.outcome).toBe('good')
    expect(found.mean).toBeLessThan(0.5)
    expect(found.iou).toBeGreaterThan(0.99)
  })

  it.each([{ tables: TUNING_TABLES[4]! }, { tables: UNSEEN_TABLES[4]! }])(
    '[I6] on $tables.name, which has the colour of wood, never comes without a warning',
    ({ tables }) => {
      const found = judge(composePhoto({ ...maple, table: tables }))
      expect(found.outcome).not.toBe('good')
      expect(found.why).toContain('wood-coloured table')
    },
  )
})

describe('a contour', () => {
  const size = 60
  const disc = Float32Array.from({ length: size * size }, (_, i) => {
    const away = Math.hypot((i % size) + 0.5 - 30, Math.floor(i / size) + 0.5 - 28)
    return Math.min(Math.max(20.5 - away, 0), 1)
  })

  it('[I5] runs where the field has the level', () => {
    const ring = longestContour(disc, size, size, 0.5)!
    for (const p of ring) expect(Math.abs(Math.hypot(p.x - 30, p.y - 28) - 20)).toBeLessThan(0.1)
  })

  it('[I5] keeps within the tolerance with far fewer points', () => {
    const ring = longestContour(disc, size, size, 0.5)!
    const kept = simplifiedRing(ring, 0.3)
    expect(kept.length).toBeLessThan(ring.length / 4)
    for (const p of kept) expect(ring).toContainEqual(p)
  })
})
