/**
 * [G3] A position belongs to the inner-fit region if and only if the piece laid there lies within the region.
 * [G4] A fit without play is found, with its place; where the piece is too large by 0.02 mm none is invented.
 *
 * Source of the check: containment itself, tested at sampled positions: no corner of the piece outside, no corner of
 * the region inside the piece, no two edges crossing. A position counts only if it is clear by the slack: there the
 * piece made larger by it still lies within, or the piece made smaller by it does not. LEAFTURN_PLAYS and
 * LEAFTURN_EXACT set how many cases are run (5000 and 2000 are the full run).
 */
import { describe, expect, it } from 'vitest'
import { convexHull } from '../../src/core/geometry/convex'
import { innerFit, innerFitExact } from '../../src/core/geometry/inner-fit'
import { movedOut } from '../../src/core/geometry/offset'
import { add, point, scale, type Point } from '../../src/core/geometry/point'
import { farthestInside, nearestInside } from '../../src/core/geometry/pole'
import { regionCovers, ringCovers, ringEdges, transformRegion, transformRing } from '../../src/core/geometry/polygon'
import type { Polygon, Region, Ring } from '../../src/core/geometry/polygon'
import { edgeCrossing } from '../../src/core/geometry/segment'
import { rotation } from '../../src/core/geometry/transform'
import { box, chanceFrom, convexRing, leafWithHoles, spread, whole, type Chance } from '../fixtures/geometry/shapes'

const PLAYS = Number(process.env.LEAFTURN_PLAYS ?? 400)
const EXACT = Number(process.env.LEAFTURN_EXACT ?? 400)
const SLACK = 0.005

/** A piece as convex parts that overlap, so that it can be made larger and smaller part by part. */
interface Piece {
  readonly ring: Ring<'leaf'>
  readonly larger: Ring<'leaf'>[]
  readonly smaller: Ring<'leaf'>[]
}

function pieceOf(ring: Ring<'leaf'>, parts: Ring<'leaf'>[]): Piece {
  const moved = (by: number) =>
    parts.flatMap((part) => [
      movedOut(
        part,
        part.map(() => by),
      )!,
    ])
  return { ring, larger: moved(SLACK), smaller: moved(-SLACK) }
}

function convexPiece(chance: Chance, size: number): Piece {
  const ring = convexRing(chance, size, whole(chance, 3, 40))
  return pieceOf(ring, [ring])
}

/** An L of two boxes, turned. */
function bentPiece(chance: Chance, size: number): Piece {
  const [w, h] = [size, size * spread(chance, 0.6, 1.4)]
  const [s, t] = [w * spread(chance, 0.2, 0.7), h * spread(chance, 0.2, 0.7)]
  const turn = rotation<'leaf'>(chance() < 0.3 ? 0 : spread(chance, 0, 7))
  const ring = [point<'leaf'>(0, 0), point(w, 0), point(w, t), point(s, t), point(s, h), point(0, h)] as Ring<'leaf'>
  return pieceOf(
    transformRing(turn, ring),
    [box(0, 0, w, t), box(0, 0, s, h)].map((part) => transformRing(turn, part)),
  )
}

const laid = (ring: Ring<'leaf'>, v: Point<'leaf'>) => ring.map((p) => add(p, v))

function liesWithin(region: Region<'leaf'>, piece: Ring<'leaf'>): boolean {
  if (!piece.every((p) => regionCovers(region, p))) return false
  if (region.some((polygon) => polygon.some((ring) => ring.some((p) => ringCovers(piece, p))))) return false
  const edges = ringEdges(piece)
  return !region.some((polygon) =>
    polygon.some((ring) => ringEdges(ring).some((edge) => edges.some((e) => edgeCrossing(e, edge)))),
  )
}

/** true or false where the slack decides, else null. */
function fitsClearly(region: Region<'leaf'>, piece: Piece, v: Point<'leaf'>): boolean | null {
  if (piece.larger.every((part) => liesWithin(region, laid(part, v)))) return true
  return piece.smaller.every((part) => liesWithin(region, laid(part, v))) ? null : false
}

function randomRegion(chance: Chance): Region<'leaf'> {
  const leaf = (): Polygon<'leaf'> =>
    leafWithHoles(chance, {
      width: spread(chance, 60, 200),
      length: spread(chance, 100, 400),
      points: whole(chance, 4, 80),
      holes: whole(chance, 0, 6),
    })
  if (chance() < 0.75) return [leaf()]
  const second = leaf().map((ring) => laid(ring, point(300, 0))) as unknown as Polygon<'leaf'>
  return transformRegion(rotation<'leaf'>(chance()), [leaf(), second])
}

function samples(chance: Chance, region: Region<'leaf'>, fit: Region<'leaf'>): Point<'leaf'>[] {
  const places = Array.from({ length: 25 }, () => point<'leaf'>(spread(chance, -60, 450), spread(chance, -60, 450)))
  // near the border of the answer mistakes are likelier
  const borders = fit.flat().flatMap(ringEdges)
  for (let i = 0; i < 25 && borders.length > 0; i++) {
    const { a, b } = borders[whole(chance, 0, borders.length - 1)]!
    const share = chance()
    const on = point<'leaf'>(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
    places.push(add(on, point(spread(chance, -0.1, 0.1), spread(chance, -0.1, 0.1))))
  }
  return places
}

describe('inner fit against containment itself', () => {
  it.each([
    { kind: 'convex', make: convexPiece },
    { kind: 'bent', make: bentPiece },
  ])(`[G3] ${PLAYS} plays with $kind pieces agree at sampled positions`, { timeout: 3_600_000 }, ({ make }) => {
    const wrong: string[] = []
    const seen = { inside: 0, outside: 0 }
    for (let i = 0; i < PLAYS; i++) {
      const chance = chanceFrom(31 + i)
      const region = randomRegion(chance)
      const piece = make(chance, spread(chance, 4, 60))
      const fit = innerFit(region, piece.ring)
      for (const v of samples(chance, region, fit)) {
        const expected = fitsClearly(region, piece, v)
        if (expected === null) continue
        seen[expected ? 'inside' : 'outside']++
        if (regionCovers(fit, v) !== expected) wrong.push(`play ${i} at ${v.x}, ${v.y}: fits ${expected}`)
      }
    }
    expect(wrong).toEqual([])
    expect(seen.inside).toBeGreaterThan(PLAYS * 5)
    expect(seen.outside).toBeGreaterThan(PLAYS * 5)
  })
})

describe('exact fits', () => {
  it(`[G4] all of ${EXACT} exact fits are found, and none that lacks 0.02 mm`, { timeout: 3_600_000 }, () => {
    const missed: string[] = []
    const misplaced: string[] = []
    const invented: string[] = []
    for (let i = 0; i < EXACT; i++) {
      const chance = chanceFrom(77_001 + i)
      const piece =
        chance() < 0.3 ? box(0, 0, whole(chance, 1, 300), whole(chance, 1, 900)) : convexPiece(chance, 60).ring
      const at = point<'leaf'>(spread(chance, -100, 500), spread(chance, -100, 500))
      // what a convex piece covers on its way along a line leaves it just that line to move on
      const way = chance() < 0.5 ? point<'leaf'>(0, 0) : point<'leaf'>(spread(chance, -90, 90), spread(chance, -90, 90))
      const room = convexHull([...laid(piece, at), ...laid(piece, add(at, way))])
      const elsewhere = box(1000, 1000, 1003, 1003)
      const { region, exact } = innerFitExact([[room], [elsewhere]], piece)
      if (!exact) missed.push(`fit ${i}`)
      for (const share of [0, 0.3, 1]) {
        const v = add(at, scale(way, share))
        const near = nearestInside(region, v)
        if (exact && (!near || Math.hypot(near.x - v.x, near.y - v.y) > 0.01)) misplaced.push(`fit ${i} at ${share}`)
      }
      const pole = farthestInside(region)
      if (exact && !pole) misplaced.push(`fit ${i} has no middle`)

      const tooSmall = movedOut(
        room,
        room.map(() => -0.01),
      )
      if (tooSmall && innerFitExact([[tooSmall]], piece).region.length > 0) invented.push(`fit ${i}`)
    }
    expect({ missed, misplaced, invented }).toEqual({ missed: [], misplaced: [], invented: [] })
  })
})
