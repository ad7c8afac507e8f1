/** The search for a scarf on a leaf of any outline, the piece it makes, and the largest strip along the grain. */
import { bench, describe } from 'vitest'
import { point } from '../../src/core/geometry/point'
import type { Region } from '../../src/core/geometry/polygon'
import type { FlitchId } from '../../src/core/ids'
import { scarfedPiece } from '../../src/core/scarf/piece'
import { searchScarf } from '../../src/core/scarf/search'
import { largestStrip } from '../../src/core/scarf/strip'
import { chanceFrom, leafWithHoles } from '../fixtures/geometry/shapes'

const leaf = { flitch: 'walnut' as FlitchId, leaf: 1 }
const cut = { slope: 1 / 6, gain: 100, loss: 1.5, runs: 'right', through: point<'leaf'>(110, 600) } as const
const options = { time: 300, iterations: 3, warmupTime: 0, warmupIterations: 1 }

for (const points of [40, 100, 300]) {
  const region: Region<'leaf'> = [leafWithHoles(chanceFrom(3), { width: 220, length: 1200, points, holes: 2 })]
  describe(`a leaf of ${points} points with two holes`, () => {
    bench('searchScarf', () => void searchScarf(leaf, region, { width: 100, length: 1280 }, 1.5), options)
    bench('scarfedPiece', () => void scarfedPiece(leaf, region, cut), options)
    bench('largestStrip', () => void largestStrip(region, 0), options)
  })
}
