import { describe, expect, it } from 'vitest'
import { readLeafTable } from './read-leaf-table'
import { tableSentence } from './table-sentence'
import type { LengthUnit } from './unit'

// [U10] A pasted table of leaves is taken whole or not at all; a refusal says line, column, what stands there and why.
// [U11] A leaf number stands once in a table.

const rows = (text: string, unit: LengthUnit = 'mm') => {
  const read = readLeafTable(text, unit)
  if (!read.ok) return tableSentence(read.reason, unit)
  return read.value.map(({ number, length, width, note }) => [number, length, width, note])
}

const TWO = [
  [1, 2440, 200, ''],
  [2, 2435, 198.5, 'split'],
]

describe('[U10] leaves pasted from a spreadsheet', () => {
  it.each([
    ['tabs', '1\t2440\t200\n2\t2435\t198,5\tsplit'],
    ['semicolons', '1;2440;200\r\n2;2435;198,5;split\r\n'],
    ['commas', '1, 2440, 200\n2, 2435, 198.5, split'],
    ['empty lines', '\n\n1\t2440\t200\n\t\t\n2\t2435\t198.5\tsplit\n\n'],
    ['a head in another order', 'Width\tNOTE\tLeaf\tLength\n200\t\t1\t2440\n198.5\tsplit\t2\t2435'],
    ['units in the head', 'No.;Length (cm);Width [mm];Remarks\n1;244;200;\n2;243,5;198,5;split'],
    ['units in the cells', '1\t2.44 m\t20 cm\n2\t2435mm\t198.5 mm\tsplit'],
    ['quoted cells', '"1","2440","200"\n"2","2435","198,5","split"'],
    ['a byte order mark', '\ufeffnumber,length,width,note\n1,2440,200\n2,2435,198.5,split'],
  ])('with %s', (_, text) => {
    expect(rows(text)).toEqual(TWO)
  })

  it('in inches with the marks that a spreadsheet doubles', () => {
    expect(rows('1\t"96 1/4"""\t7 7/8"\n2\t8\'\t7 1/2', 'in')).toEqual([
      [1, 96.25 * 25.4, 200.025, ''],
      [2, 2438.4, 190.5, ''],
    ])
    expect(rows('Length mm,Width in\n2440,8', 'in')).toEqual([[1, 2440, 203.2, '']])
  })

  it('with length and width alone, numbered from 1', () => {
    expect(rows('2440\t200\n2435\t198')).toEqual([
      [1, 2440, 200, ''],
      [2, 2435, 198, ''],
    ])
  })

  it('keeps a note with separators and line ends in it', () => {
    expect(rows('1;2440;200;"knot; ""live""\nnear end"\n2;2440;199')).toEqual([
      [1, 2440, 200, 'knot; "live"\nnear end'],
      [2, 2440, 199, ''],
    ])
  })

  it.each([
    ['', 'Line 1: there are no leaves here. Paste rows of number, length and width, or of length and width.'],
    [
      'length,width',
      'Line 1: there are no leaves here. Paste rows of number, length and width, or of length and width.',
    ],
    [
      '1\t2440\t200\n\n2\tabc\t200',
      'Line 3, length: “abc” is not a length. Type a number such as 420, 42 cm or 16 1/2 in.',
    ],
    ['1\t2440\t200\n2\t2440', 'Line 2, width: nothing is typed. Type a number such as 420, 42 cm or 16 1/2 in.'],
    ['1\t2440\t0', 'Line 1, width: “0” is less than 1 mm, the least it can be.'],
    ['1\t24400\t200', 'Line 1, length: “24400” is more than 20000 mm, the most it can be.'],
    ['1\t2,440\t200', 'Line 1, length: “2,440” may mean 2.440 mm or 2440 mm. Type it without the comma.'],
    ['A7\t2440\t200', 'Line 1, number: “A7” is not a whole number. Type a whole number from 1 to 999.'],
    ['1,2440,5,200,1', 'Line 1: “1” stands in a column of its own. The columns are number, length, width and note.'],
    [
      'length,width,colour\n1,2,3',
      'Line 1: the column “colour” is not known. Name it number, length, width or note, or leave it out.',
    ],
    ['leaf,length\n1,2440', 'Line 1: no column is named width. Name one so, or leave the line of names out.'],
    ['length,width,Length\n1,2,3', 'Line 1: two columns are named length. Leave one out.'],
    ['2440', 'Line 1, width: nothing is typed. Type a number such as 420, 42 cm or 16 1/2 in.'],
    ['2440\t200\n'.repeat(1000), 'Line 1000: a flitch has at most 999 leaves. Paste the rest as another flitch.'],
  ])('refuses %j', (text, sentence) => {
    expect(rows(text)).toBe(sentence)
  })

  it('[U11] refuses a repeated number with both lines', () => {
    expect(rows('number,length,width\n7,2440,200\n\n8,2440,200\n7,2440,198')).toBe(
      'Line 5, number: leaf 7 already stands in line 2. Give each leaf its own number.',
    )
  })
})
