import { describe, expect, it } from 'vitest'
import { facesOf, jobOf } from '../../../tests/cli/all-jobs'
import { faceOf, fourWay, partOf, radial, strips } from '../../../tests/properties/job-builders'
import { point } from '../geometry/point'
import { ringCovers } from '../geometry/polygon'
import { leafOutline } from '../leaves/bundle'
import { chalkMark } from './chalk-mark'
import { cuttingOf } from './packets'
import { registerPins } from './register-pins'

const four = strips({ count: 4, equal: 'before trimming' })
const numbers = (pieces: readonly { readonly leaf: { readonly number: number } | null }[]) =>
  pieces.map(({ leaf }) => leaf?.number)

describe('[T41] what is cut together', () => {
  it('all leaves of one shape are a packet', () => {
    const { packets, alone } = cuttingOf(faceOf(partOf({ recipe: four })))
    expect(packets.map(({ pieces }) => numbers(pieces))).toEqual([[1, 2, 3, 4]])
    expect(alone).toEqual([])
  })

  it.each([
    { what: 'a leaf that is shifted', over: { nudges: { L1: { leaf: 3, by: point<'leaf'>(0, 2) } } }, why: 'shifted' },
    { what: 'a leaf chosen by hand', over: { chosen: { L1: 9 } }, why: 'chosen' },
  ])('$what is cut alone', ({ over, why }) => {
    const { packets, alone } = cuttingOf(faceOf(partOf({ recipe: four, ...over })))
    expect(packets.map(({ pieces }) => pieces.length)).toEqual([3])
    expect(alone.map(({ piece, why }) => [piece.cell.id, why])).toEqual([['L1', why]])
  })

  it.each([strips({ count: 6 }), fourWay({ count: 8 }), radial({ count: 12 })])('every piece is cut once', (recipe) => {
    const face = faceOf(partOf({ recipe }))
    const { packets, alone } = cuttingOf(face)
    const cut = [...packets.flatMap(({ pieces }) => pieces), ...alone.map(({ piece }) => piece)].map(
      ({ cell }) => cell.id,
    )
    expect([...cut].sort()).toEqual(face.pieces.map(({ cell }) => cell.id).sort())
  })
})

describe('[T42] pins and chalk', () => {
  it('pins go through every leaf of a packet and through no piece', () => {
    let found = 0
    for (const name of ['wild-lopsided-leaves', 'drift-and-nudge', 'sideboard', 'radial-of-twelve-on-a-square-core'])
      for (const face of facesOf(jobOf(name)))
        for (const { pieces } of cuttingOf(face).packets) {
          const pins = registerPins(pieces)
          found += pins ? 1 : 0
          for (const pin of pins ?? [])
            for (const piece of pieces) {
              const off = piece.place.drift
              const from = pieces[0]!.place.drift
              const here = point<'leaf'>(pin.x + off.x - from.x, pin.y + off.y - from.y)
              expect(ringCovers(leafOutline(face.flitch, piece.leaf!), here)).toBe(true)
              expect(ringCovers(piece.roughOnLeaf, here)).toBe(false)
            }
        }
    expect(found).toBeGreaterThan(2)
  })

  it('a piece is chalked where its overhang is deepest, as the leaf lies', () => {
    const over = { top: 10, right: 6, bottom: 15, left: 6 }
    const { pieces, ...face } = faceOf(partOf({ recipe: four, overhang: over }))
    expect(pieces.map((piece) => chalkMark({ pieces, ...face }, piece)?.at)).toEqual(Array(4).fill('far end'))
    const spun = faceOf(partOf({ recipe: strips({ count: 4, match: 'reverse slip' }), overhang: over }))
    expect(spun.pieces.map((piece) => [piece.cell.turn.spun, chalkMark(spun, piece)?.at])).toEqual(
      spun.pieces.map(({ cell }) => [cell.turn.spun, cell.turn.spun ? 'numbered end' : 'far end']),
    )
  })

  it('a piece without overhang has no place for chalk', () => {
    const face = faceOf(partOf({ recipe: four, overhang: { top: 0, right: 6, bottom: 0, left: 6 } }))
    expect(face.pieces.map((piece) => chalkMark(face, piece)?.at ?? null).filter(Boolean)).toHaveLength(2)
  })
})
