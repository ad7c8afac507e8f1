/**
 * [R15] The hole of a viewfinder is the rough piece at full size, its filled points the middles of its sides; each leaf's
 *   landmarks stand on it where they lie in that leaf's own window, drift and nudge of the leaf taken in. A long window is
 *   found by the two ends of a frame, and no card has marks of more than four leaves.
 */
import { describe, expect, it } from 'vitest'
import { madeUpSights } from '../../../tests/cli/made-up-sights'
import { faceOf, flitchOf, fourWay, partOf, plainLeaves, radial, strips } from '../../../tests/properties/job-builders'
import type { Item, Line } from '../drawing/drawing'
import { boxAround, boxHeight, boxWidth } from '../geometry/box'
import { distance, point } from '../geometry/point'
import { signedArea } from '../geometry/polygon'
import { present } from '../invariant'
import { cardParts, drawViewfinder } from '../sheets/draw-viewfinder'
import { landmarkLooks, landmarkPlaces, viewfinders } from './viewfinder'

const cutLines = (items: readonly Item[]): readonly Line[] =>
  items.filter((item): item is Line => item.kind === 'line' && item.layer === 'cut')

describe('[R15] viewfinders', () => {
  it('the hole is the rough piece, a wedge as well', () => {
    const face = faceOf(partOf({ recipe: radial({ count: 12 }), width: 560, length: 560 }))
    for (const finder of viewfinders(face)) {
      const [hole, card] = cutLines(drawViewfinder(face, finder, 'whole', madeUpSights(face), 'mm').items)
      const { rough } = finder.template
      expect(hole!.points.length).toBe(rough.length)
      expect(signedArea(hole!.points)).toBeCloseTo(signedArea(rough), 6)
      expect(distance(hole!.points[0]!, hole!.points[1]!)).toBeCloseTo(distance(rough[0]!, rough[1]!), 9)
      expect(boxWidth(boxAround(card!.points))).toBeGreaterThan(boxWidth(boxAround(rough)) + 30)
    }
  })

  it('a long one has two ends, whose inner corners are those of the rough piece', () => {
    const face = faceOf(partOf({ recipe: strips({ count: 4 }) }))
    const [finder] = viewfinders(face)
    expect(finder!.pieces.length).toBe(4)
    const box = boxAround(finder!.template.rough)
    expect(boxHeight(box)).toBeGreaterThan(450)
    for (const part of cardParts(finder!)) {
      const [around] = cutLines(drawViewfinder(face, finder!, part, madeUpSights(face), 'mm').items)
      const inner = around!.points.slice(-3, -1)
      expect(inner[0]!.y).toBeCloseTo(inner[1]!.y, 9)
      expect(Math.abs(inner[0]!.x - inner[1]!.x)).toBeCloseTo(boxWidth(box), 9)
    }
  })

  it('landmarks are told from the inner edge and the middle of each leaf’s own window', () => {
    const leaves = plainLeaves(24).map((leaf) => (leaf.number === 2 ? { ...leaf, drift: point<'leaf'>(3, -8) } : leaf))
    const nudges = { L1: { leaf: 2, by: point<'leaf'>(0, 5) } }
    const face = faceOf(partOf({ recipe: strips({ count: 2 }), width: 380, length: 400, nudges }), flitchOf({ leaves }))
    const [one, two] = face.pieces.toSorted((p, q) => p.leaf!.number - q.leaf!.number)
    const lies = present(boxAround(one!.roughOnLeaf), 'a box')
    const at = point<'leaf'>(lies.min.x + 30, lies.min.y + 120)
    const sight = { landmarks: [{ kind: 'knot' as const, at }], picture: null }
    const [first] = landmarkPlaces(one!, sight)
    expect(first!.along).toBeCloseTo(120, 9)
    expect(first!.across).toBeCloseTo(30 - boxWidth(lies) / 2, 9)
    // the same spot of the log lies elsewhere on a leaf that has drifted, and its window is shifted there
    const [second] = landmarkPlaces(two!, { ...sight, landmarks: [{ kind: 'knot', at: point(at.x + 3, at.y - 8) }] })
    expect(second!.along).toBeCloseTo(120 - 5, 9)
    expect(second!.across).toBeCloseTo(first!.across, 9)
  })

  it('lines of marks begin at the hole, at the landmark, and end in the lane of their leaf', () => {
    const face = faceOf(partOf({ recipe: fourWay({ count: 4 }), width: 380, length: 700 }))
    const [finder] = viewfinders(face)
    const [piece] = finder!.pieces
    const sights = new Map([[piece!.cell.id, madeUpSights(face).get(piece!.cell.id)!]])
    const { items } = drawViewfinder(face, finder!, 'whole', sights, 'mm')
    const hole = boxAround(cutLines(items)[0]!.points)
    const marks = items.filter(
      (item): item is Line => item.kind === 'line' && item.layer === 'mark' && item.pen === 0.25,
    )
    for (const { landmark, along, across } of landmarkPlaces(piece!, sights.get(piece!.cell.id)!)) {
      const x = (hole.min.x + hole.max.x) / 2 + across
      const y = hole.min.y + along
      const upright = marks.filter(({ points: [a] }) => Math.abs(a!.x - x) < 1e-6)
      const level = marks.filter(({ points: [a] }) => Math.abs(a!.y - y) < 1e-6)
      const expected = { 'crown tip': [2, 2], knot: [2, 0], stripe: [1, 0] }[landmark.kind]
      expect([upright.length, landmark.kind === 'stripe' ? 0 : level.length]).toEqual(expected)
      for (const { points } of upright)
        expect(Math.min(Math.abs(points[0]!.y - hole.min.y), Math.abs(points[0]!.y - hole.max.y))).toBeLessThan(1e-6)
    }
  })

  it('cut pieces and leaves that are made up have none; others are looked at within their outline', () => {
    const face = faceOf(partOf({ recipe: strips({ count: 6 }) }))
    expect(viewfinders(face).map(({ name, pieces }) => [name, pieces.length])).toEqual([
      ['1a', 3],
      ['1b', 3],
    ])
    expect(
      landmarkLooks(face)
        .map(({ leaf }) => leaf)
        .toSorted((p, q) => p - q),
    ).toEqual([1, 2, 3, 4, 5, 6])
    const cut = { ...face, pieces: face.pieces.map((piece, i) => (i > 0 ? piece : { ...piece, cut: true })) }
    expect(landmarkLooks(cut).length).toBe(5)
  })
})
