/**
 * One lopsided drawing, written as PDF, SVG and DXF and read back by readers that share nothing with the writers.
 *
 * [D1] Every writer keeps the hand: what reads as an F is an F on paper, never its mirror image.
 * [D2] Every writer keeps the size to 0.01 mm.
 * [D3] Arcs and circles stay arcs and circles in SVG and DXF, and follow them to 0.002 mm in PDF.
 * [D4] Text is written as typed: Latin, Greek, Cyrillic, fractions, and signs that a format reserves.
 * [D5] DXF is in millimetres with y up; every item is on the layer of its meaning.
 */
import DxfParser from 'dxf-parser'
import { parseSync, type INode } from 'svgson'
import { describe, expect, it } from 'vitest'
import { point, type Point } from '../../src/core/geometry/point'
import { signedArea } from '../../src/core/geometry/polygon'
import { writeDxf } from '../../src/documents/dxf/write-dxf'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { writeSvg } from '../../src/documents/svg/write-svg'
import { F_CORNERS, fonts, lopsided } from './documents-lopsided'
import { readPdf } from './documents-read-pdf'

const CLOSE = 0.01

const expectSame = (found: readonly Point<'sheet'>[], wanted: readonly Point<'sheet'>[]) => {
  expect(found).toHaveLength(wanted.length)
  found.forEach((p, i) => {
    expect(Math.abs(p.x - wanted[i]!.x)).toBeLessThan(CLOSE)
    expect(Math.abs(p.y - wanted[i]!.y)).toBeLessThan(CLOSE)
  })
}

const writtenPdf = async () => {
  const page = { width: 150, height: 160, label: 'A1', bookmark: null, items: lopsided.items }
  const written = await writePdf({ title: 'F', pages: [page], created: new Date(0), id: 'a'.repeat(32) }, fonts)
  if (!written.ok) throw new Error(written.reason.reason)
  return readPdf(written.value)
}

describe('PDF, read by pdf.js', () => {
  it('[D1] [D2] the F has its corners where they were drawn, the same way round', async () => {
    const [page] = (await writtenPdf()).pages
    const outline = page!.strokes[0]!
    expect(outline.closed).toBe(true)
    expectSame(outline.points, F_CORNERS)
    expect(Math.sign(signedArea(outline.points))).toBe(Math.sign(signedArea(F_CORNERS)))
    expect(page!.width).toBeCloseTo(150, 3)
    expectSame(page!.fills[0]!.points, [point(100, 60), point(120, 60), point(100, 75)])
  })

  it('[D3] the arc begins and ends where it should and stays on its circle', async () => {
    const [page] = (await writtenPdf()).pages
    const [arc] = page!.strokes.filter(({ curved, closed }) => curved && !closed)
    const wanted = [Math.PI / 6, Math.PI].map((a) => point<'sheet'>(90 + 24 * Math.cos(a), 110 + 24 * Math.sin(a)))
    expectSame([arc!.points[0]!, arc!.points.at(-1)!], wanted)
    for (const p of arc!.points) {
      expect(Math.abs(Math.hypot(p.x - 90, p.y - 110) - 24)).toBeLessThan(0.002)
      // the lower side of the circle: an arc drawn the other way round would pass above the centre
      expect(p.y).toBeGreaterThan(110 - CLOSE)
    }
  })

  it('[D1] [D4] texts stand where they were put, turned as they were, as they were typed', async () => {
    const [page] = (await writtenPdf()).pages
    const joined = (from: number) => page!.texts.filter(({ angle }) => Math.abs(angle - from) < 1e-6)
    expect(joined(0).map(({ text }) => text)).toEqual(['Left edge', 'Φύλλο & Дуб 7 < 8 "½"'])
    expectSame([joined(0)[0]!.at], [point(50, 50)])
    expect(joined(-Math.PI / 2).map(({ text }) => text)).toEqual(['up'])
    expect(joined(-Math.PI / 2)[0]!.at.x).toBeCloseTo(60, 2)
    expect(joined(-Math.PI / 2)[0]!.at.y).toBeGreaterThan(125)
    expect(page!.texts.filter(({ mirrored }) => mirrored)).toEqual([])
  })
})

describe('SVG, read by an XML parser', () => {
  const root = parseSync(writeSvg(lopsided))
  const all = (node: INode, name: string): INode[] => [
    ...(node.name === name ? [node] : []),
    ...node.children.flatMap((child) => all(child, name)),
  ]
  const points = (node: INode) =>
    node.attributes.points!.split(' ').map((pair) => {
      const [x, y] = pair.split(',').map(Number)
      return point<'sheet'>(x!, y!)
    })
  const layer = (id: string) => root.children.find((child) => child.attributes.id === id)!

  it('[D1] [D2] the F keeps corners and hand; one unit is a millimetre', () => {
    expect(root.attributes).toMatchObject({ width: '120mm', height: '140mm', viewBox: '10 5 120 140' })
    const outline = all(layer('cut'), 'polygon')[0]!
    expectSame(points(outline), F_CORNERS)
    expect(outline.attributes.transform ?? layer('cut').attributes.transform).toBeUndefined()
  })

  it('[D3] an arc is an arc of its radius, clockwise as seen, and a circle a circle', () => {
    const numbers = all(layer('trim'), 'path')[0]!
      .attributes.d!.match(/-?[\d.]+/g)!
      .map(Number)
    const [x1, y1, rx, ry, tilt, large, sweep, x2, y2] = numbers
    expectSame([point(x1!, y1!)], [point(90 + 24 * Math.cos(Math.PI / 6), 122)])
    expect([rx, ry, tilt, large, sweep]).toEqual([24, 24, 0, 0, 1])
    expectSame([point(x2!, y2!)], [point(66, 110)])
    expect(all(layer('mark'), 'circle')[0]!.attributes).toMatchObject({ cx: '110', cy: '40', r: '8.5' })
  })

  it('[D4] text is escaped and reads as typed', () => {
    const read = (node: INode) => node.children.map(({ value }) => value).join('')
    const unescaped = (value: string) =>
      value.replace(/&(lt|gt|quot|amp);/g, (_, name: string) => ({ lt: '<', gt: '>', quot: '"', amp: '&' })[name]!)
    const texts = all(layer('text'), 'text')
    expect(texts.map((node) => unescaped(read(node)))).toEqual(['Left edge', 'Φύλλο & Дуб 7 < 8 "½"', 'up'])
    expect(texts[1]!.attributes).toMatchObject({ x: '125', y: '130', 'text-anchor': 'end' })
    expect(texts[2]!.attributes.transform).toBe('rotate(-90 60 125)')
  })
})

describe('DXF, read by dxf-parser', () => {
  const written = writeDxf(lopsided)
  const dxf = new DxfParser().parseSync(written)!
  const of = (type: string) => dxf.entities.filter((entity) => entity.type === type)
  // back to the drawing: its extent's lower left corner is 10, 145
  const down = ({ x, y }: { x: number; y: number }) => point<'sheet'>(x + 10, 145 - y)

  it('[D1] [D2] [D5] the F keeps corners and hand on the layer cut, in millimetres', () => {
    expect(dxf.header.$INSUNITS).toBe(4)
    const outline = of('LWPOLYLINE')[0]! as unknown as {
      vertices: { x: number; y: number }[]
      shape: boolean
      layer: string
    }
    expect(outline.shape).toBe(true)
    expect(outline.layer).toBe('cut')
    expectSame(outline.vertices.map(down), F_CORNERS)
    // y is up there: the long arm of the F, drawn first, is the highest line
    expect(outline.vertices[0]!.y).toBe(Math.max(...outline.vertices.map(({ y }) => y)))
  })

  it('[D3] arcs and circles are true', () => {
    type Round = {
      center: { x: number; y: number }
      radius: number
      startAngle: number
      endAngle: number
      layer: string
    }
    const [arc] = of('ARC') as unknown as Round[]
    expect(arc!.radius).toBeCloseTo(24, 6)
    expect(arc!.layer).toBe('trim')
    // anticlockwise from its start, y up: from the left end round below to the right end
    const at = (angle: number) =>
      down({ x: arc!.center.x + 24 * Math.cos(angle), y: arc!.center.y + 24 * Math.sin(angle) })
    const middle = (arc!.startAngle + arc!.endAngle) / 2
    expectSame(
      [arc!.startAngle, middle, arc!.endAngle].map(at),
      [Math.PI, (7 * Math.PI) / 12, Math.PI / 6].map((a) => point(90 + 24 * Math.cos(a), 110 + 24 * Math.sin(a))),
    )
    const [circle] = of('CIRCLE') as unknown as Round[]
    expectSame([down(circle!.center)], [point(110, 40)])
    expect(circle!.radius).toBe(8.5)
  })

  it('[D4] texts stand where they were put, in ASCII, and read as typed', () => {
    type DxfText = { text: string; startPoint: { x: number; y: number }; textHeight: number; rotation: number }
    const texts = of('TEXT') as unknown as DxfText[]
    const typed = (text: string) =>
      text.replace(/\\U\+([0-9A-F]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    expect(texts.map(({ text }) => typed(text))).toEqual(['Left edge', 'Φύλλο & Дуб 7 < 8 "½"', 'up'])
    expectSame([down(texts[0]!.startPoint)], [point(50, 50)])
    expect(texts[0]!.textHeight).toBeCloseTo(6 * 0.66, 6)
    expect(texts[2]!.rotation).toBe(90)
    expect(/^[\x20-\x7e\n]*$/.test(written)).toBe(true)
  })

  it('[D5] every handle is used once, and the seed is free', () => {
    const groups = written.split('\n')
    const handles = groups.flatMap((code, i) =>
      i % 2 === 0 && (code === '5' || code === '105') ? [groups[i + 1]!] : [],
    )
    expect(new Set(handles).size).toBe(handles.length)
    const seed = handles[0]!
    expect(handles.slice(1).every((handle) => Number.parseInt(handle, 16) < Number.parseInt(seed, 16))).toBe(true)
  })
})
