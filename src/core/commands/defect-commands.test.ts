/**
 * Rules.
 * J19 A defect copied to another leaf lies on the same spot of the log.
 */
import { describe, expect, it } from 'vitest'
import { SAMPLE } from '../../../tests/generators/sample-job'
import type { Defect } from '../leaves/leaf'
import { commandSentence } from './command-trouble'
import { addDefect, changeDefect, copyDefect, removeDefect } from './defect-commands'

const knot: Defect = { id: 'k1', kind: 'knot', note: 'sound', shape: 'spot', centre: { x: 100, y: 800 }, radius: 9 }
const second = { flitch: 'walnut', leaf: 2 }
const added = addDefect(SAMPLE, second, knot)
const withKnot = added.ok ? added.value : SAMPLE
const defectsOf = (job: typeof SAMPLE, leaf: number) => job.flitches[0]!.leaves[leaf - 1]!.defects

describe('a defect', () => {
  it('is put on a leaf, changed and taken away', () => {
    expect(defectsOf(withKnot, 2)).toEqual([knot])
    const larger = changeDefect(withKnot, second, { ...knot, radius: 12 })
    expect(larger.ok && defectsOf(larger.value, 2)).toEqual([{ ...knot, radius: 12 }])
    const gone = removeDefect(withKnot, second, 'k1')
    expect(gone.ok && defectsOf(gone.value, 2)).toEqual([])
  })

  it.each([
    { shape: 'spot', defect: knot, moved: { centre: { x: 100, y: 804 } } },
    {
      shape: 'line',
      defect: { ...knot, shape: 'line', from: { x: 1, y: 2 }, to: { x: 3, y: 4 } },
      moved: { from: { x: 1, y: 6 }, to: { x: 3, y: 8 } },
    },
    {
      shape: 'area',
      defect: {
        ...knot,
        shape: 'area',
        ring: [
          { x: 0, y: 0 },
          { x: 9, y: 0 },
          { x: 9, y: 5 },
        ],
      },
      moved: {
        ring: [
          { x: 0, y: 4 },
          { x: 9, y: 4 },
          { x: 9, y: 9 },
        ],
      },
    },
  ] as { shape: string; defect: Defect; moved: object }[])('[J19] $shape: follows the drift', ({ defect, moved }) => {
    const job = changeDefect(withKnot, second, defect)
    const copied = copyDefect(job.ok ? job.value : SAMPLE, second, 'k1', [{ leaf: 4, id: 'k2' }])
    expect(copied.ok && defectsOf(copied.value, 4)).toEqual([
      expect.objectContaining({ ...moved, id: 'k2', note: 'sound' }),
    ])
  })

  it.each([
    { copies: [{ leaf: 3, id: 'k1' }], sentence: 'Defects: the id “k1” is taken already.' },
    { copies: [{ leaf: 30, id: 'k2' }], sentence: 'There is no leaf “30” any more.' },
  ])('is not copied when $sentence', ({ copies, sentence }) => {
    const refused = copyDefect(withKnot, second, 'k1', copies)
    expect(!refused.ok && commandSentence(refused.reason)).toBe(sentence)
  })
})
