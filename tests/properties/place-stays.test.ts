/**
 * What has been decided by hand survives changes of the face.
 *
 * [C2] A cell keeps its id when the face grows: the centre family is counted out from the centre, a running match from
 * the edge where it starts, wedges from the first seam.
 * [F12] A saved position stays, and with it the wood at the middle of the inner cells, when width, count or overhang change.
 */
import { describe, expect, it } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { point } from '../../src/core/geometry/point'
import type { Part } from '../../src/core/job/job'
import type { StripRecipe } from '../../src/core/patterns/recipe'
import { allEdges, boxed, diamond, endMatch, faceOf, fourWay, partOf, radial, strips } from './job-builders'

const idsOf = (face: DerivedPart) => face.pieces.map(({ cell }) => cell.id as string)
const turnOfCell = (face: DerivedPart, id: string) => face.pieces.find(({ cell }) => cell.id === id)!.cell.turn

const GROWING: readonly { of: string; ids: readonly (readonly string[])[]; grown: readonly DerivedPart[] }[] = [
  {
    of: 'centre balance',
    grown: [2, 4, 6].map((count) => faceOf(partOf({ width: 140 * count, recipe: strips({ count }) }))),
    ids: [
      ['L1', 'R1'],
      ['L2', 'L1', 'R1', 'R2'],
      ['L3', 'L2', 'L1', 'R1', 'R2', 'R3'],
    ],
  },
  {
    of: 'balance, odd',
    grown: [1, 3, 5].map((count) =>
      faceOf(partOf({ width: 140 * count, recipe: strips({ arrangement: 'balance', count }) })),
    ),
    ids: [['C'], ['L1', 'C', 'R1'], ['L2', 'L1', 'C', 'R1', 'R2']],
  },
  {
    of: 'running from the right',
    grown: [380, 580, 790].map((width) =>
      faceOf(partOf({ width, recipe: strips({ arrangement: 'running', startAt: 'right' }) })),
    ),
    ids: [
      ['S2', 'S1'],
      ['S3', 'S2', 'S1'],
      ['S4', 'S3', 'S2', 'S1'],
    ],
  },
  {
    of: 'reverse slip',
    grown: [2, 4, 6].map((count) =>
      faceOf(partOf({ width: 140 * count, recipe: strips({ match: 'reverse slip', count }) })),
    ),
    ids: [
      ['L1', 'R1'],
      ['L2', 'L1', 'R1', 'R2'],
      ['L3', 'L2', 'L1', 'R1', 'R2', 'R3'],
    ],
  },
  {
    of: 'slip-centre-book',
    grown: [4, 6].map((count) =>
      faceOf(partOf({ width: 140 * count, recipe: strips({ match: 'slip-centre-book', count }) })),
    ),
    ids: [
      ['L2', 'L1', 'R1', 'R2'],
      ['L3', 'L2', 'L1', 'R1', 'R2', 'R3'],
    ],
  },
  {
    of: 'four-way',
    grown: [4, 8].map((count) => faceOf(partOf({ width: 70 * count, length: 1200, recipe: fourWay({ count }) }))),
    ids: [
      ['TL1', 'TR1', 'BL1', 'BR1'],
      ['TL2', 'TL1', 'TR1', 'TR2', 'BL2', 'BL1', 'BR1', 'BR2'],
    ],
  },
  {
    of: 'end match',
    grown: [4, 8].map((count) => faceOf(partOf({ width: 70 * count, length: 1200, recipe: endMatch({ count }) }))),
    ids: [
      ['T1L1', 'T1R1', 'B1L1', 'B1R1'],
      ['T1L2', 'T1L1', 'T1R1', 'T1R2', 'B1L2', 'B1L1', 'B1R1', 'B1R2'],
    ],
  },
  {
    of: 'end match of three rows',
    grown: [3, 9].map((count) =>
      faceOf(partOf({ width: 60 * count, length: 1200, recipe: endMatch({ count, rows: 3 }) })),
    ),
    ids: [
      ['T1C', 'MC', 'B1C'],
      ['T1L1', 'T1C', 'T1R1', 'ML1', 'MC', 'MR1', 'B1L1', 'B1C', 'B1R1'],
    ],
  },
  {
    of: 'diamond',
    grown: [300, 500].map((width) => faceOf(partOf({ width, recipe: diamond() }))),
    ids: [0, 1].map(() => ['TL', 'TR', 'BR', 'BL']),
  },
  {
    of: 'box',
    grown: [300, 900].map((width) => faceOf(partOf({ width, recipe: boxed() }))),
    ids: [0, 1].map(() => ['T', 'R', 'B', 'L']),
  },
  {
    of: 'radial',
    grown: [6, 8].map((count) => faceOf(partOf({ width: 200, length: 200, recipe: radial({ count }) }))),
    ids: [6, 8].map((count) => Array.from({ length: count }, (_, i) => `W${i + 1}`)),
  },
]

describe('cells of a growing face', () => {
  it.each(GROWING)('[C2] $of keep their ids', ({ grown, ids }) => {
    expect(grown.map(idsOf)).toEqual(ids)
  })

  it.each(GROWING.filter(({ of }) => of !== 'balance, odd'))('[C2] $of keep their turns', ({ grown }) => {
    for (const id of idsOf(grown[0]!))
      for (const face of grown) expect([id, turnOfCell(face, id)]).toEqual([id, turnOfCell(grown[0]!, id)])
  })
})

const saved = point<'leaf'>(101, 911)

/** The middle of the finished part of a cell, on the leaf without drift. */
function middleOfWood(face: DerivedPart, id: string) {
  const { cell, logToPanel: t } = face.pieces.find((piece) => piece.cell.id === id)!
  const { min, max } = face.sizes.finished
  const inside = (v: number, least: number, most: number) => Math.min(most, Math.max(least, v))
  const xs = cell.face.ring.map(({ x }) => inside(x, min.x, max.x))
  const ys = cell.face.ring.map(({ y }) => inside(y, min.y, max.y))
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }
  return { x: (middle.x - t.e) / t.a, y: (middle.y - t.f) / t.d }
}

const sizes: readonly Partial<Part>[] = [
  {},
  { width: 601 },
  { length: 688 },
  { overhang: { top: 3, right: 17, bottom: 12, left: 1 } },
  { core: { top: 2, right: 9, bottom: 0, left: 4 } },
]

describe('a saved position', () => {
  const every = (['book', 'slip'] as const).flatMap((match) =>
    (['balance', 'centre balance'] as const).flatMap((arrangement) =>
      (['before trimming', 'after trimming'] as const).flatMap((equal) =>
        [1, 2, 3, 4, 5, 6].map((count): Partial<StripRecipe> & { count: number } => ({
          match,
          arrangement,
          equal,
          count,
        })),
      ),
    ),
  )

  it.each(every)('[F12] stays in $match, $arrangement, equal $equal, of $count', (recipe) => {
    for (const size of sizes) {
      const face = faceOf(partOf({ ...size, recipe: strips(recipe), positions: { window: saved } }))
      expect(face.position).toEqual(saved)
      const inner = recipe.count % 2 === 1 ? 'C' : 'R1'
      const off = middleOfWood(face, inner)
      expect(off.x - saved.x).toBeCloseTo(0, 9)
      // centred along the grain on the finished panel
      expect(off.y - saved.y).toBeCloseTo(0, 9)
    }
  })

  it('[F12] stays in a four-way face and in a sunburst, where it is the tip', () => {
    for (const size of sizes) {
      for (const equal of ['before trimming', 'after trimming'] as const) {
        const four = faceOf(partOf({ ...size, recipe: fourWay({ equal }), positions: { window: saved } }))
        expect([middleOfWood(four, 'TR1').x, middleOfWood(four, 'TR1').y]).toEqual([
          expect.closeTo(saved.x, 9),
          expect.closeTo(saved.y, 9),
        ])
      }
      const round = faceOf(partOf({ ...size, recipe: radial({ count: 12 }), positions: { window: saved } }))
      for (const { logToPanel: t } of round.pieces) {
        expect(t.a * saved.x + t.c * saved.y + t.e).toBeCloseTo(0, 9)
        expect(t.b * saved.x + t.d * saved.y + t.f).toBeCloseTo(0, 9)
      }
    }
  })

  it('[F12] of a running match is its height; across, the leaves say where they are cut', () => {
    for (const overhang of [allEdges(10), { top: 3, right: 17, bottom: 12, left: 1 }]) {
      const face = faceOf(
        partOf({ overhang, recipe: strips({ arrangement: 'running' }), positions: { window: saved } }),
      )
      expect(face.position.y).toBe(saved.y)
    }
  })
})
