import type { LaidFace } from '../../src/core/fit/lay-face'
import { boxAround } from '../../src/core/geometry/box'
import { point, type Point } from '../../src/core/geometry/point'
import { ringEdges } from '../../src/core/geometry/polygon'
import { levelCrossings } from '../../src/core/geometry/segment'
import { landmarkLooks, type LandmarkLook, type Sight, type Sights } from '../../src/core/templates/viewfinder'

/** Landmarks where a leaf might have them, the same for all but for a step from leaf to leaf; the third leaf has none. */
export const madeUpSights = (face: LaidFace): Sights =>
  new Map(landmarkLooks(face).flatMap((look, i): [string, Sight][] => (i === 2 ? [] : [[look.cell, sightOf(look, i)]])))

function sightOf({ window }: LandmarkLook, i: number): Sight {
  const { min, max } = boxAround(window)
  const at = (across: number, along: number): Point<'leaf'> =>
    point(min.x + across * (max.x - min.x) + 3 * i, min.y + along * (max.y - min.y) + 7 * i)
  const on = (across: number, end: 'near' | 'far') => {
    const x = Math.min(max.x - 1, at(across, 0).x)
    const levels = levelCrossings(ringEdges(window), 'x', x)
    return {
      kind: 'stripe' as const,
      end,
      at: point<'leaf'>(x, end === 'near' ? Math.min(...levels) : Math.max(...levels)),
    }
  }
  return {
    landmarks: [
      { kind: 'crown tip', at: at(0.52, 0.4), end: i % 2 === 0 ? 'near' : 'far' },
      { kind: 'knot', at: at(0.2, 1.05) },
      on(0.25, 'near'),
      on(0.7, 'near'),
      on(0.3, 'far'),
      on(0.75, 'far'),
    ],
    picture: null,
  }
}
