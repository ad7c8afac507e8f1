/**
 * [O1]–[O6] Faces cut to random outlines: the cells tile the sheet, whatever its shape, and their edges say where they
 * come from.
 */
import { expect, it } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { isConvex } from '../../src/core/geometry/convex'
import { overlapArea } from '../../src/core/geometry/overlap'
import type { PanelOutline } from '../../src/core/geometry/panel-outline'
import { distance, point } from '../../src/core/geometry/point'
import { ringEdges, signedArea } from '../../src/core/geometry/polygon'
import { CHORD_ERROR, GRID } from '../../src/core/geometry/tolerance'
import { determinant } from '../../src/core/geometry/transform'
import { fittedPart } from '../../src/core/job/fitted-part'
import { chanceFrom, spread, whole, type Chance } from '../fixtures/geometry/shapes'
import { anyRecipe } from './any-face'
import { allEdges, faceOf, partOf } from './job-builders'

const CASES = Math.max(40, Number(process.env.LEAFTURN_CASES ?? 0) / 10)

/** An L, a U lying on its side with arms that strips cut through, and a star with one arc in it. */
const DRAWN: readonly (readonly (readonly [number, number, number?])[])[] = [
  [
    [0, 0],
    [500, 0],
    [500, 200],
    [210, 200],
    [210, 700],
    [0, 700],
  ],
  [
    [0, 0],
    [600, 0],
    [600, 150],
    [140, 160],
    [140, 400],
    [600, 410],
    [600, 560],
    [0, 560],
  ],
  [
    [0, 0],
    [400, 0, 0.4],
    [400, 300, -0.3],
    [300, 640],
    [0, 640, 0.15],
  ],
]

function anyOutline(chance: Chance): PanelOutline {
  switch (whole(chance, 0, 4)) {
    case 0:
      return { shape: 'circle' }
    case 1:
      return { shape: 'ellipse' }
    case 2:
      return { shape: 'polygon', sides: whole(chance, 3, 12) }
    case 3:
      return { shape: 'arch top', rise: spread(chance, 10, 150) }
    default:
      return {
        shape: 'drawn',
        corners: DRAWN[whole(chance, 0, DRAWN.length - 1)]!.map(([x, y, bulge = 0]) => ({ at: point(x, y), bulge })),
      }
  }
}

function anyShapedFace(chance: Chance): DerivedPart {
  const recipe = anyRecipe(chance)
  const moved =
    recipe.pattern === 'radial' ? { ...recipe, centre: point<'panel'>(spread(chance, -80, 80), 30) } : recipe
  const part = partOf({
    width: spread(chance, 320, 700),
    length: spread(chance, 320, 900),
    outline: anyOutline(chance),
    core: allEdges(whole(chance, -3, 8)),
    overhang: { top: 10, right: 6, bottom: 10, left: spread(chance, 4, 12) },
    recipe: { ...moved, firstLeaf: 1, count: moved.count === 'fewest' ? 6 : moved.count },
  })
  return faceOf(fittedPart(part, 'width'))
}

const perimeter = (ring: readonly { readonly x: number; readonly y: number }[]): number =>
  ringEdges<'panel'>(ring).reduce((sum, { a, b }) => sum + distance(a, b), 0)

it('[O1] the cells of a face tile its sheet, one that falls in parts with a piece for each', () => {
  let asunder = 0
  for (let seed = 1; seed <= CASES; seed++) {
    const face = anyShapedFace(chanceFrom(seed))
    const sheet = face.sizes.outlines.sheet.ring
    const rings = face.pieces.map(({ cell }) => cell.face.ring)
    const covered = rings.reduce((sum, ring) => sum + signedArea(ring), 0)
    expect(Math.abs(covered - signedArea(sheet)), `seed ${seed}`).toBeLessThan(perimeter(sheet) * CHORD_ERROR)
    for (const ring of rings) {
      expect(signedArea(ring), `seed ${seed}`).toBeGreaterThan(0)
      expect(signedArea(ring) - overlapArea(ring, sheet), `seed ${seed}`).toBeLessThan(
        perimeter(ring) * CHORD_ERROR * 2,
      )
    }
    rings.forEach((ring, i) => {
      for (const other of rings.slice(i + 1))
        expect(overlapArea(ring, other), `seed ${seed}`).toBeLessThan(perimeter(ring) * 2 * GRID)
    })
    const ids = face.pieces.map(({ cell }) => cell.id)
    expect(new Set(ids).size).toBe(ids.length)
    asunder += ids.filter((id) => id.includes('.')).length
  }
  expect(asunder).toBeGreaterThan(0)
})

it('[O2] every edge keeps its tag: a seam lies on a line of the plan, an outer edge on the outline it came from', () => {
  for (let seed = 1; seed <= CASES; seed++) {
    const face = anyShapedFace(chanceFrom(seed))
    const outlineEdges = ringEdges(face.sizes.outlines.sheet.ring)
    for (const { cell } of face.pieces) {
      expect(cell.face.tags.length).toBe(cell.face.ring.length)
      ringEdges(cell.face.ring).forEach((edge, i) => {
        const tag = cell.face.tags[i]!
        if (tag.kind === 'seam') return
        const middle = point<'panel'>((edge.a.x + edge.b.x) / 2, (edge.a.y + edge.b.y) / 2)
        if (tag.curve?.shape === 'arc')
          expect(Math.abs(distance(middle, tag.curve.centre) - tag.curve.radius)).toBeLessThan(2 * CHORD_ERROR)
        const off = Math.min(
          ...outlineEdges
            .filter((_, k) => face.sizes.outlines.sheet.edges[k]!.source === tag.source)
            .map((other) => distanceTo(other, middle)),
        )
        expect(off, `seed ${seed}, ${cell.id}`).toBeLessThan(2 * CHORD_ERROR)
      })
    }
  }
})

function distanceTo(
  { a, b }: { a: { x: number; y: number }; b: { x: number; y: number } },
  p: { x: number; y: number },
) {
  const [x, y] = [b.x - a.x, b.y - a.y]
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y)))
  return Math.hypot(p.x - a.x - x * t, p.y - a.y - y * t)
}

it('[O3] the rough piece holds the window, with each seam moved out by its allowance', () => {
  for (let seed = 1; seed <= CASES; seed++) {
    const face = anyShapedFace(chanceFrom(seed))
    for (const { cell, rough } of face.pieces) {
      const { ring } = cell.window
      const held = overlapArea(rough, ring)
      expect(signedArea(ring) - held, `seed ${seed}, ${cell.id}`).toBeLessThan(perimeter(ring) * 2 * GRID)
      expect(Math.sign(determinant(cell.lay)) < 0).toBe(cell.turn.turnedOver)
      if (isConvex(ring) && cell.window.tags.some(({ kind }) => kind === 'seam'))
        expect(signedArea(rough)).toBeGreaterThan(signedArea(ring))
    }
  }
})
