/**
 * [S26] A spot of a face is found on the leaf that lies there, and on every other leaf at the same spot of the log.
 * [S27] A place for a patch is called free only where it is sound, on the leaf, and clear of every piece.
 */
import { describe, expect, it } from 'vitest'
import { withoutMemory } from '../../src/core/fit/answers'
import { regionCovers } from '../../src/core/geometry/polygon'
import { usableArea } from '../../src/core/leaves/usable'
import { leafRest } from '../../src/core/ledger/offcuts'
import { offcutBeside } from '../../src/core/ledger/patch-offcut'
import { findPatch, type PatchPlace } from '../../src/core/seams/find-patch'
import { point, type Point } from '../../src/core/geometry/point'
import { USUAL_SHOP } from '../../src/core/shop'
import { leafOutline } from '../../src/core/leaves/bundle'
import type { DerivedPart } from '../../src/core/derive'
import { chanceFrom, spread, type Chance } from '../fixtures/geometry/shapes'
import { anyFace } from './any-face'
import { faceOf } from './job-builders'
import * as witness from './witness'

const RADIUS = 15

interface Case {
  readonly seed: number
  readonly face: DerivedPart
  readonly at: Point<'panel'>
  readonly found: PatchPlace | null
}

/** Where a lipping is put on afterwards there is no veneer. */
const spotOn = (chance: Chance, { sizes: { finished, sheet } }: DerivedPart): Point<'panel'> =>
  point(
    spread(chance, Math.max(finished.min.x, sheet.min.x), Math.min(finished.max.x, sheet.max.x)),
    spread(chance, Math.max(finished.min.y, sheet.min.y), Math.min(finished.max.y, sheet.max.y)),
  )

const cases: readonly Case[] = Array.from({ length: 60 }, (_, i) => {
  const chance = chanceFrom(31_000 + i)
  const { part, flitch } = anyFace(chance)
  const face = faceOf(part, flitch)
  return Array.from({ length: 5 }, (_unused, j) => {
    const at = spotOn(chance, face)
    const wish = { at, radius: RADIUS, faces: [face], shop: USUAL_SHOP }
    return { seed: i * 10 + j, face, at, found: findPatch(face, wish) }
  })
}).flat()

const leafOf = ({ face }: Case, number: number) => face.flitch.leaves.find((leaf) => leaf.number === number)!

describe('a spot of a face', () => {
  it('[S26] is found on its leaf and, in the log, on the others', () => {
    let compared = 0
    const wrong = cases.flatMap((c) => {
      if (!c.found) return c.face.pieces.some(({ leaf }) => leaf === null) ? [] : [`${c.seed}: nothing found`]
      const { found } = c
      const piece = c.face.pieces.find(({ cell }) => cell.id === found.cell)!
      const seen = [{ leaf: found.leaf, spot: found.spot }, ...found.others]
      return seen.flatMap(({ leaf, spot }) => {
        if (!spot) return []
        compared++
        const { drift } = leafOf(c, leaf)
        const [x, y] = [spot.at.x - drift.x, spot.at.y - drift.y]
        const t = piece.logToPanel
        const off = Math.hypot(t.a * x + t.c * y + t.e - c.at.x, t.b * x + t.d * y + t.f - c.at.y)
        return off > 1e-6 ? [`${c.seed} leaf ${leaf}: ${off} mm off`] : []
      })
    })
    expect(wrong).toEqual([])
    expect(compared).toBeGreaterThan(2000)
  })

  it('[S26] lies at the distances told: there the leaf ends', () => {
    const wrong = cases.flatMap((c) =>
      (c.found?.others ?? []).flatMap(({ leaf, spot }) => {
        if (!spot) return []
        const outline = leafOutline(c.face.flitch, leafOf(c, leaf))
        const ends = [
          { x: spot.at.x, y: spot.at.y - spot.fromNumberedEnd },
          { x: spot.at.x - spot.fromLeft, y: spot.at.y },
          { x: spot.at.x + spot.fromRight, y: spot.at.y },
        ]
        const away = (p: witness.Place) =>
          Math.min(...witness.sides(outline).map((side) => witness.awayFromSide(side, p)))
        return ends.some((p) => away(p) > 1e-6) ? [`${c.seed} leaf ${leaf}`] : []
      }),
    )
    expect(wrong).toEqual([])
  })

  it('[S27] is called free where the whole patch is, and taken where a piece lies', () => {
    const count = { free: 0, taken: 0 }
    const round = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12)
    const wrong = cases.flatMap((c) =>
      (c.found?.others ?? []).flatMap(({ leaf, spot, trouble }) => {
        if (!spot) return trouble?.trouble === 'off the leaf' ? [] : [`${c.seed} leaf ${leaf}: beside, but ${trouble}`]
        const roughs = c.face.pieces.filter((piece) => piece.leaf?.number === leaf).map((piece) => piece.roughOnLeaf)
        const border = [0, ...round.map(() => RADIUS - 1e-3)].map((r, i) => {
          const angle = round[Math.max(0, i - 1)]!
          return { x: spot.at.x + r * Math.cos(angle), y: spot.at.y + r * Math.sin(angle) }
        })
        const outline = leafOutline(c.face.flitch, leafOf(c, leaf))
        const off = border.some((p) => !witness.isIn(outline, p))
        const taken = border.some((p) => roughs.some((ring) => witness.isIn(ring, p)))
        if (trouble === null) count.free++
        if (trouble?.trouble === 'taken') count.taken++
        return trouble === null && (off || taken) ? [`${c.seed} leaf ${leaf}: off ${off}, taken ${taken}`] : []
      }),
    )
    expect(wrong).toEqual([])
    expect(count.free).toBeGreaterThan(200)
    expect(count.taken).toBeGreaterThan(100)
  })

  it('[S26] comes with the nearest leaves first', () => {
    const far = cases.map(({ found }) => (found?.others ?? []).map(({ steps }) => Math.abs(steps)))
    expect(far.every((steps) => steps.every((step, i) => i === 0 || step >= steps[i - 1]!))).toBe(true)
  })
})

describe('the offcut beside a spot', () => {
  it('[A2] holds the whole patch in sound wood of the same leaf, as near as it goes', () => {
    const seen = { sameLines: 0, aside: 0, none: 0 }
    const wrong = cases
      .filter((_, i) => i % 4 === 0)
      .flatMap((c, i) => {
        const radius = i % 2 === 0 ? 15 : 60
        const { face, found } = c
        if (!found?.spot) return []
        const rest = leafRest([face], USUAL_SHOP, withoutMemory, face.flitch, found.leaf)
        if (!rest) return [`${c.seed}: nothing taken`]
        const beside = offcutBeside(rest, found.spot.at, radius)
        const kept = rest.offcuts.filter(({ use, strip }) => use !== 'waste' && strip)
        const wide = kept.filter(({ strip }) => Math.min(strip!.width, strip!.length) >= 2 * radius)
        if (!beside) {
          seen.none++
          return wide.length > 0 ? [`${c.seed}: none, but ${wide.map(({ label }) => label).join()}`] : []
        }
        seen[beside.sameLines ? 'sameLines' : 'aside']++
        const usable = usableArea(face.flitch, leafOf(c, found.leaf), USUAL_SHOP, 'show')
        const { x, y } = beside.spot.at
        const border = Array.from({ length: 16 }, (_, i) => (i * Math.PI) / 8).map((angle) => ({
          x: x + (radius - 0.01) * Math.cos(angle),
          y: y + (radius - 0.01) * Math.sin(angle),
        }))
        const [outer, ...holes] = beside.offcut.outline
        const inside = border.every(
          (p) =>
            witness.isIn(outer, p) &&
            !holes.some((hole) => witness.isIn(hole, p)) &&
            regionCovers(usable, point(p.x, p.y)),
        )
        const straight = wide.some(
          ({ strip }) => strip!.box.min.x + radius <= found.spot!.at.x && found.spot!.at.x <= strip!.box.max.x - radius,
        )
        return inside && beside.sameLines === straight ? [] : [`${c.seed}: inside ${inside}, straight ${straight}`]
      })
    expect(wrong).toEqual([])
    expect(seen.sameLines).toBeGreaterThan(10)
    expect(seen.aside + seen.none).toBeGreaterThan(3)
  })
})
