/**
 * [T20] The sentence that heads a sheet says every decision about the face, in the words of the screen, and its pieces
 *   put together are the sentence.
 */
import { describe, expect, it } from 'vitest'
import { rectangle, usualFlitch, usualPart } from '../job/usual'
import type { Part } from '../job/job'
import { USUAL_BOX } from '../patterns/box'
import { USUAL_DIAMOND } from '../patterns/diamond'
import { USUAL_END_MATCH } from '../patterns/end-match'
import { USUAL_FOUR_WAY } from '../patterns/four-way'
import { USUAL_HERRINGBONE } from '../patterns/herringbone'
import { USUAL_PARQUET } from '../patterns/parquet'
import { USUAL_PLANKS } from '../patterns/planks'
import { USUAL_RADIAL } from '../patterns/radial'
import { USUAL_STRIPS } from '../patterns/strips'
import { recipePieces, recipeSentence } from './recipe-sentence'

const door: Part = {
  ...usualPart('door', 'Door, left', 1100, 520, usualFlitch('walnut', 'Walnut', rectangle(300, 2400), [])),
  allowance: 3,
}
const over = { top: 10, right: 6, bottom: 10, left: 6 }
const AFTER = ', with 6 mm over at the sides, 10 mm at the ends, and 3 mm an edge for jointing in a packet.'

describe('the recipe as a sentence', () => {
  it.each<{ recipe: Part['recipe']; count: number; reads: string }>([
    {
      recipe: { ...USUAL_STRIPS, firstLeaf: 3, equal: 'after trimming' },
      count: 4,
      reads: 'centre balance, a book match of 4 leaves from leaf 3, equal after trimming, opened on its right edge',
    },
    {
      recipe: {
        ...USUAL_STRIPS,
        arrangement: 'balance',
        equal: 'before trimming',
        centreOn: 'leaf',
        laying: 'left to right',
      },
      count: 1,
      reads:
        'balance, a book match of 1 leaf from leaf 1, equal before trimming, with a leaf on the centre, opened on its right edge, laid left to right',
    },
    {
      recipe: { ...USUAL_STRIPS, arrangement: 'running', startAt: 'right', spine: 'left' },
      count: 5,
      reads:
        'running, a book match of 5 leaves from leaf 1, each as wide as it goes, laid from the right edge, opened on its left edge',
    },
    {
      recipe: { ...USUAL_HERRINGBONE, angle: 30, columns: 3 },
      count: 6,
      reads:
        'herringbone, a V match of 6 leaves from leaf 1, in 3 columns of strips 100 mm wide at 30°, pointing up, numbered ends away from the seam of the middle pair, the first leaf with its numbered side up',
    },
    {
      recipe: { ...USUAL_PARQUET, strips: 3, firstBlock: 'lying' },
      count: 5,
      reads:
        'basket, a quarter-turned match of 5 leaves from leaf 1, in 4 columns and 4 rows of blocks of 3 strips, the upper left one lying, the numbered side up',
    },
    {
      recipe: USUAL_PARQUET,
      count: 1,
      reads:
        'parquet, a quarter-turned match of 1 leaf from leaf 1, in 4 columns and 4 rows of blocks, the upper left one upright, the numbered side up',
    },
    {
      recipe: { ...USUAL_PLANKS, seed: 7 },
      count: 5,
      reads:
        'random, a face without match of 5 leaves from leaf 1, widths unlike by up to 35 % (draw 7), the leaves as they come, numbered ends all at the top, the numbered side up',
    },
    {
      recipe: {
        ...USUAL_PLANKS,
        look: 'planked',
        widths: [140, 95.5],
        order: 'shuffled',
        ends: 'mixed',
        sideUp: 'other',
      },
      count: 3,
      reads:
        'planked, a face without match of 3 leaves from leaf 1, from the left 140 mm, 95.5 mm, the rest wide, the leaves shuffled, numbered ends at either end, the other side up',
    },
    {
      recipe: { ...USUAL_STRIPS, match: 'slip', equal: 'before trimming', sideUp: 'other' },
      count: 6,
      reads: 'centre balance, a slip match of 6 leaves from leaf 1, equal before trimming, the other side up',
    },
    {
      recipe: { ...USUAL_STRIPS, equal: 'before trimming', match: 'reverse slip' },
      count: 4,
      reads:
        'centre balance, a reverse slip match of 4 leaves from leaf 1, equal before trimming, every other one spun, the numbered side up',
    },
    {
      recipe: { ...USUAL_STRIPS, equal: 'before trimming', match: 'slip-centre-book', spine: 'left' },
      count: 6,
      reads:
        'centre balance, a slip-centre-book match of 6 leaves from leaf 1, equal before trimming, opened on its left edge',
    },
    {
      recipe: { ...USUAL_FOUR_WAY, equal: 'before trimming', numberedEnds: 'inside', spine: 'left' },
      count: 8,
      reads:
        'four-way, a book and end match of 8 leaves from leaf 1, numbered ends at the cross seam, equal before trimming, opened on its left edge',
    },
    {
      recipe: { ...USUAL_END_MATCH, rows: 3, order: 'down and up', numberedEnds: 'inside' },
      count: 6,
      reads:
        'end match, a book and end match of 6 leaves from leaf 1, in 3 rows, run down one column and up the next, numbered ends below in the top row, equal after trimming, opened on its right edge',
    },
    {
      recipe: { ...USUAL_DIAMOND, runs: 'to the centre', angle: 37.5 },
      count: 4,
      reads:
        'reverse diamond, a match in both centre lines of 4 leaves from leaf 1, the grain at 37.5°, numbered ends at the corners, the first leaf with its numbered side up',
    },
    {
      recipe: { ...USUAL_BOX, grain: 'across the edges', sideUp: 'other' },
      count: 4,
      reads:
        'reverse box, a mitred match of 4 leaves from leaf 1, numbered ends at the edges, the first leaf with its other side up',
    },
    {
      recipe: { ...USUAL_RADIAL, firstSeam: 22.5, laying: 'anticlockwise', cutFull: 0.1 },
      count: 12,
      reads:
        'radial, a book match of 12 leaves from leaf 1, numbered ends at the centre, the first seam at 22.5°, the leaves in a circle, each wedge cut 0.1° full, opened on its right edge, laid anticlockwise',
    },
    {
      recipe: { ...USUAL_RADIAL, match: 'slip', numberedEnds: 'outside' },
      count: 8,
      reads:
        'radial, a slip match of 8 leaves from leaf 1, numbered ends at the rim, the first seam at 0°, the leaves in a circle, each wedge cut 0.05° full',
    },
  ])('[T20] $reads', ({ recipe, count, reads }) => {
    const part = { ...door, recipe, overhang: over }
    expect(recipeSentence(part, count, 'mm')).toBe(`Door, left is faced in ${reads}${AFTER}`)
  })

  it('[T20] edges that differ are said one by one, in the shop’s unit', () => {
    const part: Part = {
      ...door,
      overhang: { top: 12.7, right: 6.35, bottom: 19.05, left: 3.175 },
      jointing: 'pair',
      allowance: 1.5875,
    }
    expect(recipeSentence(part, 4, 'in')).toContain(
      'with 1/8 in over at the left, 1/4 in at the right, 1/2 in at the top, 3/4 in at the bottom, and 1/16 in an edge for jointing in pairs.',
    )
  })

  it('[T20] each value says which decision it stands for', () => {
    const pieces = recipePieces({ ...door, overhang: over }, 4, 'mm')
    const fields = pieces.flatMap((piece) => ('field' in piece ? [`${piece.field}: ${piece.value}`] : []))
    expect(fields).toEqual([
      'name: Door, left',
      'arrangement: centre balance',
      'match: book',
      'count: 4',
      'firstLeaf: 1',
      'equal: after',
      'spine: right',
      'sides: 6 mm',
      'ends: 10 mm',
      'allowance: 3 mm',
      'jointing: in a packet',
    ])
  })
})
