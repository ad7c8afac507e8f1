/**
 * Every finding of a face: one case that makes it appear, with its place and its amount, and one that does not.
 *
 * [K1] A finding appears when there is reason for it, and not otherwise. [K2] It names leaf, side and amount.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../../src/core/derive'
import type { FindingCode } from '../../src/core/finding'
import { withoutMemory } from '../../src/core/fit/answers'
import { point } from '../../src/core/geometry/point'
import type { Part } from '../../src/core/job/job'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Defect, Leaf } from '../../src/core/leaves/leaf'
import { box } from '../fixtures/geometry/shapes'
import { allEdges, codesOf, faceOf, findingsOf, flitchOf, fourWay, jobOf, partOf, radial, strips } from './job-builders'

interface Said {
  readonly code: FindingCode
  readonly when: string
  readonly yes: readonly [Partial<Part>, Partial<Flitch>?]
  readonly no: readonly [Partial<Part>, Partial<Flitch>?]
}

const usual = flitchOf()
const leavesWith = (number: number, over: Partial<Leaf>): Pick<Flitch, 'leaves'> => ({
  leaves: usual.leaves.map((leaf) => (leaf.number === number ? { ...leaf, ...over } : leaf)),
})
const knot: Defect = { id: 'k', kind: 'knot', note: '', shape: 'spot', centre: point(107, 1200), radius: 8 }
const stain: Defect = { ...knot, id: 's', kind: 'stain' }
const four = strips({ count: 4 })
const inTheMiddle = { window: point<'leaf'>(107.5, 1200) }

const CASES: readonly Said[] = [
  {
    code: 'play-empty',
    when: 'a panel is longer than its leaves',
    yes: [{ length: 2500, recipe: four }],
    no: [{ recipe: four }],
  },
  {
    code: 'short',
    when: 'a panel is longer than its leaves',
    yes: [{ length: 2500, recipe: four }],
    no: [{ length: 2380, recipe: four }],
  },
  {
    code: 'narrow',
    when: 'two leaves have to be enough',
    yes: [{ recipe: strips({ count: 2 }) }],
    no: [{ recipe: four }],
  },
  {
    code: 'sliver',
    when: 'a running match leaves a narrow rest',
    yes: [{ width: 640, recipe: strips({ arrangement: 'running' }) }],
    no: [{ width: 660, recipe: strips({ arrangement: 'running' }) }],
  },
  {
    code: 'odd-count',
    when: 'a seam is wanted on the centre',
    yes: [{ recipe: strips({ count: 5 }) }],
    no: [{ recipe: four }],
  },
  {
    code: 'even-count',
    when: 'a leaf is wanted on the centre',
    yes: [{ recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 4 }) }],
    no: [{ recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 5 }) }],
  },
  {
    code: 'defect-in-face',
    when: 'the window lies over a knot',
    yes: [{ recipe: four, positions: inTheMiddle }, leavesWith(2, { defects: [knot] })],
    no: [{ recipe: four }, leavesWith(2, { defects: [knot] })],
  },
  {
    code: 'defect-in-face',
    when: 'the class of the face does not bear the defect',
    yes: [{ recipe: four, positions: inTheMiddle }, leavesWith(2, { defects: [stain] })],
    no: [{ recipe: four, positions: inTheMiddle, showClass: 'hidden' }, leavesWith(2, { defects: [stain] })],
  },
  {
    code: 'sequence-broken',
    when: 'a leaf is missing within the run',
    yes: [{ recipe: four }, { missing: [{ after: 2, count: 1 }] }],
    no: [{ recipe: four }, { missing: [{ after: 4, count: 1 }] }],
  },
  {
    code: 'sequence-broken',
    when: 'a leaf of the run is set aside',
    yes: [{ recipe: four }, leavesWith(3, { state: 'set aside' })],
    no: [{ recipe: four }, leavesWith(5, { state: 'set aside' })],
  },
  {
    code: 'sequence-broken',
    when: 'a leaf has been chosen by hand',
    yes: [{ recipe: four, chosen: { L1: 9 } }],
    no: [{ recipe: four, chosen: { R2: 1 } }],
  },
  {
    code: 'overhang-small',
    when: 'one edge stands over too little',
    yes: [{ overhang: { ...allEdges(10), left: 4 } }],
    no: [{ overhang: allEdges(5) }],
  },
  {
    code: 'outside-play',
    when: 'the window has been put where it does not fit',
    yes: [{ recipe: four, positions: { window: point(107, 300) } }],
    no: [{ recipe: four, positions: { window: point(107, 380) } }],
  },
  {
    code: 'no-leaf',
    when: 'the run comes to the end of the flitch',
    yes: [{ recipe: strips({ count: 4, firstLeaf: 22 }) }],
    no: [{ recipe: strips({ count: 4, firstLeaf: 21 }) }],
  },
  {
    code: 'bare-width',
    when: 'no more leaves may be taken',
    yes: [{ recipe: strips({ arrangement: 'running', count: 2 }) }],
    no: [{ recipe: strips({ arrangement: 'running', count: 3 }) }],
  },
  {
    code: 'seam-long',
    when: 'a seam is longer than 2500 mm',
    yes: [{ length: 2481, recipe: four }],
    no: [{ length: 2480, recipe: four }],
  },
  {
    code: 'nudge-dropped',
    when: 'another leaf lies there now',
    yes: [{ recipe: four, nudges: { L1: { leaf: 7, by: point(1, 0) } } }],
    no: [{ recipe: four, nudges: { L1: { leaf: 3, by: point(1, 0) } } }],
  },
  {
    code: 'centred',
    when: 'the seam lies on the centre',
    yes: [{ recipe: four }],
    no: [{ recipe: strips({ arrangement: 'running' }) }],
  },
  {
    code: 'off-centre',
    when: 'an even number is cut equal from a sheet that stands over unequally',
    yes: [{ recipe: strips({ arrangement: 'balance', count: 4 }), overhang: { ...allEdges(10), left: 6 } }],
    no: [{ recipe: strips({ arrangement: 'centre balance', count: 4 }), overhang: { ...allEdges(10), left: 6 } }],
  },
  {
    code: 'off-centre',
    when: 'so that the leaf in the middle is not',
    yes: [{ recipe: strips({ arrangement: 'balance', count: 5 }), overhang: { ...allEdges(10), right: 7 } }],
    no: [
      {
        recipe: strips({ arrangement: 'balance', count: 5, equal: 'after trimming' }),
        overhang: { ...allEdges(10), right: 7 },
      },
    ],
  },
  {
    code: 'figure-breaks',
    when: 'one cell has been shifted on its leaf',
    yes: [{ recipe: four, nudges: { L1: { leaf: 3, by: point(0, 0.2) } } }],
    no: [{ recipe: four, nudges: { L1: { leaf: 3, by: point(0, 0.04) } } }],
  },
  {
    code: 'figure-breaks',
    when: 'a booked sunburst has an odd number of wedges',
    yes: [{ width: 400, length: 400, recipe: radial({ count: 9 }) }],
    no: [{ width: 400, length: 400, recipe: radial({ count: 10 }) }],
  },
  {
    code: 'figure-meets',
    when: 'all seams are mirrors',
    yes: [{ width: 380, recipe: fourWay() }],
    no: [{ recipe: four, nudges: { R1: { leaf: 2, by: point(1, 0) } } }],
  },
]

const face = ([part, flitch]: Said['yes']) => faceOf(partOf(part), flitchOf(flitch))

describe('findings', () => {
  it.each(CASES)('[K1] $code when $when', ({ code, yes, no }) => {
    expect(codesOf(face(yes))).toContain(code)
    expect(codesOf(face(no))).not.toContain(code)
  })

  it('[K1] a plain face has nothing wrong', () => {
    expect(face([{ recipe: four }]).findings.filter(({ grade }) => grade !== 'good')).toEqual([])
  })

  it('[K1] a slipped sunburst is not told that it breaks: no mirror was promised', () => {
    expect(codesOf(face([{ width: 400, length: 400, recipe: radial({ count: 8, match: 'slip' }) }]))).not.toContain(
      'figure-breaks',
    )
  })
})

describe('what findings say', () => {
  const lacks = (said: Said['yes'], code: FindingCode) =>
    findingsOf(face(said), code)
      .map(({ about, measured }) => `${about.leaf} ${about.side} ${measured!.toFixed(1)}`)
      .sort()

  it('[K2] short: at both ends of every leaf alike, or of the one that is shorter', () => {
    // 2520 mm of sheet on 2400 mm of leaf: 60 at either end where the window lies best
    expect(lacks([{ length: 2500, recipe: strips({ count: 2 }), width: 380 }], 'short')).toEqual([
      '1 far end 60.0',
      '1 numbered end 60.0',
      '2 far end 60.0',
      '2 numbered end 60.0',
    ])
    const oneShort = leavesWith(3, { outline: box(0, 500, 215, 1200) })
    expect(lacks([{ recipe: four }, oneShort], 'short')).toEqual(['3 far end 20.0', '3 numbered end 20.0'])
  })

  it('[K2] short: by more than the pieces are wide', () => {
    const long = face([{ length: 3380, recipe: four }])
    expect(findingsOf(long, 'play-empty')[0]!.measured).toBeCloseTo(500, 1)
    expect(new Set(findingsOf(long, 'short').map(({ measured }) => measured!.toFixed(1)))).toEqual(new Set(['500.0']))
    expect(codesOf(long)).not.toContain('narrow')
  })

  it('[K2] short: where the window has been pulled, at one end, with the overhang to give', () => {
    const pulled = face([{ recipe: four, positions: { window: point(107.5, 364) } }])
    expect(findingsOf(pulled, 'outside-play')[0]!.measured).toBeCloseTo(6, 6)
    const [first] = findingsOf(pulled, 'short')
    expect([first!.about.side, first!.measured!.toFixed(1)]).toEqual(['numbered end', '6.0'])
    // the numbered end lies at the top of the panel
    expect(first!.remedies[0]).toEqual({ remedy: 'less overhang', side: 'top', by: 6 })
    expect(first!.remedies).toContainEqual({
      remedy: 'move window',
      group: 'window',
      by: { x: expect.closeTo(0, 3), y: expect.closeTo(6, 3) },
    })
  })

  it('[K2] narrow and short at once where the window has been pulled over a corner', () => {
    const pulled = face([{ recipe: four, positions: { window: point(70, 364) } }])
    const of = (code: FindingCode) =>
      new Set(findingsOf(pulled, code).map(({ about, measured }) => `${about.side} ${measured!.toFixed(1)}`))
    expect(of('short')).toEqual(new Set(['numbered end 6.0']))
    // inner leaves reach 150/2 + 2.5 + 3 to one side of the window's middle, outer ones 10 - 2.5 mm less the trim
    expect([...of('narrow')].every((text) => text.startsWith('left edge'))).toBe(true)
  })

  it('[K2] narrow: half at either edge, of the leaf that is too narrow', () => {
    const thin = leavesWith(2, { outline: box(40, 0, 180, 2400) })
    // 155 mm a leaf and 3 on each edge make 161
    expect(lacks([{ recipe: four }, thin], 'narrow')).toEqual(['2 left edge 10.5', '2 right edge 10.5'])
  })

  it('[K2] defect-in-face: the leaf, the kind and the cell', () => {
    const hit = face([{ recipe: four, positions: inTheMiddle }, leavesWith(2, { defects: [knot] })])
    expect(findingsOf(hit, 'defect-in-face').map(({ about }) => about)).toEqual([
      { leaf: 2, kind: 'knot', cell: 'R1', showClass: 'show' },
    ])
  })

  it('[K2] used-twice: the later part, and not where two windows only touch', () => {
    const part = (id: string, y: number): Part =>
      partOf({ id, name: id, recipe: four, positions: { window: point(107.5, y) } })
    const codes = (y: number) =>
      derive(jobOf([part('one', 400), part('two', y)], usual), withoutMemory).parts.map((derived) =>
        findingsOf(derived, 'used-twice'),
      )
    const [one, two] = codes(1139)
    expect(one).toEqual([])
    // on four leaves, 1 mm of 161 mm of rough piece each
    expect(two!.map(({ measured, about }) => [about.leaf, about.other, Math.round(measured!)])).toEqual([
      [4, 'one', 161],
      [3, 'one', 161],
      [2, 'one', 161],
      [1, 'one', 161],
    ])
    expect(codes(1140).flat()).toEqual([])
  })

  it('[K2] used-twice: one leaf in two cells of a face', () => {
    const twice = face([{ recipe: four, chosen: { L1: 2 } }])
    expect(findingsOf(twice, 'used-twice').map(({ about }) => [about.leaf, about.same])).toEqual([[2, 1]])
  })

  it('[K2] off-centre: by half of what the overhangs differ, towards the larger one', () => {
    const [off] = findingsOf(
      face([{ recipe: strips({ arrangement: 'balance', count: 4 }), overhang: { ...allEdges(10), left: 6 } }]),
      'off-centre',
    )
    expect([off!.measured, off!.about.left, off!.about.right]).toEqual([
      expect.closeTo(2, 9),
      expect.closeTo(302, 9),
      expect.closeTo(298, 9),
    ])
  })

  it('[K2] no-leaf: how many are lacking, and where the run could start', () => {
    const [lacking] = findingsOf(face([{ recipe: strips({ count: 4, firstLeaf: 22 }) }]), 'no-leaf')
    expect(lacking!.about).toEqual({ lacking: 1, needed: 4, first: 22 })
    expect(lacking!.remedies).toEqual([{ remedy: 'start at leaf', leaf: 21 }])
  })

  it('[K2] figure-breaks: by how much it jumps, at the two seams of the shifted cell', () => {
    const shifted = face([{ recipe: four, nudges: { L1: { leaf: 3, by: point(0, 0.7) } } }])
    expect(findingsOf(shifted, 'figure-breaks').map(({ about, measured }) => [about.letter, measured])).toEqual([
      ['A', expect.closeTo(0.7, 9)],
      ['B', expect.closeTo(0.7, 9)],
    ])
  })
})
