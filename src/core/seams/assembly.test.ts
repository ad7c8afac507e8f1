import { describe, expect, it } from 'vitest'
import {
  boxed,
  diamond,
  endMatch,
  faceOf,
  fourWay,
  partOf,
  radial,
  strips,
} from '../../../tests/properties/job-builders'
import type { DerivedPart } from '../derive'
import { cellsOf, jointsInOrder, orderOfJointing } from './assembly'

const treeOf = ({ pieces, seams }: DerivedPart) =>
  orderOfJointing(
    pieces.map(({ cell }) => cell),
    seams,
  )

const saidOf = (face: DerivedPart): readonly string[] =>
  jointsInOrder(treeOf(face)).map(
    ({ stage, seams, first, second }) =>
      `${stage}: ${cellsOf(first).join(' ')} + ${cellsOf(second).join(' ')} at ${seams.map(({ letter }) => letter).join(' ')}`,
  )

const everyPattern = [
  { what: 'one leaf', recipe: strips({ arrangement: 'balance', count: 1 }), width: 150 },
  { what: 'book of six', recipe: strips({ count: 6 }) },
  { what: 'book of five', recipe: strips({ arrangement: 'balance', count: 5 }) },
  { what: 'running', recipe: strips({ arrangement: 'running', count: 'fewest' }) },
  { what: 'slip-centre-book', recipe: strips({ match: 'slip-centre-book', count: 4 }) },
  { what: 'four-way', recipe: fourWay({ count: 4 }) },
  { what: 'four-way of eight', recipe: fourWay({ count: 8 }) },
  { what: 'end match', recipe: endMatch({ count: 8, rows: 2 }) },
  { what: 'sunburst of twelve', recipe: radial({ count: 12 }) },
  { what: 'sunburst of nine', recipe: radial({ count: 9 }) },
  { what: 'diamond', recipe: diamond() },
  { what: 'box', recipe: boxed() },
  { what: 'square box', recipe: boxed(), width: 720 },
] as const

describe('[T40] the order of jointing', () => {
  it.each(everyPattern)('$what: every piece once, every seam once at its whole length', (given) => {
    const face = faceOf(partOf({ recipe: given.recipe, ...('width' in given ? { width: given.width } : {}) }))
    const tree = treeOf(face)!
    expect([...cellsOf(tree)].sort()).toEqual(face.pieces.map(({ cell }) => cell.id).sort())
    const joints = jointsInOrder(tree)
    expect(joints).toHaveLength(face.pieces.length - 1)
    for (const { letter, edge } of face.seams) {
      const joined = joints.flatMap(({ seams }) => seams).filter((seam) => seam.letter === letter)
      const length = joined.reduce((sum, seam) => sum + seam.length, 0)
      expect(length, letter).toBeCloseTo(Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y), 2)
    }
  })

  it('pairs are shot together, then pairs of pairs', () => {
    expect(saidOf(faceOf(partOf({ recipe: strips({ count: 4 }) })))).toEqual([
      '1: L2 + L1 at A',
      '1: R1 + R2 at C',
      '2: L2 L1 + R1 R2 at B',
    ])
  })

  it('six leaves make three pairs', () => {
    const joints = jointsInOrder(treeOf(faceOf(partOf({ recipe: strips({ count: 6 }) }))))
    expect(joints.filter(({ stage }) => stage === 1)).toHaveLength(3)
  })

  it('a cross seam is made when each row is whole', () => {
    const last = jointsInOrder(treeOf(faceOf(partOf({ recipe: fourWay({ count: 8 }) })))).at(-1)!
    expect(last.joint).toBe('cross')
    expect([cellsOf(last.first).length, cellsOf(last.second).length]).toEqual([4, 4])
  })

  it('a sunburst is two halves, and then its diameter', () => {
    const last = jointsInOrder(treeOf(faceOf(partOf({ recipe: radial({ count: 12 }) })))).at(-1)!
    expect([last.straight, last.seams.length]).toEqual([true, 2])
    expect([cellsOf(last.first).length, cellsOf(last.second).length]).toEqual([6, 6])
  })

  it('round a panel that is not square the short pieces are fitted last', () => {
    const joints = jointsInOrder(treeOf(faceOf(partOf({ recipe: boxed() }))))
    expect(joints.map(({ straight, seams }) => [straight, seams.length])).toEqual([
      [true, 1],
      [false, 2],
      [false, 2],
    ])
  })
})
