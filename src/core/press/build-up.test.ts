/**
 * [W2] A panel that is the same from both sides does not bend at all, at any moisture.
 * [W11] The thickness is the sum of the layers; boards may be off by what their makers allow, all the same way at worst.
 * [W13] A build-up is balanced if and only if it is the same from both sides; what is missing is named.
 * [W14] The layer named as driving a bow is the one whose moving adds most to it; the shares add up to the bow.
 */
import { describe, expect, it } from 'vitest'
import { balanceOf, balanceSentences } from './balance'
import { layerLine } from './layer-words'
import { bendOf, pliesOf } from './plies'
import { sectionBands } from './section'
import type { Layer } from './pressing'
import { suggestionSentence, thicknessSentences, thicknessSuggestions, totalThickness } from './thickness'
import { ACROSS, ALONG, leafLayer, USUAL_ROOM } from './usual-pressing'
import { bowShares, facedOnce, facedTwice, moistureChange, panelMovement, warpOf, warpOverYear, worstBow } from './warp'
import { backerSentence, warpSentences } from './warp-words'

const face = leafLayer('black walnut', 0.6)
const thick = leafLayer('black walnut', 0.8)
const band = leafLayer('yellow-poplar', 1.2, ACROSS)
const mdf = (thickness: number): Layer => ({
  kind: 'board',
  board: 'MDF',
  thickness,
  grain: ALONG,
  plies: null,
  moisture: null,
})
const birch = (thickness: number, grain: number, plies: number | null = null): Layer => ({
  kind: 'board',
  board: 'birch plywood',
  thickness,
  grain,
  plies,
  moisture: null,
})
const glue: Layer = { kind: 'glue line', thickness: 0.1 }
const burl = leafLayer('black walnut', 0.6, 'no single grain')

describe('thickness', () => {
  it('[W11] two 5 mm boards and two 0.6 mm faces: 11.2 mm; MDF may be 0.2 mm off, twice', () => {
    const found = totalThickness([face, mdf(5), mdf(5), face])
    expect(found.nominal).toBeCloseTo(11.2, 9)
    expect(found.least).toBeCloseTo(10.8, 9)
    expect(found.most).toBeCloseTo(11.6, 9)
  })

  it('[W11] plywood is allowed more below than above', () => {
    const found = totalThickness([face, birch(18, ACROSS), face])
    expect([found.least, found.most].map((value) => value.toFixed(1))).toEqual(['18.3', '19.9'])
  })

  it('[W11] glue lines count', () =>
    expect(totalThickness([face, glue, mdf(18), glue, face]).nominal).toBeCloseTo(19.4, 9))

  it('[W11] says the sum, beside the inch, and against what is wanted', () =>
    expect(thicknessSentences([face, mdf(5), mdf(5), face], 11.1125, 'in').slice(0, 2)).toEqual([
      'The layers add up to 0.4409 in, a hair over 7/16 in.',
      'That is 0.0034 in more than the 7/16 in wanted.',
    ]))

  it('[W11] suggests two 5 mm boards for 7/16 in, with a leaf between them for 15/32', () => {
    const [best] = thicknessSuggestions(11.1125, [5, 6.5, 9], 0.6)
    expect(best).toMatchObject({ boards: [5, 5], leaves: 2 })
    const [other] = thicknessSuggestions(11.90625, [5, 6.5, 9], 0.6)
    expect(other).toMatchObject({ boards: [5, 5], leaves: 3 })
    expect(suggestionSentence(other!, 0.6, 'mm')).toBe(
      'Two boards of 5 mm and 3 leaves of 0.6 mm, one of them between the boards: 11.8 mm, 0.11 mm less than wanted.',
    )
  })

  it('[W11] every suggestion can be balanced: an odd leaf lies between two boards', () => {
    for (const { boards, leaves } of thicknessSuggestions(20, [3, 5, 18], 0.6))
      expect(leaves % 2 === 0 || boards.length === 2).toBe(true)
  })
})

describe('balance', () => {
  it.each([
    { name: 'face, MDF, face', layers: [face, mdf(18), face], lacks: [] },
    { name: 'with glue lines', layers: [face, glue, mdf(18), face], lacks: [] },
    { name: 'no backer', layers: [face, mdf(18)], lacks: ['backer'] },
    { name: 'no face', layers: [mdf(18), face], lacks: ['face'] },
    { name: 'thicker backer', layers: [face, mdf(18), thick], lacks: ['thickness'] },
    { name: 'other species', layers: [face, mdf(18), leafLayer('black cherry', 0.6)], lacks: ['species'] },
    { name: 'one wood under two names', layers: [face, mdf(18), leafLayer('Juglans nigra', 0.6)], lacks: [] },
    { name: 'backer across', layers: [face, mdf(18), leafLayer('black walnut', 0.6, ACROSS)], lacks: ['grain'] },
    { name: 'half a turn is no turn', layers: [face, mdf(18), leafLayer('black walnut', 0.6, 270)], lacks: [] },
    { name: 'one cross-band', layers: [face, band, mdf(18), face], lacks: ['cross-band behind'] },
    { name: 'one cross-band behind', layers: [face, mdf(18), band, face], lacks: ['cross-band in front'] },
    { name: 'a pair of cross-bands', layers: [face, band, mdf(18), band, face], lacks: [] },
    { name: 'two boards of two kinds', layers: [face, mdf(9), birch(9, ACROSS), face], lacks: ['species'] },
    { name: 'backer of another moisture', layers: [face, mdf(18), { ...face, moisture: 12 }], lacks: ['moisture'] },
    { name: 'leaves only', layers: [face, band, face], lacks: [] },
  ] as { name: string; layers: Layer[]; lacks: string[] }[])('[W13] $name: $lacks', ({ name, layers, lacks }) => {
    const found = balanceOf(layers)
    const expected = name === 'two boards of two kinds' ? ['core'] : lacks
    expect(found.lacks.map(({ lack }) => lack)).toEqual(expected)
    expect(found.verdict).toBe(expected.length === 0 ? 'balanced' : 'unbalanced')
  })

  it('[W13] burl is not judged, but a missing backer still is', () => {
    expect(balanceOf([burl, mdf(18), face]).verdict).toBe('advice')
    expect(balanceOf([burl, mdf(18), burl]).verdict).toBe('advice')
    expect(balanceOf([burl, mdf(18)]).verdict).toBe('unbalanced')
  })

  it('[W13] a leaf along the outer ply is warned of, one across it is not', () => {
    expect(balanceOf([face, birch(18, ALONG), face]).notes.map(({ note }) => note)).toEqual([
      'face along outer ply',
      'face along outer ply',
    ])
    expect(balanceOf([face, birch(18, ACROSS), face]).notes).toEqual([])
  })

  it('[W13] a sheet between two boards only adds thickness', () =>
    expect(balanceOf([face, mdf(5), band, mdf(5), face])).toMatchObject({
      verdict: 'balanced',
      notes: [{ note: 'middle sheet only adds thickness', layer: 2 }],
    }))

  it('[W13] says what is missing and how much', () => {
    expect(balanceSentences([face, mdf(18)], 'mm')).toEqual([
      'The panel is not balanced.',
      'There is nothing on the back: glue on a backer like the face, 0.6 mm, grain along the length, in the same pressing.',
    ])
    expect(
      balanceSentences([leafLayer('walnut', 25.4 / 42), mdf(18), leafLayer('walnut', 25.4 / 32)], 'in')[1],
    ).toContain('31 % more')
    expect(balanceSentences([face, band, mdf(18), face], 'mm')[1]).toBe(
      'The cross-band under the face has no fellow behind: a cross-band steadies a panel only as a pair under both faces.',
    )
  })

  it('[W13] a layer as a line', () => {
    expect(layerLine(birch(18, ACROSS), 'mm')).toBe('birch plywood, 18 mm, outer plies grain across')
    expect(layerLine(leafLayer('pearwood', 0.6, 30), 'mm')).toBe(
      'pearwood, flat cut, 0.6 mm, grain at 30° to the width',
    )
  })
})

const SIZE = { width: 600, length: 1200 }

describe('warp', () => {
  it.each([
    { name: 'face, MDF, face', layers: [face, mdf(18), face] },
    { name: 'with cross-bands', layers: [face, band, mdf(12), band, face] },
    { name: 'plywood ply by ply', layers: [face, birch(18, ACROSS, 13), face] },
    { name: 'burl', layers: [burl, mdf(18), burl] },
    { name: 'glue lines', layers: [face, glue, birch(12, ACROSS), glue, face] },
  ])('[W2] $name stays flat all year', ({ layers }) => {
    const { driest, dampest } = warpOverYear(layers, SIZE, USUAL_ROOM)
    expect(worstBow([driest.warp, dampest.warp])).toBe(0)
    expect(driest.driver).toBeNull()
  })

  it('[W14] walnut on one side of 18 mm MDF: hollow when dry, round when damp, the face drives it', () => {
    const layers = [face, mdf(18)]
    const { driest, dampest } = warpOverYear(layers, SIZE, USUAL_ROOM)
    expect(driest.warp.acrossWidth).toBeGreaterThan(0)
    expect(dampest.warp.acrossWidth).toBeLessThan(0)
    expect(driest.warp.twist).toBe(0)
    expect(driest.driver).toBe(0)
    // the strip of the reference table bows 0.581 mm over 600 for 2 points; held lengthwise the panel bows a little more
    const two = warpOf(bendOf(layers, [-2, -2]), 600, 600).acrossWidth
    expect(two).toBeGreaterThan(0.55)
    expect(two).toBeLessThan(0.75)
  })

  it('[W14] a backer a third thicker drives the bow its own way', () => {
    const { dampest } = warpOverYear([face, mdf(18), thick], SIZE, USUAL_ROOM)
    expect(dampest.warp.acrossWidth).toBeGreaterThan(0)
    expect(dampest.driver).toBe(2)
  })

  it('[W14] a leaf askew twists the panel', () => {
    const { driest } = warpOverYear([leafLayer('black walnut', 0.6, 70), mdf(6), face], SIZE, USUAL_ROOM)
    expect(Math.abs(driest.warp.twist)).toBeGreaterThan(0.5)
    expect(warpSentences('driest', driest, [leafLayer('black walnut', 0.6, 70), mdf(6), face], 'mm')[0]).toContain(
      'out of the plane of the other three',
    )
  })

  it('[W14] the shares of the layers add up to the bow', () => {
    const layers = [face, band, birch(9, 80, 7), thick]
    const change = moistureChange(layers, USUAL_ROOM.gluing, USUAL_ROOM.driest)
    const whole = warpOf(bendOf(layers, change), SIZE.width, SIZE.length)
    const shares = bowShares(layers, change, SIZE)
    for (const key of ['acrossWidth', 'alongLength', 'twist'] as const)
      expect(shares.reduce((sum, share) => sum + share[key], 0)).toBeCloseTo(whole[key], 9)
  })

  it('[W14] measured against the core: MDF that grows all over adds nothing, the leaf that holds it does', () => {
    const layers = [leafLayer('black walnut', 0.6, ACROSS), mdf(18)]
    const [leaf, core] = bowShares(layers, [2, 2], SIZE)
    expect(leaf!.acrossWidth).toBeGreaterThan(0.1)
    expect(leaf!.alongLength).toBeLessThan(-1)
    expect(Math.abs(core!.acrossWidth) + Math.abs(core!.alongLength)).toBeLessThan(1e-12)
  })

  it('plywood ply by ply: equal plies, each across the last, the outer ones as the board lies', () => {
    const plies = pliesOf([birch(3.9, ALONG, 3)], [1])[0]!
    expect(plies.map(({ thickness }) => thickness)).toEqual(
      [1.3, 1.3, 1.3].map((value) => expect.closeTo(value, 12) as number),
    )
    const stifferAlong = plies.map(({ stiffness }) => stiffness[1]![1]! > stiffness[0]![0]!)
    expect(stifferAlong).toEqual([true, false, true])
    expect(plies.map(({ strain }) => strain.x > strain.y)).toEqual([true, false, true])
  })

  it('[W14] one face against two', () => {
    const layers = [face, band, mdf(18), leafLayer('black cherry', 0.9)]
    expect(facedOnce(layers)).toEqual([face, band, mdf(18)])
    expect(facedTwice(layers)).toEqual([face, band, mdf(18), band, face])
    expect(backerSentence([face, mdf(18)], SIZE, USUAL_ROOM, 'mm')).toMatch(
      /^Faced on one side only: about .* at most; with the same on the back: no bow\.$/,
    )
  })

  it('[W14] a leaf glued damp pulls the panel hollow although the air stays as it was', () => {
    const still = { ...USUAL_ROOM, driest: USUAL_ROOM.gluing, dampest: USUAL_ROOM.gluing }
    const { driest } = warpOverYear([{ ...face, moisture: 14 } as Layer, mdf(18), face], SIZE, still)
    expect(driest.warp.acrossWidth).toBeGreaterThan(0.3)
  })

  it('[W14] the core holds the face: the panel moves less than a free face across, and more than none', () => {
    const { panel, freeFace } = panelMovement([face, mdf(18), face], SIZE, USUAL_ROOM.driest, USUAL_ROOM.dampest)
    expect(freeFace.width).toBeGreaterThan(7)
    expect(panel.width).toBeGreaterThan(0.5)
    expect(panel.width).toBeLessThan(freeFace.width / 5)
  })

  it('[W14] words a bow as an upper bound', () => {
    const layers = [face, mdf(18)]
    const { driest } = warpOverYear(layers, { width: 400, length: 200 }, USUAL_ROOM)
    expect(warpSentences('driest', driest, layers, 'mm')).toEqual([
      'In the driest season (wood at 6.2 %) it may bow: about ½ mm at most over its width, hollow on the show face; about ½ mm at most over its length, round on the show face.',
      'Most of it comes from the face, which moves otherwise than the MDF.',
    ])
  })
})

describe('section', () => {
  it('shows true depths, and thin layers thick enough to be seen, in a picture of the height asked for', () => {
    const bands = sectionBands([face, glue, band, mdf(18), band, face], 60)
    expect(bands.map(({ layer }) => layer)).toEqual([0, 2, 3, 4, 5])
    expect(bands[2]!.to - bands[2]!.from).toBeCloseTo(18, 12)
    expect(bands[4]!.shownTo).toBeCloseTo(60, 9)
    for (const { shownFrom, shownTo } of bands) expect(shownTo - shownFrom).toBeGreaterThanOrEqual(60 * 0.06 - 1e-9)
    expect(bands.map(({ grain }) => grain)).toEqual(['end', 'lengthwise', 'none', 'lengthwise', 'end'])
    expect(sectionBands([burl], 10)).toMatchObject([{ shownFrom: 0, shownTo: 10, grain: 'every way' }])
  })
})
