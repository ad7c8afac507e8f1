/**
 * [T45] No leaf's tag covers another: the one with less room is moved to the nearest free place and led back to its own;
 *   those that are free stay where they are.
 */
import { describe, expect, it } from 'vitest'
import { boxCentre, boxesOverlap, type Box } from '../geometry/box'
import { point } from '../geometry/point'
import { placeTags } from './tag-places'

const tag = (x: number, y: number): Box<'sheet'> => ({ min: point(x - 4, y - 3), max: point(x + 4, y + 3) })

describe('the places of tags', () => {
  it('[T45] free ones stay', () => {
    const boxes = [tag(0, 0), tag(20, 0), tag(0, 20)]
    expect(placeTags(boxes, [1, 1, 1], 2)).toEqual(boxes.map((box) => ({ box, led: null })))
  })

  it('[T45] the one with less room gives way, by no more than it must', () => {
    const [small, large] = placeTags([tag(1, 0), tag(0, 0)], [5, 500], 2)
    expect(large).toEqual({ box: tag(0, 0), led: null })
    expect(small!.led).toEqual(point(1, 0))
    expect(boxesOverlap(small!.box, large!.box)).toBe(false)
    const { x, y } = boxCentre(small!.box)
    expect(Math.hypot(x - 1, y)).toBeLessThanOrEqual(8)
  })

  it('[T45] of a heap none lies on another', () => {
    const placed = placeTags(
      Array.from({ length: 6 }, (_, i) => tag(i / 10, 0)),
      [1, 2, 3, 4, 5, 6],
      2,
    )
    placed.forEach(({ box }, i) =>
      placed.slice(i + 1).forEach((other) => expect(boxesOverlap(box, other.box)).toBe(false)),
    )
  })
})
