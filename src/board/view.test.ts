import { describe, expect, it } from 'vitest'
import { point } from '../core/geometry/point'
import { determinant, invert, transformPoint } from '../core/geometry/transform'
import { boxOnScreen, fitView, viewTransform, zoomedAbout } from './view'

const board = { width: 800, height: 600 }
const margins = { top: 10, right: 20, bottom: 30, left: 40 }
const panel = { min: point<'panel'>(-200, -300), max: point<'panel'>(200, 300) }

describe('how a space is seen on a board', () => {
  it('[V1] a lying drawing is turned, not mirrored: head to the left, left edge to the bottom', () => {
    const view = fitView(panel, board, margins, true)
    const toScreen = viewTransform<'panel'>(view)
    const centre = transformPoint(toScreen, point(0, 0))
    expect(determinant(toScreen)).toBeGreaterThan(0)
    expect(transformPoint(toScreen, point(0, -100)).x).toBeLessThan(centre.x)
    expect(transformPoint(toScreen, point(-100, 0)).y).toBeGreaterThan(centre.y)
  })

  it.each([false, true])(
    '[V2] what is fitted lies within the margins and touches two of them (lying: %s)',
    (quarter) => {
      const { min, max } = boxOnScreen(fitView(panel, board, margins, quarter), panel)
      const gaps = [min.x - margins.left, min.y - margins.top, 770 + 10 - max.x, 570 - max.y]
      for (const gap of gaps) expect(gap).toBeGreaterThan(-1e-9)
      expect(gaps.filter((gap) => Math.abs(gap) < 1e-9)).toHaveLength(2)
    },
  )

  it('[V3] zooming keeps the spot under the pointer where it is, and stops at the limits', () => {
    const view = fitView(panel, board, margins, true)
    const at = point<'screen'>(123, 456)
    const spot = transformPoint(invert(viewTransform<'panel'>(view)), at)
    const nearer = zoomedAbout(view, at, 3, { min: 0.01, max: 100 })
    const seen = transformPoint(viewTransform<'panel'>(nearer), spot)
    expect(seen.x).toBeCloseTo(at.x, 9)
    expect(seen.y).toBeCloseTo(at.y, 9)
    expect(zoomedAbout(view, at, 1e9, { min: 0.01, max: 20 }).scale).toBe(20)
  })
})
