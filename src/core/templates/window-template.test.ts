/**
 * [T24] Every piece of a face belongs to one template, and pieces share a template exactly when they are cut alike, in
 *   leaf orientation: allowance, seams and all.
 * [T25] A piece that is set out by rule is a rectangle along the grain; a wedge is not.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../derive'
import { withoutMemory } from '../fit/answers'
import { emptyJob, blankLeaf, rectangle, usualFlitch, usualPart } from '../job/usual'
import type { Part } from '../job/job'
import { USUAL_RADIAL } from '../patterns/radial'
import { roughSize, windowTemplates } from './window-template'

const flitch = usualFlitch(
  'walnut',
  'Walnut',
  rectangle(300, 2400),
  Array.from({ length: 24 }, (_, i) => blankLeaf(i + 1)),
)
const door = usualPart('door', 'Door', 1100, 620, flitch)
const templatesOf = (part: Part) =>
  windowTemplates(derive({ ...emptyJob('Try'), flitches: [flitch], parts: [part] }, withoutMemory).parts[0]!)
const cutBy = (part: Part) => templatesOf(part).map(({ pieces }) => pieces.map(({ cell }) => cell.id))

describe('templates of a face', () => {
  it('[T24] with the overhang on the outer leaves alone, two templates of two leaves', () => {
    expect(cutBy(door)).toEqual([
      ['R2', 'L2'],
      ['R1', 'L1'],
    ])
  })

  it('[T24] with equal leaves, one; with unequal overhangs, one for each outer leaf', () => {
    const even: Part = { ...door, overhang: { top: 10, right: 0, bottom: 10, left: 0 } }
    expect(cutBy(even).map((cells) => cells.length)).toEqual([4])
    const uneven: Part = { ...door, overhang: { top: 10, right: 9, bottom: 10, left: 5 } }
    expect(cutBy(uneven).map((cells) => cells.length)).toEqual([2, 1, 1])
  })

  it('[T24] every piece once, in the order of the run', () => {
    const templates = templatesOf({ ...door, recipe: { ...USUAL_RADIAL, count: 12 }, width: 560, length: 560 })
    const ranks = templates.map(({ pieces }) => pieces.map(({ cell }) => cell.rank))
    expect(ranks.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: 12 }, (_, i) => i))
    for (const run of ranks) expect(run).toEqual([...run].sort((a, b) => a - b))
  })

  it('[T25] strips are ripped and crosscut to the window and its allowances; wedges are cut by the paper', () => {
    const [outer, inner] = templatesOf(door)
    expect(outer!.straight && inner!.straight).toBe(true)
    // a quarter of 1100, 6 over on the outer leaf, 3 off either edge; 620 and 10 over at both ends
    expect(roughSize(outer!)).toEqual({ width: 275 + 6 + 6, length: 640 })
    expect(roughSize(inner!)).toEqual({ width: 275 + 6, length: 640 })
    const wedges = templatesOf({ ...door, recipe: { ...USUAL_RADIAL, count: 12 }, width: 560, length: 560 })
    expect(wedges.some(({ straight }) => straight)).toBe(false)
  })
})
