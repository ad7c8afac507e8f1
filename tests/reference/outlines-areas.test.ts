/**
 * Outlines of panels against closed formulas and an independent library, and outlines read from files.
 *
 * [O4] Areas of circle, ellipse, regular polygon and circular segment: elementary geometry (any handbook). Areas of cells:
 * JSTS 2.12, OverlayOp, on the same points.
 * [O5] Offsets: Steiner's formula for convex shapes, area + perimeter · d + (corners) d².
 * [O8] Files: written here by hand in the form that SVG 1.1 and the DXF reference describe.
 */
import { describe, expect, it } from 'vitest'
import { panelRing, type PanelOutline } from '../../src/core/geometry/panel-outline'
import { intersect } from '../../src/core/geometry/clip'
import { distance, point } from '../../src/core/geometry/point'
import { regionArea, ringEdges, signedArea, type Region } from '../../src/core/geometry/polygon'
import { CHORD_ERROR } from '../../src/core/geometry/tolerance'
import { fittedPart } from '../../src/core/job/fitted-part'
import { present } from '../../src/core/invariant'
import { readOutline } from '../../src/documents/outlines/read-outline'
import { shapeArea } from '../../src/documents/outlines/shape'
import { allEdges, faceOf, partOf, radial } from '../properties/job-builders'
import { jstsArea } from '../fixtures/geometry/oracles'

const areaOf = (outline: PanelOutline, width: number, length: number, by = 0): number =>
  signedArea(present(panelRing(outline, { width, length }, allEdges(by)), 'no ring').ring)

const relative = (got: number, wanted: number): number => Math.abs(got / wanted - 1)

describe('[O4] areas of outlines', () => {
  it.each([40, 120, 560, 1800])('circle of %d mm: πr², to 1e-4', (d) => {
    expect(relative(areaOf({ shape: 'circle' }, d, d), (Math.PI * d * d) / 4)).toBeLessThan(1e-4)
    expect(relative(areaOf({ shape: 'circle' }, d, d, 8), Math.PI * (d / 2 + 8) ** 2)).toBeLessThan(1e-4)
    const { ring } = present(panelRing({ shape: 'circle' }, { width: d, length: d }, allEdges(0)), 'no ring')
    for (const { a, b } of ringEdges(ring))
      for (const p of [a, point<'panel'>((a.x + b.x) / 2, (a.y + b.y) / 2)])
        expect(Math.abs(distance(p, point(0, 0)) - d / 2)).toBeLessThanOrEqual(CHORD_ERROR)
  })

  it.each([
    [300, 500],
    [1200, 700],
    [90, 800],
  ])('ellipse of %d x %d mm: πab, to 1e-4', (w, l) => {
    expect(relative(areaOf({ shape: 'ellipse' }, w, l), (Math.PI * w * l) / 4)).toBeLessThan(1e-4)
  })

  it('regular polygons: n/2 · R² · sin(2π/n)', () => {
    // a hexagon standing on a side is 2R wide
    expect(areaOf({ shape: 'polygon', sides: 6 }, 400, 0)).toBeCloseTo(3 * 200 ** 2 * Math.sin(Math.PI / 3), 6)
    // an octagon standing on a side is R · 2cos(π/8) wide
    const radius = 200 / Math.cos(Math.PI / 8)
    expect(areaOf({ shape: 'polygon', sides: 8 }, 400, 0)).toBeCloseTo(4 * radius ** 2 * Math.sin(Math.PI / 4), 6)
  })

  it('arch: a rectangle and a circular segment R²/2 · (θ − sin θ)', () => {
    const [w, l, rise] = [440, 900, 120]
    const radius = (w * w) / (8 * rise) + rise / 2
    const angle = 2 * Math.asin(w / 2 / radius)
    const wanted = w * (l - rise) + (radius ** 2 / 2) * (angle - Math.sin(angle))
    expect(relative(areaOf({ shape: 'arch top', rise }, w, l), wanted)).toBeLessThan(1e-4)
  })

  it('cells of a round sunburst, its centre moved: JSTS finds the same area in what they have in common with a square', () => {
    const part = partOf({
      width: 560,
      length: 560,
      outline: { shape: 'circle' },
      recipe: radial({ centre: point(40, -30) }),
    })
    const square: Region<'panel'> = [[[point(-200, -200), point(150, -200), point(150, 230), point(-200, 230)]]]
    for (const { cell } of faceOf(fittedPart(part, 'width')).pieces) {
      const snapped = cell.face.ring.map(({ x, y }) =>
        point<'panel'>(Math.round(x * 1e3) / 1e3, Math.round(y * 1e3) / 1e3),
      )
      const ours = regionArea(intersect([[snapped]], square))
      const theirs = present(jstsArea('intersection', [[snapped]] as never, square as never), 'JSTS gave up')
      expect(Math.abs(ours - theirs)).toBeLessThan(1e-6 * theirs)
    }
  })
})

describe('[O5] moved out', () => {
  it('an L keeps its square corners: area + perimeter · d + (5 − 1) d²', () => {
    const L = [
      [0, 0],
      [300, 0],
      [300, 100],
      [120, 100],
      [120, 400],
      [0, 400],
    ].map(([x, y]) => ({ at: point<'panel'>(x!, y!), bulge: 0 }))
    const d = 8
    expect(areaOf({ shape: 'drawn', corners: L }, 0, 0, d)).toBeCloseTo(66_000 + 1400 * d + 4 * d * d, 3)
    expect(areaOf({ shape: 'drawn', corners: L }, 0, 0, -d)).toBeCloseTo(66_000 - 1400 * d + 4 * d * d, 3)
  })
})

const taken = (name: string, text: string) => {
  const read = readOutline(name, text)
  if (!read.ok) throw new Error(read.reason)
  return read.value
}

describe('[O8] outlines from files', () => {
  const svg = (body: string, size = 'width="400mm" height="400mm" viewBox="0 0 400 400"') =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${body}</svg>`

  it('takes the largest closed shape, in the unit that is stated', () => {
    const found = taken(
      'door.svg',
      svg('<rect x="5" y="5" width="60" height="40"/><circle cx="200" cy="200" r="150"/>'),
    )
    expect(found.shapes).toBe(2)
    expect(found.unit).toBe('millimetres, as the file states')
    expect(relative(shapeArea(found.corners), Math.PI * 150 ** 2)).toBeLessThan(1e-4)
    const inches = taken(
      'a.svg',
      svg('<rect width="10" height="20"/>', 'width="10in" height="20in" viewBox="0 0 10 20"'),
    )
    expect(shapeArea(inches.corners)).toBeCloseTo(200 * 25.4 ** 2, 6)
    const plain = taken('a.svg', svg('<rect width="96" height="192"/>', ''))
    expect(plain.unit).toContain('states no unit')
    expect(shapeArea(plain.corners)).toBeCloseTo(2 * 25.4 ** 2, 6)
  })

  it('follows transforms and curves', () => {
    const turned = taken(
      'a.svg',
      svg('<g transform="translate(200 200) rotate(30)"><path d="M-50-40h100v80h-100z"/></g>'),
    )
    expect(shapeArea(turned.corners)).toBeCloseTo(8000, 6)
    // a quarter each of an ellipse by arcs, flags without a gap
    const oval = taken(
      'a.svg',
      svg('<path d="M200 100a100 60 0 01 0 120a100 60 0 01 0-120z" transform="scale(1.5,1)"/>'),
    )
    expect(relative(shapeArea(oval.corners), 1.5 * Math.PI * 100 * 60)).toBeLessThan(1e-4)
    // under a parabola: 2/3 of base x height
    const parabola = taken('a.svg', svg('<path d="M0 300Q150 0 300 300z"/>'))
    expect(relative(shapeArea(parabola.corners), (2 / 3) * 300 * 150)).toBeLessThan(1e-4)
  })

  const dxf = (entities: string, units = 4) =>
    `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n${units}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`
  const polyline = '0\nLWPOLYLINE\n8\n0\n90\n3\n70\n1\n10\n0\n20\n0\n10\n300\n20\n0\n42\n0.5\n10\n300\n20\n200\n'

  it('reads polylines with bulges the right way round, lines and arcs end to end, and the units', () => {
    const { corners } = taken('a.dxf', dxf(polyline))
    // y points up in the file: a positive bulge goes anticlockwise and out of this shape
    const [chord, angle] = [200, 4 * Math.atan(0.5)]
    const radius = chord / 2 / Math.sin(angle / 2)
    expect(relative(shapeArea(corners), 30_000 + (radius ** 2 / 2) * (angle - Math.sin(angle)))).toBeLessThan(1e-4)
    const asInches = taken('a.dxf', dxf(polyline, 1))
    expect(asInches.unit).toBe('inches, as the file states')
    expect(relative(shapeArea(asInches.corners) / shapeArea(corners), 25.4 ** 2)).toBeLessThan(1e-4)
    const line = (x: number, y: number, u: number, v: number) =>
      `0\nLINE\n8\n0\n10\n${x}\n20\n${y}\n11\n${u}\n21\n${v}\n`
    const arch = `${line(0, 0, 200, 0)}${line(0, 300, 0, 0)}${line(200, 300, 200, 0)}0\nARC\n8\n0\n10\n100\n20\n300\n40\n100\n50\n0\n51\n180\n`
    const joined = taken('a.dxf', dxf(arch))
    expect(relative(shapeArea(joined.corners), 60_000 + (Math.PI * 100 ** 2) / 2)).toBeLessThan(1e-4)
    // seen as drawn: the arc is on top, where y is least here
    expect(Math.min(...joined.corners.map(({ at }) => at.y))).toBeLessThanOrEqual(-300)
  })

  it('says why nothing could be taken', () => {
    const refusalOf = (name: string, text: string) => {
      const read = readOutline(name, text)
      return read.ok ? '' : read.reason
    }
    expect(refusalOf('a.png', '')).toBe('a.png is not an SVG or DXF file.')
    expect(refusalOf('a.svg', 'letters')).toContain('a.svg can’t be read as an SVG file.')
    expect(refusalOf('a.dxf', 'letters')).toContain('a.dxf')
    expect(refusalOf('a.svg', svg('<path d="M0 0L100 0L100 80"/>'))).toContain(
      'no closed shape. It has 1 line that does not close.',
    )
  })
})
