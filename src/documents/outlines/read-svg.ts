/**
 * Closed shapes in an SVG file: rectangles, circles, ellipses, polygons and closed paths, moved and turned as the file
 * says. Input: the text. Output: shapes in mm, y down as there. Tolerance: curves run beside their polygons by the chord
 * error at most; arcs of circles stay arcs. Failure: throws what the reader throws.
 */
import { parseSync, type INode } from 'svgson'
import { compose, identity, transformPoint, type Transform } from '../../core/geometry/transform'
import { point } from '../../core/geometry/point'
import { pathShapes } from './svg-path'
import { corner, type FoundShapes, type Shape } from './shape'
import { svgTransform } from './svg-transform'

type Map = Transform<'panel', 'panel'>

const MM: Readonly<Record<string, readonly [number, string]>> = {
  mm: [1, 'millimetres, as the file states'],
  cm: [10, 'centimetres, as the file states'],
  in: [25.4, 'inches, as the file states'],
  pt: [25.4 / 72, 'points of 1/72 in, as the file states'],
  pc: [25.4 / 6, 'picas of 1/6 in, as the file states'],
  px: [25.4 / 96, 'pixels of 1/96 in, as the file states'],
}
const NO_UNIT = [25.4 / 96, 'pixels of 1/96 in, since the file states no unit'] as const

export function shapesInSvg(text: string): FoundShapes {
  const root = parseSync(text)
  if (root.name !== 'svg') throw new Error('no drawing in it')
  const { map, unit } = userToMm(root)
  const found = { shapes: [] as Shape[], open: 0 }
  collect(root, map, found)
  return { ...found, unit }
}

/** From the drawing's own unit to millimetres. */
function userToMm({ attributes }: INode): { readonly map: Map; readonly unit: string } {
  const told = /^\s*([\d.eE+-]+)\s*([a-z]*)\s*$/.exec(attributes['width'] ?? '')
  const [mm, unit] = (told?.[2] ? MM[told[2]] : undefined) ?? NO_UNIT
  const view = (attributes['viewBox'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number)
  const wide = view.length === 4 && view[2]! > 0 && told ? (Number(told[1]) * mm) / view[2]! : mm
  return { map: { ...identity<'panel'>(), a: wide, d: wide }, unit }
}

const HIDDEN = new Set(['defs', 'clipPath', 'mask', 'symbol', 'marker', 'pattern'])

function collect(node: INode, outer: Map, found: { shapes: Shape[]; open: number }): void {
  if (HIDDEN.has(node.name)) return
  const own = node.attributes['transform']
  const map = own ? compose(outer, svgTransform(own)) : outer
  const drawn = drawnBy(node, map)
  found.shapes.push(...drawn.closed)
  found.open += drawn.open
  for (const child of node.children) collect(child, map, found)
}

function drawnBy({ name, attributes }: INode, map: Map): { readonly closed: readonly Shape[]; readonly open: number } {
  const number = (key: string) => Number.parseFloat(attributes[key] ?? '0')
  const one = (path: string) => pathShapes(path, map)
  switch (name) {
    case 'path':
      return pathShapes(attributes['d'] ?? '', map)
    case 'rect':
      return one(rectPath(number('x'), number('y'), number('width'), number('height'), number('rx') || number('ry')))
    case 'circle':
      return one(ovalPath(number('cx'), number('cy'), number('r'), number('r')))
    case 'ellipse':
      return one(ovalPath(number('cx'), number('cy'), number('rx'), number('ry')))
    case 'polygon': {
      const values = (attributes['points'] ?? '')
        .trim()
        .split(/[\s,]+/)
        .map(Number)
      const corners = Array.from({ length: Math.floor(values.length / 2) }, (_, i) => {
        const { x, y } = transformPoint(map, point<'panel'>(values[2 * i]!, values[2 * i + 1]!))
        return corner(x, y)
      })
      return { closed: corners.length > 2 ? [corners] : [], open: 0 }
    }
    default:
      return { closed: [], open: 0 }
  }
}

function rectPath(x: number, y: number, w: number, h: number, r: number): string {
  if (!(w > 0 && h > 0)) return ''
  if (!(r > 0)) return `M${x} ${y}h${w}v${h}h${-w}z`
  const [a, b] = [Math.min(r, w / 2), Math.min(r, h / 2)]
  const turn = (dx: number, dy: number) => `a${a} ${b} 0 0 1 ${dx} ${dy}`
  return `M${x + a} ${y}h${w - 2 * a}${turn(a, b)}v${h - 2 * b}${turn(-a, b)}h${2 * a - w}${turn(-a, -b)}v${2 * b - h}${turn(a, -b)}z`
}

const ovalPath = (x: number, y: number, rx: number, ry: number): string =>
  rx > 0 && ry > 0 ? `M${x - rx} ${y}a${rx} ${ry} 0 0 1 ${2 * rx} 0a${rx} ${ry} 0 0 1 ${-2 * rx} 0z` : ''
