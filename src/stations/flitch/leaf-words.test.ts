import { describe, expect, it } from 'vitest'
import { derive } from '../../core/derive'
import { demoJob } from '../../core/figure/demo-job'
import { withoutMemory } from '../../core/fit/answers'
import { point } from '../../core/geometry/point'
import { blankLeaf, rectangle, usualFlitch } from '../../core/job/usual'
import { draftDefect } from './defect-draft'
import { driftInWords, flitchInShort, ordinal, takenFrom } from './leaf-words'

describe('words about leaves', () => {
  it('says only what is out of the ordinary', () => {
    const plain = usualFlitch('f', 'Ash', rectangle(200, 900), [blankLeaf(1)])
    expect(flitchInShort(plain)).toBe('1 leaf')
    const flawed = { ...blankLeaf(2), defects: [draftDefect('d', 'spot', plain.outline)] }
    const odd = {
      ...plain,
      leaves: [blankLeaf(1), flawed, { ...blankLeaf(3), state: 'set aside' as const }],
      missing: [{ after: 1, count: 2 }],
    }
    expect(flitchInShort(odd)).toBe('3 leaves, 1 with defects, 1 set aside, 2 missing')
  })

  it('shows drift across and along', () => {
    expect(driftInWords(point(0, 0), 'mm')).toBe('–')
    expect(driftInWords(point(2, -5.5), 'mm')).toBe('2, −5.5')
  })

  it.each([
    [1, '1st'],
    [2, '2nd'],
    [3, '3rd'],
    [4, '4th'],
    [11, '11th'],
    [13, '13th'],
    [22, '22nd'],
    [111, '111th'],
  ])('%i: %s', (n, words) => expect(ordinal(n)).toBe(words))

  it('finds which parts take wood from a leaf, all of them and no other', () => {
    const job = demoJob()
    const flitch = job.flitches[0]!
    const { parts } = derive(job, withoutMemory)
    const all = flitch.leaves.flatMap((leaf) => takenFrom(leaf, flitch, parts).map(({ part }) => [leaf.number, part]))
    expect(all).toContainEqual([3, 'door-1'])
    expect(all).not.toContainEqual([5, 'door-1'])
    expect(all).toHaveLength(parts.flatMap(({ pieces }) => pieces.filter(({ leaf }) => leaf)).length)
  })
})

describe('a defect before it is put in its place', () => {
  it.each(['spot', 'line', 'area'] as const)('a %s lies on the leaf', (shape) => {
    const drawn = draftDefect('d', shape, rectangle(200, 900))
    const points =
      drawn.shape === 'spot' ? [drawn.centre] : drawn.shape === 'line' ? [drawn.from, drawn.to] : [...drawn.ring]
    expect(points.every(({ x, y }) => x >= 0 && x <= 200 && y >= 0 && y <= 900)).toBe(true)
  })
})
