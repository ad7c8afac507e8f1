/**
 * [W19] What is glued to an edge first takes its thickness off the board; what comes last takes it off the sawn panel.
 * [W20] Behind a hollow face the developed width grows, behind a round one it shrinks, by thickness x angle.
 * [W21] Laid leaf by leaf, every leaf after the first touches one that lies, and every seam is cut through once.
 */
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { FIND_BLISTERS, afterwardsSentences, blisterSentence } from './afterwards'
import { arcByRadius, arcByRise, curveSentence, curveTrouble, developed } from './curved-work'
import {
  coreSentence,
  edgeEffect,
  edgeOrder,
  edgeSpare,
  edgeStrips,
  lippingBefore,
  pressedEdge,
  sizeWith,
} from './edges'
import { GLUE_NAMES } from './glues'
import { hammerOrder, hammerSentences } from './hammer-work'
import type { Curve, EdgeWork } from './pressing'
import { sandingBudget, sandingSentence } from './sanding'
import { usualPressing } from './usual-pressing'

const BARE: EdgeWork = { edge: 'bare' }
const all = (edge: EdgeWork) => ({ top: edge, right: edge, bottom: edge, left: edge })
const same = (by: number) => ({ top: by, right: by, bottom: by, left: by })
const PANEL = { width: 400, length: 600 }

describe('edges', () => {
  it.each([
    { name: 'bare', edge: BARE, board: 412, pressed: 412, sawn: 400 },
    {
      name: 'lipped before, 8 mm',
      edge: { edge: 'lipped before', thickness: 8 } as const,
      board: 384,
      pressed: 408,
      sawn: 400,
    },
    {
      name: 'lipped after, 8 mm',
      edge: { edge: 'lipped after', thickness: 8 } as const,
      board: 396,
      pressed: 396,
      sawn: 384,
    },
    {
      name: 'edge veneer first',
      edge: { edge: 'edge veneer first', thickness: 0.6 } as const,
      board: 398.8,
      pressed: 400,
      sawn: 400,
    },
    {
      name: 'edge veneer last',
      edge: { edge: 'edge veneer last', thickness: 0.6 } as const,
      board: 410.8,
      pressed: 410.8,
      sawn: 398.8,
    },
  ])('[W19] $name: board $board, pressed $pressed, sawn $sawn', ({ edge, board, pressed, sawn }) => {
    const effect = edgeEffect(all(edge), same(pressedEdge(edge, 6)))
    expect(sizeWith(PANEL, effect.board).width).toBeCloseTo(board, 9)
    expect(sizeWith(PANEL, effect.pressed).width).toBeCloseTo(pressed, 9)
    expect(sizeWith(PANEL, effect.sawn).width).toBeCloseTo(sawn, 9)
  })

  it('[W19] each edge by itself: lipping the left edge first shrinks the board there alone', () => {
    const edges = { ...all(BARE), left: { edge: 'lipped before', thickness: 8 } as const }
    const effect = edgeEffect(edges, { ...same(6), left: pressedEdge(edges.left, 6) })
    expect(effect.board).toEqual({ ...same(6), left: -8 })
    expect(lippingBefore(edges.left, effect, 'left')).toBe(12)
  })

  it.each([
    { name: 'bare', edge: BARE },
    { name: 'lipped after', edge: { edge: 'lipped after', thickness: 8 } as const },
    { name: 'edge veneer last', edge: { edge: 'edge veneer last', thickness: 0.6 } as const },
  ])('[W19] what is sawn off stays when the work changes to $name and back', ({ edge }) => {
    for (const spare of [0, 4, 10]) expect(edgeSpare(edge, pressedEdge(edge, spare))).toBeCloseTo(spare, 9)
  })

  it('[W19] the order: first ones before the press, last ones after sawing', () => {
    const order = edgeOrder({
      top: { edge: 'lipped after', thickness: 6 },
      right: { edge: 'edge veneer last', thickness: 0.6 },
      bottom: { edge: 'lipped before', thickness: 6 },
      left: BARE,
    })
    const at = (word: RegExp) => order.findIndex((line) => word.test(line))
    expect(at(/lower end/)).toBeLessThan(at(/^Press/))
    expect(at(/^Press/)).toBeLessThan(at(/^Saw/))
    expect(at(/^Saw/)).toBeLessThan(at(/upper end/))
    expect(at(/upper end/)).toBeLessThan(at(/right side/))
    expect(coreSentence(PANEL, all({ edge: 'lipped after', thickness: 8 }), same(-2), 'mm')).toBe(
      'Cut the board 396 mm × 596 mm. After pressing saw it to 384 mm × 584 mm; what comes on last makes it 400 mm × 600 mm.',
    )
  })

  it('[W19] strips: 19.2 mm of edge take 25.2; seven from a leaf of 180, a long one pieced', () => {
    const edges = all({ edge: 'edge veneer last', thickness: 0.6 })
    const strips = edgeStrips({ ...PANEL, thickness: 19.2 }, edges, { width: 180, length: 500 })!
    expect(strips.width).toBeCloseTo(25.2, 9)
    expect(strips.perLeaf).toBe(7)
    expect(strips.count).toBe(1 + 2 + 1 + 2)
    expect(strips.leaves).toBe(1)
    expect(edgeStrips({ ...PANEL, thickness: 19.2 }, all(BARE), { width: 180, length: 500 })).toBeNull()
    expect(edgeStrips({ ...PANEL, thickness: 19.2 }, edges, { width: 20, length: 500 })).toBeNull()
  })
})

describe('curved work', () => {
  const { layers } = usualPressing('walnut', 0.6)
  const thickness = 19.2

  it('[W20] chord 800 and rise 200 are a radius of 500: the right triangle 300, 400, 500', () => {
    const { radius, angle } = arcByRise(800, 200)
    expect(radius).toBeCloseTo(500, 9)
    expect(angle).toBeCloseTo(2 * Math.asin(0.8), 12)
    expect(arcByRadius(800, 500)!.angle).toBeCloseTo(angle, 12)
  })

  it('[W20] front and back differ by thickness x angle, the centre lies at mid-arc', () => {
    const curve: Curve = { by: 'rise', chord: 800, rise: 200, show: 'hollow' }
    const hollow = developed(curve, layers)!
    expect(hollow.back - hollow.front).toBeCloseTo(thickness * hollow.angle, 9)
    expect(hollow.centreFront).toBeCloseTo(hollow.front / 2, 12)
    expect(hollow.rise).toBeCloseTo(200, 9)
    const round = developed({ ...curve, show: 'round' }, layers)!
    expect(round.front - round.back).toBeCloseTo(thickness * round.angle, 9)
    expect(round.layers).toHaveLength(3)
    expect(round.layers[1]).toBeCloseTo((round.front + round.back) / 2, 9)
    expect(curveSentence(round, 'mm')).toContain('narrower')
  })

  it('[W20] a half circle and more, by its rise', () => {
    expect(arcByRise(1000, 500).angle).toBeCloseTo(Math.PI, 12)
    expect(arcByRise(1000, 600).angle).toBeGreaterThan(Math.PI)
  })

  it.each([
    { curve: { by: 'radius', radius: 300, chord: 800, show: 'round' } as const, trouble: /longer than a circle/ },
    { curve: { by: 'rise', rise: 0, chord: 800, show: 'round' } as const, trouble: /else the panel is flat/ },
    {
      curve: { by: 'radius', radius: 15, chord: 20, show: 'round' } as const,
      trouble: /can’t bend round a radius of 15 mm/,
    },
    { curve: { by: 'rise', rise: 5, chord: 0, show: 'hollow' } as const, trouble: /chord is 0 mm/ },
  ])('[W20] $curve is refused', ({ curve, trouble }) => {
    expect(curveTrouble(curve, layers, (length) => `${length} mm`)).toMatch(trouble)
    expect(developed(curve, layers)).toBeNull()
  })
})

describe('leaf by leaf', () => {
  it('[W21] five equal strips: the middle first, then outwards by turns', () => {
    const order = hammerOrder([0, 100, 200, 300, 400, 500])
    expect(order.map(({ strip }) => strip)).toEqual([2, 3, 1, 4, 0])
    expect(order.map(({ cuts }) => cuts)).toEqual([[], [300], [200], [400], [100]])
    expect(order[1]).toMatchObject({ laidLeft: 290, laidRight: 410 })
  })

  it('[W21] four strips: right of the centre seam first', () =>
    expect(hammerOrder([0, 100, 200, 300, 400]).map(({ strip }) => strip)).toEqual([2, 1, 3, 0]))

  it('[W21] any widths', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 20, max: 300 }), { minLength: 1, maxLength: 12 }), (widths) => {
        const borders = widths.reduce((sums, width) => [...sums, sums[sums.length - 1]! + width], [0])
        const order = hammerOrder(borders)
        expect(order.map(({ strip }) => strip).sort((a, b) => a - b)).toEqual(widths.map((_, i) => i))
        order.slice(1).forEach(({ cuts }) => expect(cuts.length).toBeGreaterThan(0))
        expect(order.flatMap(({ cuts }) => cuts).sort((a, b) => a - b)).toEqual(borders.slice(1, -1))
      }),
      { seed: 21 },
    )
  })

  it('[W21] tells the lines on the core and the cuts', () => {
    const words = hammerSentences(hammerOrder([0, 100, 200]), 'mm')
    expect(words[0]).toBe('Draw the seams on the core, from its left edge: 100 mm.')
    expect(words[2]).not.toContain('Cut through')
    expect(words[3]).toContain('Cut through both leaves')
  })
})

describe('afterwards', () => {
  it('no more than 0.2 mm of a 0.6 leaf, a third of a thinner one', () => {
    expect(sandingBudget(0.6).most).toBeCloseTo(0.2, 9)
    expect(sandingBudget(0.45).most).toBeCloseTo(0.15, 9)
    expect(sandingBudget(2).most).toBeCloseTo(0.6, 9)
    const { most, left, passes } = sandingBudget(0.6)
    expect(most + left).toBeCloseTo(0.6, 12)
    expect(passes.reduce((sum, { off }) => sum + off, 0)).toBeCloseTo(most, 12)
    expect(sandingSentence(0.6, 'mm')).toContain('Of 0.6 mm no more than 0.2 mm')
    expect(sandingSentence(0.6, 'in')).toContain('Of 0.024 in no more than 0.008 in')
  })

  it('a blister is ironed only where the glue softens', () => {
    const ironed = GLUE_NAMES.filter((name) => /^(Warm|Damp)/.test(blisterSentence(name)))
    expect(ironed).toEqual(['PVA', 'hide', 'contact cement'])
    expect(afterwardsSentences('PVA')[0]).toBe(FIND_BLISTERS)
  })
})
