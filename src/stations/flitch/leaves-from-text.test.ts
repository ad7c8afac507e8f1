/**
 * Rules.
 * L20 Leaves typed in bulk or pasted share the outline of the commonest size; the others have one of their own.
 * L21 Leaves put in place of others keep what is known of the numbers that stay, but for their size.
 * L22 Leaves put behind others are numbered on; a number that was given and is taken is refused.
 */
import { describe, expect, it } from 'vitest'
import { commandSentence } from '../../core/commands/command-trouble'
import type { Job } from '../../core/job/job'
import { emptyJob, rectangle } from '../../core/job/usual'
import type { Result } from '../../core/result'
import { addFlitchOf, commonSize, putLeavesAfter, putLeavesInstead, readLeaves } from './leaves-from-text'

function good<T, R>(result: Result<T, R>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.reason))
  return result.value
}
const rows = (text: string) => good(readLeaves(text, 'mm'))
const jobOf = (text: string): Job =>
  good(addFlitchOf(emptyJob('Job'), { id: 'f', name: 'Walnut', species: '' }, rows(text)))
const leavesOf = (job: Job) => job.flitches[0]?.leaves ?? []

describe('reading leaves', () => {
  it('takes one line as leaves in bulk and several as a table', () => {
    expect(rows('3 leaves, 2440 x 200 from 5').map(({ number, width }) => [number, width])).toEqual([
      [5, 200],
      [6, 200],
      [7, 200],
    ])
    expect(rows('1\t2440\t200\n2\t2400\t198\tstained')).toEqual([
      { number: 1, length: 2440, width: 200, note: '' },
      { number: 2, length: 2400, width: 198, note: 'stained' },
    ])
    expect(rows('1\t2440\t200')).toHaveLength(1)
  })

  it('says in which line of a table the trouble lies', () => {
    const read = readLeaves('1\t2440\t200\n2\t2440\tabc', 'mm')
    expect(read.ok ? '' : read.reason).toMatch(/^Line 2, width: “abc” is not a length\./)
    const line = readLeaves('a heap of leaves', 'mm')
    expect(line.ok ? '' : line.reason).toContain('24 leaves, 2440 x 200')
  })
})

describe('putting leaves into a flitch', () => {
  it('[L20] shares the commonest size', () => {
    const job = jobOf('2440\t200\n2400\t190\n2440\t200')
    expect(job.flitches[0]?.outline).toEqual(rectangle(200, 2440))
    expect(leavesOf(job).map(({ outline }) => outline)).toEqual([null, rectangle(190, 2400), null])
    expect(commonSize(rows('1 leaf, 900 x 100'))).toEqual({ width: 100, length: 900 })
  })

  it('[L21] keeps what is known of the numbers that stay', () => {
    const before = jobOf('3 leaves, 2440 x 200')
    const flitch = before.flitches[0]!
    const noted = {
      ...before,
      flitches: [{ ...flitch, leaves: flitch.leaves.map((leaf) => ({ ...leaf, note: `n${leaf.number}` })) }],
    }
    const job = good(putLeavesInstead(noted, 'f', rows('3\t2000\t180\tnew\n1\t2000\t180')))
    expect(leavesOf(job).map(({ number, note }) => [number, note])).toEqual([
      [3, 'new'],
      [1, 'n1'],
    ])
    expect(job.flitches[0]?.outline).toEqual(rectangle(180, 2000))
  })

  it('[L22] numbers on, or refuses a number that is taken', () => {
    const before = jobOf('2 leaves, 2440 x 200 from 7')
    expect(leavesOf(good(putLeavesAfter(before, 'f', rows('2 leaves, 2440 x 200')))).map((l) => l.number)).toEqual([
      7, 8, 1, 2,
    ])
    const counted = jobOf('2 leaves, 2440 x 200')
    const after = good(putLeavesAfter(counted, 'f', rows('2 leaves, 2300 x 200')))
    expect(leavesOf(after).map(({ number, outline }) => [number, outline !== null])).toEqual([
      [1, false],
      [2, false],
      [3, true],
      [4, true],
    ])
    const refusal = putLeavesAfter(before, 'f', rows('2 leaves, 2440 x 200 from 8'))
    expect(refusal.ok ? '' : commandSentence(refusal.reason)).toBe('There is a leaf 8 in the flitch already.')
  })
})
