/**
 * End match, diamonds and boxes against what is known of them from elsewhere.
 *
 * [P2] End match lies in the orders printed for it. Source: Architectural Woodwork Standards, 1st edition 2009, section 4
 *   p. 75 and appendix B p. 470.
 * [P3] A leaf for a slanted quadrant w x h, grain at θ to w, is w cos θ + h sin θ long and w sin θ + h cos θ wide.
 *   Source: projections of a rectangle, by hand.
 * [P4] A diamond becomes a reverse diamond when it is cut along a centre line and its halves change places. Source: a
 *   maker's comparison of the two (common practice); held here against the directions of grain and the figure.
 * [P5] Mitred at 45°, a box of W x H has two trapezoids (W, W − H, high H/2) and two triangles (base H, high H/2), with a
 *   centre seam |W − H|. Source: geometry of a hip roof, by hand.
 * [P6] Grain mirrors at every mitre of a box; the figure of one that is not square jumps by |W − H| at two of them. Source:
 *   the law of reflection, grain a at a seam f goes to 2f − a, and two mirrors square to each other make half a turn.
 * [P8] In a reverse slip every other leaf is turned end for end in its plane, by half a turn, the same side up. Source:
 *   a timber-veneer trade association's page on matching.
 */
import { describe, expect, it } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { boxAround, boxHeight, boxWidth } from '../../src/core/geometry/box'
import { signedArea } from '../../src/core/geometry/polygon'
import { rectangle } from '../../src/core/job/usual'
import {
  allEdges,
  boxed,
  codesOf,
  diamond,
  endMatch,
  faceOf,
  findingsOf,
  flitchOf,
  partOf,
  plainLeaves,
  strips,
} from '../properties/job-builders'

const wide = flitchOf({ outline: rectangle(1600, 2000), leaves: plainLeaves(24) })
const bare = { overhang: allEdges(0), allowance: 0, laterAllowance: 0 }

const leafIn = (face: DerivedPart, id: string) => face.pieces.find(({ cell }) => cell.id === id)!.leaf!.number

describe('reverse slip', () => {
  it.each(['numbered', 'other'] as const)('[P8] %s side up: never a mirror, every other leaf end for end', (sideUp) => {
    for (const arrangement of ['running', 'balance', 'centre balance'] as const) {
      const recipe = strips({
        match: 'reverse slip',
        arrangement,
        count: arrangement === 'running' ? 'fewest' : 4,
        sideUp,
      })
      const face = faceOf(partOf({ width: 700, recipe }))
      const lies = face.pieces.map(({ logToPanel: { a, b, c, d } }) => ({ mirrored: a * d - b * c < 0, up: d > 0 }))
      expect(lies.length).toBeGreaterThan(3)
      // one side out everywhere, whichever it is; neighbours differ by half a turn alone
      expect(lies.every(({ mirrored }) => mirrored === (sideUp === 'other'))).toBe(true)
      expect(lies.slice(1).every(({ up }, i) => up !== lies[i]!.up)).toBe(true)
    }
  })
})

describe('end match', () => {
  it.each([
    ['column by column', [1, 3, 5, 7], [2, 4, 6, 8]],
    ['down and up', [1, 4, 5, 8], [2, 3, 6, 7]],
    ['panel', [1, 2, 3, 4], [8, 7, 6, 5]],
  ] as const)('[P2] %s: %j over %j', (order, top, bottom) => {
    const face = faceOf(
      partOf({ width: 800, length: 900, recipe: endMatch({ order, count: 8, laying: 'left to right' }) }),
    )
    const row = (name: string) => ['L2', 'L1', 'R1', 'R2'].map((column) => leafIn(face, `${name}1${column}`))
    expect([row('T'), row('B')]).toEqual([top, bottom])
    expect(face.seams.every(({ meets }) => meets === 'mirrors')).toBe(true)
  })

  it.each(['left', 'right'] as const)(
    '[P2] laid by its spine (%s), its first two leaves share a knife cut',
    (spine) => {
      for (const order of ['column by column', 'down and up'] as const)
        for (const leafOneAt of ['top', 'bottom'] as const) {
          const face = faceOf(
            partOf({ width: 800, length: 900, recipe: endMatch({ order, count: 8, spine }) }),
            flitchOf({ leafOneAt }),
          )
          const sides = face.seams.flatMap((seam) => seam.sides)
          const first = sides.find(({ left, right }) =>
            [leafIn(face, left), leafIn(face, right)].every((leaf) => leaf <= 2),
          )
          expect(first!.depthOffset).toBeCloseTo(0, 9)
        }
    },
  )
})

/** Direction of the grain in the panel, degrees from +x, between 0 and 180. */
function grainIn(face: DerivedPart, id: string): number {
  const { c, d } = face.pieces.find(({ cell }) => cell.id === id)!.logToPanel
  return ((Math.atan2(d, c) * 180) / Math.PI + 360) % 180
}

describe('diamonds', () => {
  it.each([
    [12, 12, 45, 16.971, 16.971],
    [12, 18, 45, 21.213, 21.213],
    [12, 18, 30, 19.392, 21.588],
    [12, 18, 56.310_1, 21.633, 19.969],
    [300, 300, 45, 424.264, 424.264],
    [300, 450, 45, 530.33, 530.33],
  ])('[P3] quadrant %f x %f at %f°: leaf %f long, %f wide', (w, h, angle, along, across) => {
    for (const runs of ['round', 'to the centre'] as const) {
      const face = faceOf(partOf({ ...bare, width: 2 * w, length: 2 * h, recipe: diamond({ runs, angle }) }), wide)
      for (const { cell } of face.pieces) {
        const box = boxAround(cell.window.ring)
        expect(boxHeight(box)).toBeCloseTo(along, 3)
        expect(boxWidth(box)).toBeCloseTo(across, 3)
      }
    }
  })

  it('[P3] touch the middles of the sides unless an angle is given', () => {
    const face = faceOf(partOf({ ...bare, width: 640, length: 360, recipe: diamond() }), wide)
    // from (0, −180) to (320, 0): down to the right in the upper right quadrant
    expect(grainIn(face, 'TR')).toBeCloseTo((Math.atan2(180, 320) * 180) / Math.PI, 9)
  })

  it('[P4] a diamond is a reverse diamond with its halves in each other’s place', () => {
    const part = { ...bare, width: 640, length: 360 }
    const round = faceOf(partOf({ ...part, recipe: diamond({ runs: 'round' }) }), wide)
    const reverse = faceOf(partOf({ ...part, recipe: diamond({ runs: 'to the centre' }) }), wide)
    for (const [id, other] of ['TL TR', 'TR TL', 'BL BR', 'BR BL'].map((pair) => pair.split(' ') as [string, string]))
      expect(grainIn(reverse, id)).toBeCloseTo(grainIn(round, other), 9)
    // the halves slid by half the width: their outer edges now meet, and mirror as they do in the reverse diamond
    for (const row of ['T', 'B']) {
      const lay = (id: string) => round.pieces.find(({ cell }) => cell.id === row + id)!.logToPanel
      const [left, right] = [lay('R'), lay('L')]
      for (const [x, y] of [
        [0, 0],
        [120, 40],
        [-50, 333],
      ] as const) {
        const at = (t: typeof left, by: number) => [t.a * x + t.c * y + t.e + by, t.b * x + t.d * y + t.f]
        const [p, q] = [at(left, -320), at(right, 320)]
        expect([-p[0]!, p[1]]).toEqual([expect.closeTo(q[0]!, 9), expect.closeTo(q[1]!, 9)])
      }
    }
  })

  it('[P4] mirror at every seam, and cross on the centre', () => {
    const face = faceOf(partOf({ width: 500, length: 380, recipe: diamond({ angle: 31 }) }), wide)
    expect(face.seams.every(({ meets }) => meets === 'mirrors')).toBe(true)
    expect(codesOf(face)).toContain('centred')
  })
})

describe('boxes', () => {
  it.each([
    [860, 520],
    [520, 860],
    [400, 400],
  ])('[P5] %f x %f: areas of the four pieces, and the centre seam', (width, length) => {
    const face = faceOf(partOf({ ...bare, width, length, recipe: boxed() }), wide)
    const [long, short] = [Math.max(width, length), Math.min(width, length)]
    const areaOf = (id: string) => signedArea(face.pieces.find(({ cell }) => cell.id === id)!.cell.face.ring)
    const trapezoid = ((long + long - short) / 2) * (short / 2)
    const triangle = (short * short) / 4
    const areas = ['T', 'R', 'B', 'L'].map(areaOf)
    const isWide = width >= length
    ;[trapezoid, triangle, trapezoid, triangle].forEach((area, i) =>
      expect(areas[isWide ? i : (i + 1) % 4]).toBeCloseTo(area, 6),
    )
    expect(areas.reduce((sum, area) => sum + area)).toBeCloseTo(width * length, 6)
    const ridge = face.seams.filter(({ kind }) => kind === 'side')
    expect(ridge.map(({ finishedLength }) => finishedLength)).toEqual(
      long === short ? [] : [expect.closeTo(long - short, 6)],
    )
  })

  it.each(['along the edges', 'across the edges'] as const)('[P6] grain %s mirrors at every mitre', (grain) => {
    for (const [width, length] of [
      [860, 520],
      [520, 860],
      [400, 400],
    ] as const) {
      const face = faceOf(partOf({ width, length, recipe: boxed({ grain }) }), wide)
      for (const { kind, edge, sides } of face.seams) {
        if (kind !== 'mitre') continue
        const seam = (Math.atan2(edge.b.y - edge.a.y, edge.b.x - edge.a.x) * 180) / Math.PI
        for (const { left, right } of sides)
          expect((2 * seam - grainIn(face, left) - grainIn(face, right) + 7200) % 180).toBeCloseTo(0, 6)
      }
      const isUpright = grain === 'across the edges'
      expect(Math.min(grainIn(face, 'T'), 180 - grainIn(face, 'T'))).toBeCloseTo(isUpright ? 90 : 0, 9)
      expect(Math.min(grainIn(face, 'R'), 180 - grainIn(face, 'R'))).toBeCloseTo(isUpright ? 0 : 90, 9)
    }
  })

  it('[P6] the figure of a square one meets everywhere; of another it jumps, and that is said', () => {
    expect(codesOf(faceOf(partOf({ width: 400, length: 400, recipe: boxed() }), wide))).toContain('figure-meets')
    for (const [width, length] of [
      [860, 520],
      [520, 860],
    ] as const) {
      const face = faceOf(partOf({ width, length, recipe: boxed() }), wide)
      const breaks = findingsOf(face, 'figure-breaks')
      expect(breaks.map(({ measured, about }) => [measured, about.promised])).toEqual([
        [expect.closeTo(340, 6), 'grain'],
        [expect.closeTo(340, 6), 'grain'],
      ])
    }
  })
})
