/**
 * [S20] Where every edge can have its least overhang with the seams on the centre, they lie there.
 * [S21] Else every edge has it, and no smaller shift of either end would give it; where that cannot be, both edges lack
 *       the same at the worst place.
 * [S22] The sheet turned and shifted as told, from lying by its edges, has the overhangs and trims told.
 */
import { describe, expect, it } from 'vitest'
import type { ThreeBoxes } from '../faces/face'
import { point } from '../geometry/point'
import { centreAsCut, plannedMeasures, type AsCut, type SheetMeasures } from './as-cut'

/** A door of 372 x 560 mm, pressed at its finished size, the sheet 6 mm over at the sides and 10 mm at the ends. */
const about = (x: number, y: number) => ({ min: point<'panel'>(-x, -y), max: point<'panel'>(x, y) })
const DOOR: ThreeBoxes = { finished: about(186, 280), core: about(186, 280), sheet: about(192, 290) }

const across = (topLeft: number, topRight: number, bottomLeft: number, bottomRight: number): SheetMeasures => ({
  across: { top: { left: topLeft, right: topRight }, bottom: { left: bottomLeft, right: bottomRight } },
  along: null,
})

const overs = ({ edges }: AsCut) => edges.map(({ ends }) => ends.map(({ over }) => over))

describe('a sheet measured as cut', () => {
  it('[S20] lies as planned when it is as planned', () => {
    for (const hasCross of [false, true]) {
      const answer = centreAsCut(plannedMeasures(DOOR, hasCross), DOOR, 5)
      expect(answer.turn).toBeCloseTo(0, 12)
      expect(answer.shift.x).toBeCloseTo(0, 12)
      expect(answer.onCentre).toBe(true)
      expect(overs(answer).flat()).toEqual(hasCross ? [6, 6, 6, 6, 10, 10, 10, 10] : [6, 6, 6, 6])
    }
  })

  it('[S20] is shifted by half the difference, and the seam is on the centre', () => {
    // 3 mm of difference with enough over on both sides
    const answer = centreAsCut(across(194.5, 191.5, 194.5, 191.5), DOOR, 5)
    expect(answer.byEdges).toEqual({ top: 1.5, bottom: 1.5, left: null, right: null })
    expect(answer.shift.x).toBeCloseTo(-1.5, 12)
    expect(answer.turn).toBeCloseTo(0, 12)
    expect(answer.off).toMatchObject({ top: 0, bottom: 0 })
    expect(overs(answer)).toEqual([
      [8.5, 8.5],
      [5.5, 5.5],
    ])
    expect(answer.edges.map(({ ends }) => ends[0].trim)).toEqual([8.5, 5.5])
  })

  it('[S20] is turned clockwise when its seam leans to the left at the top', () => {
    const answer = centreAsCut(across(192, 196, 196, 192), DOOR, 5)
    // 2 mm left of the middle at the top, 2 mm right at the bottom, over 580 mm
    expect(answer.turn).toBeCloseTo(Math.atan(4 / 580), 9)
    expect(answer.byEdges.top).toBeLessThan(-1.9)
    expect(answer.byEdges.bottom).toBeGreaterThan(1.9)
    expect(answer.off).toMatchObject({ top: 0, bottom: 0 })
  })

  it.each([
    { cut: '9 mm off', sheet: across(201, 183, 201, 183) },
    { cut: '1.5 mm off', sheet: across(193.5, 190.5, 193.5, 190.5) },
  ])('[S21] $cut: both edges are given what there is', ({ sheet }) => {
    const answer = centreAsCut(sheet, DOOR, 5)
    const [left, right] = answer.edges.map(({ ends }) => ends[0].over) as [number, number]
    expect(answer.onCentre).toBe(false)
    expect(right).toBeCloseTo(5, 9)
    expect(left + right).toBeCloseTo(12, 9)
    // the seam lies to the right of the centre, by as little as will do
    expect(answer.off.top).toBeCloseTo(5 - (sheet.across.top.right - 186), 9)
    expect(answer.keeps).toBe(true)
  })

  it('[S21] too narrow at one end only: the lack is split there, the other end keeps to the centre', () => {
    const answer = centreAsCut(across(189, 187, 192, 192), DOOR, 5)
    const [left, right] = answer.edges
    expect(left!.ends[0].over).toBeCloseTo(right!.ends[0].over, 6)
    expect(left!.ends[0].over).toBeLessThan(5)
    expect(left!.keeps || right!.keeps).toBe(false)
    expect(answer.off.bottom).toBeCloseTo(0, 6)
    expect(answer.keeps).toBe(false)
  })

  it('[S21] both seams of a four-way turn together', () => {
    const planned = plannedMeasures(DOOR, true)
    const along = { left: { above: 284.5, below: 295.5 }, right: { above: 295.5, below: 284.5 } }
    const answer = centreAsCut({ ...planned, along }, DOOR, 5)
    // the left end wants to go up, the right one down: a turn clockwise, which the upright seam has to share
    expect(answer.keeps).toBe(true)
    const slope = (answer.off.right! - answer.off.left!) / 372
    expect((answer.off.top - answer.off.bottom) / 560).toBeCloseTo(slope, 6)
    expect(slope).not.toBe(0)
  })
})
