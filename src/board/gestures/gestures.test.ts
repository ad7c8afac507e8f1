/**
 * [V7] the wood that is pulled follows the pointer, whatever way its leaf lies; the window that is pulled too.
 * [V8] a drag that is cancelled leaves everything as it was.
 */
import { describe, expect, it } from 'vitest'
import { point, type Point } from '../../core/geometry/point'
import { compose, invert, transformPoint, type Transform } from '../../core/geometry/transform'
import type { WindowDrag } from '../board-types'
import { viewTransform } from '../view'
import { dragWindow } from './drag-window'
import { swapLeaves, type TagOnTheWay } from './swap-leaves'

const press = { touch: false, button: 0 }
const from = point<'screen'>(100, 80)
const to = point<'screen'>(112, 75)

const lays: readonly { lies: string; leafToPanel: Transform<'leaf', 'panel'> }[] = [
  { lies: 'as it lies', leafToPanel: { a: 1, b: 0, c: 0, d: 1, e: -150, f: -600 } },
  { lies: 'turned over', leafToPanel: { a: -1, b: 0, c: 0, d: 1, e: 150, f: -600 } },
  { lies: 'end over end', leafToPanel: { a: 1, b: 0, c: 0, d: -1, e: -150, f: 600 } },
  { lies: 'in a wedge, turned over', leafToPanel: { a: -0.6, b: 0.8, c: 0.8, d: 0.6, e: 20, f: -600 } },
]

describe('dragging the window', () => {
  it.each(lays.flatMap((lay) => [false, true].map((lying) => ({ ...lay, lying }))))(
    '[V7] wood $lies follows the pointer (drawing lying: $lying)',
    ({ leafToPanel, lying }) => {
      const panelToScreen = viewTransform<'panel'>({ scale: 0.7, x: 300, y: 200, quarter: lying })
      const toScreen = compose(panelToScreen, leafToPanel)
      const told: WindowDrag[] = []
      dragWindow(
        'wood',
        () => ({ cell: 'L1', toLeaf: invert(toScreen) }),
        (drag) => told.push(drag),
      )(from, press)!.complete(to)
      const { by, phase } = told[0]!
      // the window goes by `by` on its leaf, so every spot of the leaf goes back by it in the face
      const spot = transformPoint(invert(toScreen), from)
      const after = transformPoint(toScreen, point<'leaf'>(spot.x - by.x, spot.y - by.y))
      expect(phase).toBe('end')
      expect(after.x).toBeCloseTo(to.x, 9)
      expect(after.y).toBeCloseTo(to.y, 9)
    },
  )

  it('[V7] a window on a lying leaf follows the pointer', () => {
    const toScreen = viewTransform<'leaf'>({ scale: 0.5, x: 60, y: 200, quarter: true })
    const told: WindowDrag[] = []
    dragWindow(
      'window',
      () => ({ cell: 'L1', toLeaf: invert(toScreen) }),
      (drag) => told.push(drag),
    )(from, press)!.move(to)
    // 12 px to the right are 24 mm away from the numbered end; 5 px up are 10 mm to the leaf's right
    expect(told[0]!.by.y).toBeCloseTo(24, 9)
    expect(told[0]!.by.x).toBeCloseTo(10, 9)
  })

  it('[V8] cancelled, it says so with no way gone', () => {
    const told: WindowDrag[] = []
    const session = dragWindow(
      'wood',
      () => ({ cell: 'L1', toLeaf: viewBack }),
      (drag) => told.push(drag),
    )(from, press)!
    session.move(to)
    session.cancel()
    expect(told.at(-1)).toEqual({ cell: 'L1', by: { x: 0, y: 0 }, phase: 'cancel' })
    expect(
      dragWindow(
        'wood',
        () => null,
        () => undefined,
      )(from, press),
    ).toBeNull()
    expect(
      dragWindow(
        'wood',
        () => ({ cell: 'L1', toLeaf: viewBack }),
        () => undefined,
      )(from, { touch: false, button: 1 }),
    ).toBeNull()
  })
})

const viewBack: Transform<'screen', 'leaf'> = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

describe('swapping two leaves', () => {
  const begin = () => {
    const swaps: string[][] = []
    const shown: (TagOnTheWay | null)[] = []
    const session = swapLeaves({
      tagAt: () => 'L1',
      cellAt: (at: Point<'screen'>) => (at.x < 0 ? null : at.x < 105 ? 'L1' : 'R1'),
      show: (tag) => shown.push(tag),
      swap: (one, other) => swaps.push([one, other]),
    })(from, press)!
    return { session, swaps, shown }
  }

  it('[V9] dropped on another cell, both change places', () => {
    const { session, swaps, shown } = begin()
    session.move(to)
    expect(shown.at(-1)).toEqual({ from: 'L1', at: to, onto: 'R1' })
    session.complete(to)
    expect(swaps).toEqual([['L1', 'R1']])
    expect(shown.at(-1)).toBeNull()
  })

  it('[V9] dropped on its own cell, beside the face, or cancelled, nothing changes', () => {
    for (const end of [point<'screen'>(101, 80), point<'screen'>(-5, 80)]) {
      const { session, swaps } = begin()
      session.complete(end)
      expect(swaps).toEqual([])
    }
    const { session, swaps, shown } = begin()
    session.move(to)
    session.cancel()
    expect(swaps).toEqual([])
    expect(shown.at(-1)).toBeNull()
  })
})
