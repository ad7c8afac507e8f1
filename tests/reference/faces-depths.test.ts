/**
 * Which faces of the wood meet at a seam, and in which order leaves are laid.
 *
 * Sources: a book match has a depth offset of 0, 2t, 0 … when the pairs share a knife cut and 2t, 0, 2t … when they
 * don't, a slip match t (arithmetic from the bundle: leaf k shows the depth (k - 1) t with one side up and k t with the
 * other); four leaves are laid 1 2 / 4 3 (Architectural Woodwork Standards, 1st edition 2009, section 4, book and butt
 * match). Off the saw, `loss` of wood lies between the two faces of one cut.
 */
import { describe, expect, it } from 'vitest'
import type { Flitch } from '../../src/core/leaves/flitch'
import { faceOf, flitchOf, fourWay, partOf, radial, strips } from '../properties/job-builders'

const t = 0.6
const BUNDLES: readonly Pick<Flitch, 'leafOneAt' | 'numberedFace'>[] = [
  { leafOneAt: 'top', numberedFace: 'upper' },
  { leafOneAt: 'top', numberedFace: 'lower' },
  { leafOneAt: 'bottom', numberedFace: 'upper' },
  { leafOneAt: 'bottom', numberedFace: 'lower' },
]
const everyWay = BUNDLES.flatMap((bundle) => (['left', 'right'] as const).map((spine) => ({ ...bundle, spine })))

const offsets = (face: ReturnType<typeof faceOf>) =>
  face.seams.map(({ depthOffset }) => Number(depthOffset!.toFixed(6)))
const leavesLaid = (face: ReturnType<typeof faceOf>) => face.pieces.map(({ leaf }) => leaf!.number)

describe('depth offsets', () => {
  it.each(everyWay)(
    '[S3] book, laid by the spine: 0 at the hinge ($spine, leaf 1 at the $leafOneAt, $numberedFace)',
    ({ spine, ...bundle }) => {
      const laid = (count: number, arrangement: 'balance' | 'centre balance') =>
        faceOf(partOf({ width: 130 * count, recipe: strips({ arrangement, count, spine }) }), flitchOf(bundle))
      expect(offsets(laid(4, 'centre balance'))).toEqual([2 * t, 0, 2 * t])
      expect(offsets(laid(6, 'balance'))).toEqual([0, 2 * t, 0, 2 * t, 0])
      // an odd number begins with the pair
      const odd = laid(5, 'balance')
      const begins = leavesLaid(odd)[0] === 1
      expect(offsets(odd)).toEqual(begins ? [0, 2 * t, 0, 2 * t] : [2 * t, 0, 2 * t, 0])
      // the pair at the centre opens on its spine: there lie the edges of that name
      const pair = laid(2, 'centre balance').pieces
      expect(pair.map(({ cell }) => cell.turn.turnedOver)).toEqual(spine === 'right' ? [false, true] : [true, false])
    },
  )

  it.each(everyWay)(
    '[S3] book, laid the other way: 2t at the hinge ($spine, leaf 1 at the $leafOneAt, $numberedFace)',
    ({ spine, ...bundle }) => {
      const laid = (laying: 'by spine' | 'left to right' | 'right to left') =>
        faceOf(partOf({ recipe: strips({ count: 4, spine, laying }) }), flitchOf(bundle))
      const other = leavesLaid(laid('by spine'))[0] === 1 ? 'right to left' : 'left to right'
      expect(offsets(laid(other))).toEqual([0, 2 * t, 0])
      expect(leavesLaid(laid('left to right'))).toEqual([1, 2, 3, 4])
      expect(leavesLaid(laid('right to left'))).toEqual([4, 3, 2, 1])
    },
  )

  it.each(everyWay)(
    '[S3] running: 0, 2t or 2t, 0, as the spine and the edge of the start say ($spine, leaf 1 at the $leafOneAt, $numberedFace)',
    ({ spine, ...bundle }) => {
      for (const startAt of ['left', 'right'] as const) {
        const face = faceOf(
          partOf({ width: 800, recipe: strips({ arrangement: 'running', startAt, spine }) }),
          flitchOf(bundle),
        )
        const laid = startAt === 'left' ? face.pieces : [...face.pieces].reverse()
        const fromStart = startAt === 'left' ? offsets(face) : offsets(face).reverse()
        // with the far side of the earlier leaf up, its pair shares the cut
        const numbersFaceLeafOne = (bundle.leafOneAt === 'top') === (bundle.numberedFace === 'upper')
        const firstShowsFar = laid[0]!.cell.turn.turnedOver === numbersFaceLeafOne
        expect(fromStart).toEqual(firstShowsFar ? [0, 2 * t, 0] : [2 * t, 0, 2 * t])
        expect(laid.map(({ leaf }) => leaf!.number)).toEqual([1, 2, 3, 4])
      }
    },
  )

  it('[S3] slip: t at every seam, whichever side is up', () => {
    for (const sideUp of ['numbered', 'other'] as const)
      expect(offsets(faceOf(partOf({ recipe: strips({ match: 'slip', count: 4, sideUp }) })))).toEqual([t, t, t])
  })

  it('[S3] missing leaves and leaves kept back add up', () => {
    const flitch = flitchOf({ missing: [{ after: 2, count: 3 }] })
    const slip = partOf({ recipe: strips({ match: 'slip', count: 4, laying: 'left to right' }) })
    expect(offsets(faceOf(slip, flitch))).toEqual([t, 4 * t, t])
    const kept = flitch.leaves.map((leaf) => (leaf.number === 3 ? { ...leaf, state: 'spare' as const } : leaf))
    expect(offsets(faceOf(slip, { ...flitch, leaves: kept }))).toEqual([t, 5 * t, t])
  })

  it('[S3] off the saw the loss lies between the two faces of one cut', () => {
    const sawn = flitchOf({ thickness: 2.5, lossBetween: 4 })
    expect(offsets(faceOf(partOf({ recipe: strips({ count: 4 }) }), sawn))).toEqual([2 * 2.5 + 4, 4, 2 * 2.5 + 4])
    expect(offsets(faceOf(partOf({ recipe: strips({ count: 4, match: 'slip' }) }), sawn))).toEqual([6.5, 6.5, 6.5])
  })

  it.each(everyWay)(
    '[S3] sunburst: the first pair shares a cut, the last wedge meets the first ($spine, leaf 1 at the $leafOneAt, $numberedFace)',
    ({ spine, ...bundle }) => {
      for (const numberedEnds of ['inside', 'outside'] as const) {
        const face = faceOf(
          partOf({ width: 500, length: 500, recipe: radial({ count: 8, spine, numberedEnds }) }),
          flitchOf(bundle),
        )
        // leaf 1 shows its far face at t, leaf 8 its near one at 7 t: there the run closes, on one side of the first pair
        const clockwise = face.pieces[0]!.leaf!.number === 1
        const ought = clockwise ? [6, 0, 2, 0, 2, 0, 2, 0] : [2, 0, 6, 0, 2, 0, 2, 0]
        expect(offsets(face)).toEqual(ought.map((n) => Number((n * t).toFixed(6))))
        const pair = face.pieces.slice(0, 2).map(({ leaf }) => leaf!.number)
        expect(pair.sort()).toEqual([1, 2])
        // the edges of the spine's name lie at the seam of the first pair
        const [first, second] = face.pieces
        for (const piece of [first!, second!]) {
          const seam = face.seams[1]!.edge
          const across = piece.leafToPanel.a * seam.b.x + piece.leafToPanel.b * seam.b.y
          expect(across < 0 ? 'left' : 'right').toBe(spine)
        }
      }
    },
  )
})

describe('four-way', () => {
  it('[P1] four leaves are laid 1 2 / 4 3', () => {
    const face = faceOf(partOf({ width: 380, length: 1200, recipe: fourWay({ laying: 'left to right' }) }))
    expect(face.pieces.map(({ cell, leaf }) => `${cell.id} ${leaf!.number}`)).toEqual([
      'TL1 1',
      'TR1 2',
      'BL1 4',
      'BR1 3',
    ])
    const [tl, tr, bl, br] = face.pieces.map(({ cell }) => cell.face.ring)
    const middle = (ring = tl!) => ({ x: Math.sign(ring[0]!.x + ring[2]!.x), y: Math.sign(ring[0]!.y + ring[2]!.y) })
    expect([tl, tr, bl, br].map(middle)).toEqual([
      { x: -1, y: -1 },
      { x: 1, y: -1 },
      { x: -1, y: 1 },
      { x: 1, y: 1 },
    ])
  })

  it.each(everyWay)(
    '[P1] the top pair shares a cut when laid by the spine ($spine, leaf 1 at the $leafOneAt, $numberedFace)',
    ({ spine, ...bundle }) => {
      for (const numberedEnds of ['inside', 'outside'] as const) {
        const face = faceOf(
          partOf({ width: 380, length: 1200, recipe: fourWay({ spine, numberedEnds }) }),
          flitchOf(bundle),
        )
        const upright = face.seams.find(({ kind }) => kind === 'side')!
        const top = upright.sides.find(({ left }) => left === 'TL1')!
        expect(top.depthOffset).toBeCloseTo(0, 9)
        // round the ring every pair of neighbours in the run shares a cut or lies 2t apart, the closing pair too: t and 3t
        const all = face.seams.flatMap(({ sides }) => sides.map(({ depthOffset }) => Number(depthOffset!.toFixed(6))))
        expect(all.sort()).toEqual([0, 0, 2 * t, 2 * t].map((x) => Number(x.toFixed(6))))
        // numbered ends at the outer ends, or at the cross seam
        for (const { cell, leafToPanel } of face.pieces) {
          const isTop = cell.id.startsWith('T')
          expect(leafToPanel.d > 0).toBe(isTop === (numberedEnds === 'outside'))
        }
      }
    },
  )
})
