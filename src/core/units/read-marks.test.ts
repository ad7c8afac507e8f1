import { describe, expect, it } from 'vitest'
import { marksSentence, readMarks } from './read-marks'

const leaves = [1, 2, 5]
const told = (text: string) => {
  const read = readMarks(text, 'mm', leaves)
  return read.ok ? read.value : marksSentence(read.reason, 'mm')
}

describe('marks of the lines struck across a bundle', () => {
  it('are read leaf by leaf, or one after the other', () => {
    const rows = [
      { leaf: 1, along: 120, across: null },
      { leaf: 2, along: 121.5, across: 40 },
    ]
    expect(told('1\t120\n2\t121.5\t40')).toEqual(rows)
    expect(told('leaf 1; 120\nleaf 2; 121.5; 40 mm')).toEqual(rows)
    expect(told('120\n\n121\n4 3/4"')).toEqual([
      { leaf: 1, along: 120, across: null },
      { leaf: 2, along: 121, across: null },
      { leaf: 5, along: 120.65, across: null },
    ])
  })

  it.each([
    ['', /^Marks: there are none yet/],
    ['2, 40', /^Marks: leaf 1, the first of the flitch, has no line/],
    ['1, 40\n3, 41', /^Line 2: there is no leaf 3 in this flitch/],
    ['1, 40\n1, 41', /^Line 2: leaf 1 has a line before this one/],
    ['1, 40, 20, 3', /^Line 1: “3” is one entry too many/],
    ['1, forty', /^Line 1, from the numbered end: “forty”/],
    ['1, 40, -3', /^Line 1, from the left edge: /],
    ['one, 40', /^Line 1, leaf: /],
    ['1\n2\n3\n4', /^Line 4: the flitch has only 3 leaves/],
    ['1, 30000', /^Line 1, from the numbered end: .*20/],
  ])('%j is refused with a sentence', (text, sentence) => {
    expect(told(text)).toMatch(sentence)
  })
})
