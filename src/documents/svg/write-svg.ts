import { boxHeight, boxWidth } from '../../core/geometry/box'
import type { Point } from '../../core/geometry/point'
import {
  LAYERS,
  type Arc,
  type Drawing,
  type Fill,
  type Item,
  type Line,
  type Picture,
  type Text,
} from '../../core/drawing/drawing'
import { pointOnArc } from '../../core/drawing/item-box'
import { numeral } from '../numerals'

/**
 * Writes a drawing as SVG 1.1: one unit is 1 mm, y down as in the drawing, one group a layer with the layer's
 * name for its id, painted in the order of `LAYERS`. Arcs are arcs.
 */
export function writeSvg(drawing: Drawing): string {
  const { min } = drawing.extent
  const [width, height] = [boxWidth(drawing.extent), boxHeight(drawing.extent)].map(n)
  const clips = new ClipPaths()
  const groups = LAYERS.flatMap((layer) => {
    const items = drawing.items.filter((item) => item.layer === layer)
    return items.length > 0 ? [`<g id="${layer}">`, ...items.map((item) => itemMarkup(item, clips)), '</g>'] : []
  })
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}mm" height="${height}mm" viewBox="${n(min.x)} ${n(min.y)} ${width} ${height}" fill="none" stroke-linejoin="round" font-family="'Source Sans 3', sans-serif">`,
    `<title>${escaped(drawing.title)}</title>`,
    ...clips.markup(),
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}

const n = (value: number): string => numeral(value, 4)

const xy = (p: Point<'sheet'>): string => `${n(p.x)},${n(p.y)}`

function itemMarkup(item: Item, clips: ClipPaths): string {
  switch (item.kind) {
    case 'line':
      return lineMarkup(item)
    case 'fill':
      return fillMarkup(item)
    case 'arc':
      return arcMarkup(item)
    case 'text':
      return textMarkup(item)
    case 'picture':
      return pictureMarkup(item, clips)
  }
}

function lineMarkup({ points, closed, pen, colour, dash, dashFrom }: Line): string {
  const dashes = dash ? ` stroke-dasharray="${dash.map(n).join(' ')}"` : ''
  const offset = dash && dashFrom ? ` stroke-dashoffset="${n(dashFrom)}"` : ''
  const shape = closed ? 'polygon' : 'polyline'
  return `<${shape} points="${points.map(xy).join(' ')}"${stroke(pen, colour)}${dashes}${offset}/>`
}

const fillMarkup = ({ points, colour }: Fill): string =>
  `<polygon points="${points.map(xy).join(' ')}" fill="${colour}"/>`

function arcMarkup(arc: Arc): string {
  const { centre, radius, from, to, pen, colour } = arc
  if (to - from >= 2 * Math.PI - 1e-9)
    return `<circle cx="${n(centre.x)}" cy="${n(centre.y)}" r="${n(radius)}"${stroke(pen, colour)}/>`
  const large = to - from > Math.PI ? 1 : 0
  const path = `M${xy(pointOnArc(arc, from))} A${n(radius)},${n(radius)} 0 ${large} 1 ${xy(pointOnArc(arc, to))}`
  return `<path d="${path}"${stroke(pen, colour)}/>`
}

function textMarkup({ at, text, size, anchor, angle, weight, colour }: Text): string {
  const degrees = (angle * 180) / Math.PI
  const attributes = [
    `x="${n(at.x)}" y="${n(at.y)}" font-size="${n(size)}" fill="${colour ?? '#000000'}"`,
    anchor === 'start' ? '' : `text-anchor="${anchor}"`,
    weight === 'bold' ? 'font-weight="700"' : '',
    angle === 0 ? '' : `transform="rotate(${n(degrees)} ${n(at.x)} ${n(at.y)})"`,
  ]
  return `<text ${attributes.filter((part) => part !== '').join(' ')}>${escaped(text)}</text>`
}

function pictureMarkup({ bytes, type, unitToSheet, clip }: Picture, clips: ClipPaths): string {
  const { a, b, c, d, e, f } = unitToSheet
  const matrix = [a, b, c, d, e, f].map((value) => numeral(value, 6)).join(' ')
  const image = `<image width="1" height="1" preserveAspectRatio="none" transform="matrix(${matrix})" xlink:href="data:image/${type};base64,${base64(bytes)}"/>`
  return clip ? `<g clip-path="url(#${clips.idOf(clip)})">${image}</g>` : image
}

const stroke = (pen: number, colour: string | null): string =>
  ` stroke="${colour ?? '#000000'}" stroke-width="${n(pen)}"`

/** Clip paths are defined once before the groups, in the order in which pictures ask for them. */
class ClipPaths {
  private readonly paths: string[] = []

  idOf(clip: readonly Point<'sheet'>[]): string {
    this.paths.push(clip.map(xy).join(' '))
    return `clip-${this.paths.length}`
  }

  markup(): string[] {
    if (this.paths.length === 0) return []
    const paths = this.paths.map((points, i) => `<clipPath id="clip-${i + 1}"><polygon points="${points}"/></clipPath>`)
    return ['<defs>', ...paths, '</defs>']
  }
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text as XML takes it: line breaks are spaces, and what no XML file may hold is left out. */
const escaped = (text: string): string =>
  text
    .replace(/[\ud800-\udfff]/gu, '\ufffd')
    .replace(/[\t\n\r]+/g, ' ')
    // eslint-disable-next-line no-control-regex -- they are just what is meant
    .replace(/[\u0000-\u001f\ufffe\uffff]/g, '')
    .replace(/[&<>"]/g, (character) => entities[character]!)

function base64(bytes: Uint8Array): string {
  let binary = ''
  for (let i = 0; i < bytes.length; i += 8192) binary += String.fromCharCode(...bytes.subarray(i, i + 8192))
  return btoa(binary)
}
