/** [V6] editing gives new rings and shapes, with one thing changed. */
import { describe, expect, it } from 'vitest'
import { point } from '../../core/geometry/point'
import type { DefectShape } from '../../core/leaves/leaf'
import {
  bareShape,
  cornerAt,
  edgeAt,
  ringWithInserted,
  ringWithMoved,
  ringWithout,
  shapeHandles,
  shapeMoved,
  shapeWithHandle,
} from './shape-edit'

const ring = Object.freeze([point<'leaf'>(0, 0), point<'leaf'>(100, 0), point<'leaf'>(100, 50), point<'leaf'>(0, 50)])

describe('editing an outline', () => {
  it('[V6] moves, inserts and removes points without touching the ring', () => {
    expect(ringWithMoved(ring, 1, point(90, 5))[1]).toEqual({ x: 90, y: 5 })
    expect(ringWithInserted(ring, 3, point(0, 25)).at(-1)).toEqual({ x: 0, y: 25 })
    expect(ringWithInserted(ring, 0, point(50, 0))[1]).toEqual({ x: 50, y: 0 })
    expect(ringWithout(ring, 0)).toHaveLength(3)
    expect(ringWithout(ring.slice(1), 0)).toBeNull()
    expect(ring).toHaveLength(4)
  })

  it('[V6] finds the corner and the edge that are meant, within reach only', () => {
    expect(cornerAt(ring, point(96, 3), 8)).toBe(1)
    expect(cornerAt(ring, point(50, 3), 8)).toBeNull()
    expect(edgeAt(ring, point(50, 53), 8)).toEqual({ edge: 2, at: { x: 50, y: 50 } })
    expect(edgeAt(ring, point(-3, 20), 8)).toEqual({ edge: 3, at: { x: 0, y: 20 } })
    expect(edgeAt(ring, point(50, 25), 8)).toBeNull()
  })

  it.each<{ shape: DefectShape; handle: number; changed: DefectShape }>([
    {
      shape: { shape: 'spot', centre: point(10, 10), radius: 5 },
      handle: 0,
      changed: { shape: 'spot', centre: point(10, 10), radius: 25 },
    },
    {
      shape: { shape: 'line', from: point(0, 0), to: point(0, 40) },
      handle: 1,
      changed: { shape: 'line', from: point(0, 0), to: point(25, 30) },
    },
    {
      shape: { shape: 'area', ring },
      handle: 2,
      changed: { shape: 'area', ring: ringWithMoved(ring, 2, point(25, 30)) },
    },
  ])('[V6] reshapes a $shape.shape by a handle, and moves it whole', ({ shape, handle, changed }) => {
    expect(shapeWithHandle(shape, handle, point(25, 30))).toEqual(changed)
    const moved = shapeMoved(shape, point(3, -2))
    const [before, after] = [shapeHandles(shape), shapeHandles(moved)]
    after.forEach((p, i) => expect([p.x - before[i]!.x, p.y - before[i]!.y]).toEqual([3, -2]))
    expect(bareShape(Object.assign({ id: 'd', kind: 'knot', note: 'n' }, shape))).toEqual(shape)
  })
})
