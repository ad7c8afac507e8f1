/**
 * [R6] A leaf slid along a seam comes to lie by just that along it; lined up outwards, each slide is carried on to the
 *   leaves beyond, and the first leaf of the seam begun with stays.
 * [R7] A leaf is slid no farther than its sound wood goes, and what is lacking is told.
 */
import { allFrom } from '../job/part-flitches'
import { describe, expect, it } from 'vitest'
import { demoJob } from '../figure/demo-job'
import { withoutMemory } from '../fit/answers'
import { layFace } from '../fit/lay-face'
import type { Part } from '../job/job'
import { present } from '../invariant'
import { linedUpAt, linedUpFrom, seamLook } from './line-up'
import { reportSeams } from './seam-report'

const job = demoJob()
const door = present(job.parts[0], 'the demonstration has a part')
const flitch = present(job.flitches[0], 'the demonstration has a flitch')
const four: Part = { ...door, recipe: { ...door.recipe, count: 4 } as Part['recipe'] }
const lay = (part: Part) => layFace(part, allFrom(flitch), job.shop, withoutMemory)
const face = lay(four)
const looks = reportSeams(face).map((seam) => present(seamLook(face, seam), 'leaves on both sides'))

/** How far each leaf has come down the panel, by cell. */
function movedDown(nudges: Part['nudges']): Record<string, number> {
  const after = lay({ ...four, nudges })
  return Object.fromEntries(
    face.pieces.map(({ cell, leafToPanel }, i) => [cell.id, after.pieces[i]!.leafToPanel.f - leafToPanel.f]),
  )
}

describe('leaves slid along their seams', () => {
  it('[R6] one seam', () => {
    const [look] = looks
    const { nudges, heldBack } = linedUpAt(face, { look: look!, by: 5 })
    expect(heldBack).toEqual([])
    for (const [cell, down] of Object.entries(movedDown(nudges)))
      expect(down).toBeCloseTo(cell === look!.second.cell ? 5 : 0, 2)
  })

  it('[R6] all seams, outwards from the one in the middle', () => {
    const slides = looks.map((look, i) => ({ look, by: [2, 3, 4][i]! }))
    const middle = looks[1]!
    const moved = movedDown(linedUpFrom(face, middle.letter, slides).nudges)
    expect(moved[middle.first.cell]).toBeCloseTo(0, 2)
    expect(moved[middle.second.cell]).toBeCloseTo(3, 2)
    // each seam has opened by its own slide: second against first
    slides.forEach(({ look, by }) => expect(moved[look.second.cell]! - moved[look.first.cell]!).toBeCloseTo(by, 2))
  })

  it('[R7] to the end of the wood', () => {
    const [look] = looks
    const { heldBack, nudges } = linedUpAt(face, { look: look!, by: 4000 })
    expect(heldBack).toHaveLength(1)
    expect(movedDown(nudges)[look!.second.cell]! + heldBack[0]!.lacks).toBeCloseTo(4000, 0)
  })
})
