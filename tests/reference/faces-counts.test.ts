/**
 * Leaf counts, widths and seams of strip faces. Source of the definitions: Architectural Woodwork Standards, 1st edition
 * 2009, section 4 and appendix B (running, balance and centre balance match). The values are arithmetic from these
 * definitions, done by hand: sheet G = W + 2a, usable width u = raw width - 2 x jointing.
 */
import { describe, expect, it } from 'vitest'
import {
  balanceCountAfter,
  balanceCountBefore,
  centreCountAfter,
  centreCountBefore,
  runningCount,
} from '../../src/core/fit/leaf-count'
import { rectangle } from '../../src/core/job/usual'
import type { StripRecipe } from '../../src/core/patterns/recipe'
import { allEdges, codesOf, faceOf, findingsOf, flitchOf, partOf, strips } from '../properties/job-builders'

const IN = 25.4

/** Width, overhang, raw leaf, jointing; then running, balance and centre balance before trimming, and after it. */
const ROWS = [
  {
    of: '48 in, 9 in leaves',
    W: 48 * IN,
    a: 0,
    raw: 9 * IN,
    j: 0,
    running: 6,
    last: 3 * IN,
    before: [6, 6],
    after: [6, 6],
  },
  {
    of: '44 in, 9 in leaves',
    W: 44 * IN,
    a: 0,
    raw: 9 * IN,
    j: 0,
    running: 5,
    last: 8 * IN,
    before: [5, 6],
    after: [5, 6],
  },
  {
    of: '48 in, trim 1/2',
    W: 48 * IN,
    a: 0.5 * IN,
    raw: 9 * IN,
    j: 0.125 * IN,
    running: 6,
    last: 5.25 * IN,
    before: [6, 6],
    after: [6, 6],
  },
  {
    of: '30 in, trim 1/2',
    W: 30 * IN,
    a: 0.5 * IN,
    raw: 6.5 * IN,
    j: 0.125 * IN,
    running: 5,
    last: 6 * IN,
    before: [5, 6],
    after: [6, 6],
  },
  { of: '1200 mm', W: 1200, a: 10, raw: 180, j: 3, running: 8, last: 2, before: [8, 8], after: [8, 8] },
  { of: '600 mm', W: 600, a: 10, raw: 215, j: 3, running: 3, last: 202, before: [3, 4], after: [4, 4] },
] as const

type Row = (typeof ROWS)[number]

const derived = ({ W, a, raw, j }: Row, recipe: Partial<StripRecipe>) =>
  faceOf(
    partOf({ width: W, overhang: allEdges(a), allowance: j, recipe: strips({ count: 'fewest', ...recipe }) }),
    flitchOf({ outline: rectangle(raw, 2400) }),
  )

const widthsOf = (face: ReturnType<typeof faceOf>) =>
  face.pieces.map(({ cell }) => {
    const xs = cell.face.ring.map(({ x }) => x)
    return Math.max(...xs) - Math.min(...xs)
  })

describe('leaf counts', () => {
  it.each(ROWS)('[F11] $of by width alone', ({ W, a, raw, j, running, before, after }) => {
    const demand = { width: W, left: a, right: a, usable: raw - 2 * j }
    expect(runningCount(demand)).toBe(running)
    expect([balanceCountBefore(demand), centreCountBefore(demand)]).toEqual(before)
    expect([balanceCountAfter(demand), centreCountAfter(demand)]).toEqual(after)
  })

  it.each(ROWS)('[F11] $of laid on leaves', (row) => {
    const count = (recipe: Partial<StripRecipe>) => derived(row, recipe).count
    expect(count({ arrangement: 'running' })).toBe(row.running)
    for (const [equal, ought] of [
      ['before trimming', row.before],
      ['after trimming', row.after],
    ] as const) {
      expect([equal, count({ arrangement: 'balance', equal })]).toEqual([equal, ought[0]])
      expect([equal, count({ arrangement: 'centre balance', equal })]).toEqual([equal, ought[1]])
    }
  })

  it.each(ROWS)('[F11] $of all leaves fit, and in sequence', (row) => {
    for (const arrangement of ['running', 'balance', 'centre balance'] as const) {
      const face = derived(row, { arrangement })
      for (const code of ['play-empty', 'outside-play', 'no-leaf', 'bare-width'] as const)
        expect([arrangement, codesOf(face)]).not.toEqual([arrangement, expect.arrayContaining([code])])
    }
  })

  it.each(ROWS)('[F11] $of running: full leaves and what is left, from either edge', (row) => {
    const full = row.raw - 2 * row.j
    const ought = [...Array.from({ length: row.running - 1 }, () => full), row.last]
    const left = widthsOf(derived(row, { arrangement: 'running', startAt: 'left' }))
    const right = widthsOf(derived(row, { arrangement: 'running', startAt: 'right' }))
    ought.forEach((width, i) => {
      expect(left[i]).toBeCloseTo(width, 2)
      expect(right[ought.length - 1 - i]).toBeCloseTo(width, 2)
    })
  })

  it('[F11] 1200 mm running: nothing of the last leaf is left after the trim, and it is said', () => {
    const face = derived(ROWS[4], { arrangement: 'running' })
    expect(findingsOf(face, 'sliver').map(({ measured, about }) => [measured, about.leaf])).toEqual([[0, 8]])
    // seven leaves cover 1218 of 1220 mm
    expect(face.seams.at(-1)!.edge.a.x - face.sizes.sheet.min.x).toBeCloseTo(1218, 2)
  })
})

describe('widths and seams of 48 in from 9 in leaves, trim 1/2 in, jointing 1/8 in', () => {
  const fromLeft = (face: ReturnType<typeof faceOf>) =>
    face.seams.map(({ edge }) => (edge.a.x + face.part.width / 2) / IN)
  const finished = (face: ReturnType<typeof faceOf>) => face.plan.columns!.map(({ from, to }) => (to - from) / IN)

  it.each(['balance', 'centre balance'] as const)('[F11] %s before trimming', (arrangement) => {
    const face = derived(ROWS[2], { arrangement })
    const seams = fromLeft(face)
    ;[7.66667, 15.83333, 24, 32.16667, 40.33333].forEach((x, i) => expect(seams[i]).toBeCloseTo(x, 4))
    const widths = finished(face)
    ;[7.66667, 8.16667, 8.16667, 8.16667, 8.16667, 7.66667].forEach((w, i) => expect(widths[i]).toBeCloseTo(w, 4))
    expect(face.centre.x).toBeCloseTo(0, 9)
  })

  it('[F11] running', () => {
    const widths = finished(derived(ROWS[2], { arrangement: 'running' }))
    ;[8.25, 8.75, 8.75, 8.75, 8.75, 4.75].forEach((w, i) => expect(widths[i]).toBeCloseTo(w, 3))
  })
})

describe('definitions of the standard', () => {
  // AWS 2009, section 4: running match, as many leaves as it takes; the edge leaves are unequal
  it('[F11] running: any count, leaves of the full width, the rest at one edge', () => {
    const widths = widthsOf(derived(ROWS[1], { arrangement: 'running' }))
    expect(new Set(widths.slice(0, -1).map((w) => w.toFixed(2))).size).toBe(1)
    expect(widths.at(-1)).toBeLessThan(widths[0]!)
  })

  // AWS 2009, section 4: balance match, an odd or even number of leaves, uniform in width before edge trimming
  it('[F11] balance: odd or even, all equal before trimming', () => {
    for (const row of [ROWS[1], ROWS[5], ROWS[0]]) {
      const widths = widthsOf(derived(row, { arrangement: 'balance' }))
      for (const width of widths) expect(width).toBeCloseTo((row.W + 2 * row.a) / widths.length, 6)
    }
  })

  // AWS 2009, section 4: balance and centre match, an even number of leaves, uniform before trimming, a joint on the centre
  it('[F11] centre balance: even, equal before trimming, a seam on the centre line', () => {
    for (const row of ROWS) {
      const face = derived(row, { arrangement: 'centre balance' })
      const widths = widthsOf(face)
      expect(widths.length % 2).toBe(0)
      for (const width of widths) expect(width).toBeCloseTo((row.W + 2 * row.a) / widths.length, 6)
      expect(face.seams.some(({ edge }) => Math.abs(edge.a.x) < 1e-9)).toBe(true)
    }
  })
})
