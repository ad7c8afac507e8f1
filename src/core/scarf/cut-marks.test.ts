/** [X8] Where to mark a slanted cut is told from the edges of the leaf. */
import { describe, expect, it } from 'vitest'
import { boxRing } from '../geometry/box'
import { point } from '../geometry/point'
import type { SlantedCut } from '../job/make-up'
import { cutEnds } from './cut-marks'
import { figureStep, slideAlongCut } from './extension'

const outline = boxRing<'leaf'>({ min: point(0, 0), max: point(200, 1200) })
const cut: SlantedCut = { through: point(100, 600), runs: 'right', slope: 1 / 6, gain: 60, loss: 1.5 }

describe('the marks of a cut', () => {
  it.each([
    { runs: 'right' as const, slope: 1 / 6, near: [0, 0, 'left'], far: [200, 1200, 'right'] },
    { runs: 'left' as const, slope: 1 / 4, near: [200, 200, 'right'], far: [0, 1000, 'left'] },
    { runs: 'right' as const, slope: 1 / 8, near: [25, 0, 'left'], far: [175, 1200, 'right'] },
  ])('[X8] 1 in $slope to the $runs', ({ runs, slope, near, far }) => {
    const ends = cutEnds(outline, { ...cut, runs, slope })!
    const told = ends.map(({ at, side }) => [expect.closeTo(at.x, 6), expect.closeTo(at.y, 6), side])
    expect([near, far]).toEqual(told)
    expect(ends[0].inFromEdge).toBeCloseTo(Math.min(near[0] as number, 200 - (near[0] as number)), 6)
  })

  it('[X8] the slide along the cut and the step across agree with the gain', () => {
    expect(Math.hypot(slideAlongCut(cut), 2 * cut.loss)).toBeCloseTo(Math.hypot(figureStep(cut), cut.gain), 9)
  })

  it('[X8] a line beside the leaf has none', () => {
    expect(cutEnds(outline, { ...cut, through: point(900, 600) })).toBeNull()
  })
})
