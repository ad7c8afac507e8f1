/**
 * [Y3] The pieces of a border against closed formulas and an independent library.
 *
 * Mitred frame: each band is a trapezoid, its area half the sum of its parallel sides times its width (Euclid's Elements
 * I.41, any handbook). Butted: rectangles. Ring: an annulus of n equal parts, π(R² − r²)/n each (Archimedes, Measurement of
 * a Circle). String: the frame between two rectangles. What of each piece lies in the disc: JSTS 2.12, OverlayOp, on the same points.
 */
import { describe, expect, it } from 'vitest'
import { bandPieces } from '../../src/core/faces/border-cells'
import { threeSizes } from '../../src/core/faces/face'
import { BORDER } from '../../src/core/faces/window-group'
import { point } from '../../src/core/geometry/point'
import { polygonArea, type Ring } from '../../src/core/geometry/polygon'
import { present } from '../../src/core/invariant'
import type { Part } from '../../src/core/job/job'
import { USUAL_BORDER, type Border } from '../../src/core/patterns/border'
import { jstsArea } from '../fixtures/geometry/oracles'
import { allEdges, faceOf, partOf, radial, strips } from '../properties/job-builders'

const bordered = (over: Partial<Part>, border: Partial<Border>) => ({
  ...partOf({ overhang: allEdges(0), recipe: strips({ count: 4 }), ...over }),
  border: { ...USUAL_BORDER, ...border },
})

type Bordered = ReturnType<typeof bordered>

/** Of the border alone, before it has leaves. */
const piecesOf = (part: Bordered) => bandPieces(part, threeSizes(part).outlines.sheet)

/** The pieces along one edge of a rectangle: T, R, B or L. */
const bandArea = (part: Bordered, edge: string): number =>
  piecesOf(part)
    .filter(({ id }) => id.startsWith(`X${edge}`))
    .reduce((sum, { face }) => sum + polygonArea([face.ring]), 0)

const [W, L, B] = [700, 460, 55]

describe('[Y3] a border on a rectangle', () => {
  it('mitred: four trapezoids, and a string all round between them and the field', () => {
    const part = bordered({ width: W, length: L }, { width: B, string: { width: 2, species: 'holly' } })
    const across = ((W + (W - 2 * B)) / 2) * B
    const along = ((L + (L - 2 * B)) / 2) * B
    for (const edge of ['T', 'B']) expect(bandArea(part, edge)).toBeCloseTo(across, 6)
    for (const edge of ['L', 'R']) expect(bandArea(part, edge)).toBeCloseTo(along, 6)
    const field = faceOf(part)
      .pieces.filter(({ cell }) => cell.group !== BORDER)
      .reduce((sum, { cell }) => sum + polygonArea([cell.face.ring]), 0)
    const string = (W - 2 * B) * (L - 2 * B) - (W - 2 * B - 4) * (L - 2 * B - 4)
    expect(field + string + 2 * across + 2 * along).toBeCloseTo(W * L, 6)
  })

  it.each([
    { corners: 'sides through' as const, across: (W - 2 * B) * B, along: L * B },
    { corners: 'ends through' as const, across: W * B, along: (L - 2 * B) * B },
  ])('butted, $corners: four rectangles', ({ corners, across, along }) => {
    const part = bordered({ width: W, length: L }, { width: B, corners, grain: 'along', pieceLength: 1000 })
    expect(piecesOf(part)).toHaveLength(4)
    for (const edge of ['T', 'B']) expect(bandArea(part, edge)).toBeCloseTo(across, 6)
    for (const edge of ['L', 'R']) expect(bandArea(part, edge)).toBeCloseTo(along, 6)
  })
})

describe('[Y3] a border round a circle', () => {
  const round: Partial<Part> = { width: 600, length: 600, outline: { shape: 'circle' }, recipe: radial({ count: 8 }) }

  it.each([90, 160, 400])('in segments of at most %d mm: equal parts of the ring, to 1e-4', (pieceLength) => {
    const segments = piecesOf(bordered(round, { width: 50, pieceLength }))
    // no segment turns by more than a sixth of the circle
    const count = Math.max(6, Math.ceil((Math.PI * 600) / pieceLength))
    expect(segments).toHaveLength(count)
    const each = (Math.PI * (300 ** 2 - 250 ** 2)) / count
    for (const { face } of segments) expect(Math.abs(polygonArea([face.ring]) / each - 1)).toBeLessThan(1e-4)
  })

  it('field and border together: what JSTS finds of each piece within the disc adds up to the disc', () => {
    const face = faceOf(bordered(round, { width: 50 }))
    const snapped = (ring: Ring<'panel'>): Ring<'panel'> =>
      ring.map(({ x, y }) => point(Math.round(x * 1e3) / 1e3, Math.round(y * 1e3) / 1e3))
    const disc = [[snapped(face.sizes.outlines.finished.ring)]]
    const within = face.pieces.map(({ cell }) =>
      jstsArea('intersection', [[snapped(cell.face.ring)]] as never, disc as never),
    )
    const sum = within.reduce<number>((all, area) => all + present(area, 'JSTS gave up'), 0)
    expect(Math.abs(sum / (Math.PI * 300 ** 2) - 1)).toBeLessThan(1e-4)
  })
})
