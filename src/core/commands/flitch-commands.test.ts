/**
 * Rules.
 * J15 A leaf that stays in the list keeps all that is known of it, whatever place it gets.
 * J16 When another leaf becomes the first, no cut moves: position plus drift stays the same on every leaf.
 * J17 A gap in the sequence goes on to the leaf before when its leaf goes.
 * J18 A flitch that a part is faced from can't be taken away.
 */
import { describe, expect, it } from 'vitest'
import { SAMPLE } from '../../../tests/generators/sample-job'
import type { Job } from '../job/job'
import type { Next } from './change-within'
import { commandSentence } from './command-trouble'
import {
  changeFlitch,
  removeFlitch,
  setCommonOutline,
  setDrifts,
  setLeafCount,
  setLeaves,
  setMissing,
} from './flitch-commands'
import { renumberLeaf, setDrift, setLeafOutline, setLeafState } from './leaf-commands'
import { insertOutlinePoint, moveOutlinePoint, removeOutlinePoint } from './outline-commands'

function taken(next: Next): Job {
  if (!next.ok) throw new Error(commandSentence(next.reason))
  return next.value
}
const sentence = (next: Next) => (next.ok ? 'taken' : commandSentence(next.reason))
const numbers = (job: Job) => job.flitches[0]!.leaves.map(({ number }) => number)
const drifts = (job: Job) => Object.fromEntries(job.flitches[0]!.leaves.map((leaf) => [leaf.number, leaf.drift.y]))

describe('the leaves of a flitch', () => {
  it('[J15] keep what is known of them in another order', () => {
    const noted = taken(setLeafState(SAMPLE, 'walnut', [5], 'spare'))
    const job = taken(setLeaves(noted, 'walnut', [1, 5, 3, 2, 9]))
    expect(numbers(job)).toEqual([1, 5, 3, 2, 9])
    expect(job.flitches[0]!.leaves[1]).toBe(noted.flitches[0]!.leaves[4])
    expect(job.flitches[0]!.leaves[4]).toMatchObject({ number: 9, state: 'in use', drift: { x: 0, y: 0 } })
  })

  it('[J16] may begin with another: drift and positions are measured from that one', () => {
    const job = taken(setLeaves(SAMPLE, 'walnut', [3, 2, 1, 4, 5, 6]))
    expect(drifts(job)).toEqual({ 1: -4, 2: -2, 3: 0, 4: 2, 5: 4, 6: 6 })
    expect(job.parts[0]!.positions).toEqual({ all: { x: 150, y: 704 } })
    expect(job.parts[1]).toBe(SAMPLE.parts[1])
  })

  it.each([
    { leaves: [1, 2, 4, 5, 6], missing: [{ after: 2, count: 2 }] },
    { leaves: [1, 4, 5, 6], missing: [{ after: 1, count: 2 }] },
    { leaves: [4, 5, 6], missing: [] },
    { leaves: [1, 2, 3], missing: [{ after: 3, count: 2 }] },
  ])('[J17] $leaves', ({ leaves, missing }) => {
    expect(taken(setLeaves(SAMPLE, 'walnut', leaves)).flitches[0]!.missing).toEqual(missing)
  })

  it('are counted on from the highest number, and cut off at the end', () => {
    expect(numbers(taken(setLeafCount(SAMPLE, 'walnut', 8)))).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    expect(numbers(taken(setLeafCount(SAMPLE, 'walnut', 2)))).toEqual([1, 2])
    expect(sentence(setLeafCount(SAMPLE, 'walnut', 1e12))).toMatch(/^(The job|Flitch 1).*2000 is the most\.$/)
    expect(sentence(setLeafCount(SAMPLE, 'walnut', 0))).toBe(
      'Flitch 1, “Walnut”: number of leaves is 0; 1 is the least.',
    )
    expect(sentence(setLeaves(SAMPLE, 'walnut', [1, 2, 2]))).toBe('Flitch 1, “Walnut”: leaves: leaf 2 is listed twice.')
  })

  it('take another number wherever it is spoken of', () => {
    const job = taken(
      renumberLeaf(taken(renumberLeaf(SAMPLE, { flitch: 'walnut', leaf: 4 }, 40)), { flitch: 'walnut', leaf: 3 }, 30),
    )
    expect(numbers(job)).toEqual([1, 2, 30, 40, 5, 6])
    expect(job.flitches[0]!.missing).toEqual([{ after: 30, count: 2 }])
    expect(job.parts[0]!.chosen).toEqual({ L1: 40 })
    expect(job.parts[0]!.nudges.L1).toEqual({ leaf: 40, by: { x: 0, y: 3 } })
    expect(sentence(renumberLeaf(SAMPLE, { flitch: 'walnut', leaf: 4 }, 5))).toBe(
      'There is a leaf 5 in the flitch already.',
    )
  })

  it('drift from the first, which does not', () => {
    expect(drifts(taken(setDrifts(SAMPLE, 'walnut', new Map([[2, { x: 0, y: 9 }]]))))[2]).toBe(9)
    expect(sentence(setDrift(SAMPLE, { flitch: 'walnut', leaf: 1 }, { x: 1, y: 0 }))).toMatch(
      /^Flitch 1, “Walnut”, leaf 1: drift must be 0/,
    )
    expect(sentence(setDrift(SAMPLE, { flitch: 'walnut', leaf: 7 }, { x: 1, y: 0 }))).toBe(
      'There is no leaf “7” any more.',
    )
  })

  it('may be missing in places', () => {
    expect(taken(setMissing(SAMPLE, 'walnut', 3, 0)).flitches[0]!.missing).toEqual([])
    expect(taken(setMissing(SAMPLE, 'walnut', 5, 1)).flitches[0]!.missing).toContainEqual({ after: 5, count: 1 })
    expect(sentence(setMissing(SAMPLE, 'walnut', 8, 1))).toMatch(/names leaf 8, which is not in the flitch/)
  })
})

describe('a flitch', () => {
  it('[J18] in use stays', () => {
    expect(sentence(removeFlitch(SAMPLE, 'maple'))).toBe(
      'The flitch “Maple” is used by “Top”. Take another flitch there first.',
    )
    expect(taken(removeFlitch({ ...SAMPLE, parts: [] }, 'maple')).flitches).toHaveLength(1)
  })

  it('has sizes within their limits', () => {
    expect(sentence(changeFlitch(SAMPLE, 'walnut', { thickness: 0 }))).toBe(
      'Flitch 1, “Walnut”: thickness is 0 mm; it must be more than 0 mm.',
    )
  })
})

describe('an outline', () => {
  const common = { flitch: 'walnut', leaf: null }
  const third = { flitch: 'walnut', leaf: 3 }

  it('of one leaf becomes its own when a point is moved', () => {
    const job = taken(moveOutlinePoint(SAMPLE, third, 2, { x: 290, y: 2380 }))
    expect(job.flitches[0]!.leaves[2]!.outline?.[2]).toEqual({ x: 290, y: 2380 })
    expect(job.flitches[0]!.outline).toBe(SAMPLE.flitches[0]!.outline)
    expect(job.flitches[0]!.leaves[1]).toBe(SAMPLE.flitches[0]!.leaves[1])
    expect(taken(setLeafOutline(job, third, null)).flitches[0]!.leaves[2]!.outline).toBeNull()
  })

  it('gets and loses points', () => {
    const more = taken(insertOutlinePoint(SAMPLE, common, 4, { x: -5, y: 1200 }))
    expect(more.flitches[0]!.outline).toHaveLength(5)
    expect(more.flitches[0]!.outline[4]).toEqual({ x: -5, y: 1200 })
    const triangle = taken(removeOutlinePoint(SAMPLE, common, 0))
    expect(triangle.flitches[0]!.outline).toHaveLength(3)
    expect(sentence(removeOutlinePoint(triangle, common, 0))).toMatch(/at least 3 points/)
    expect(sentence(removeOutlinePoint(SAMPLE, common, 4))).toBe('The outline has no point 5: it has 4.')
  })

  it('that crosses itself is refused with the place', () => {
    expect(sentence(moveOutlinePoint(SAMPLE, third, 0, { x: 400, y: 1200 }))).toMatch(
      /^Flitch 1, “Walnut”, leaf 3: outline crosses or touches itself at 300 mm across and 1500 mm along/,
    )
  })

  it('drawn the other way round is turned', () => {
    const reversed = [...SAMPLE.flitches[0]!.outline].reverse()
    expect(taken(setCommonOutline(SAMPLE, 'walnut', reversed)).flitches[0]!.outline).toEqual(
      SAMPLE.flitches[0]!.outline,
    )
  })
})
