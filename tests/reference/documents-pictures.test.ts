/**
 * [D13] A picture lies on paper as its map lays it: its top left corner where the unit square's is, mirrored only
 *   if the map mirrors, and nothing of it outside its clip. The same picture on many pages is in the file once.
 */
import { zlibSync } from 'fflate'
import { parseSync } from 'svgson'
import { describe, expect, it } from 'vitest'
import { point } from '../../src/core/geometry/point'
import { fill } from '../../src/core/drawing/build'
import type { AffineMap, Item, Picture } from '../../src/core/drawing/drawing'
import { writePdf } from '../../src/documents/pdf/write-pdf'
import { writeSvg } from '../../src/documents/svg/write-svg'
import { fonts } from './documents-lopsided'
import { rendered, renderedJpeg } from './documents-render'

/** Four squares of 8 pixels: black and dark grey above, light grey and white below. */
const greys = [0, 85, 170, 255] as const

function pngOf(): Uint8Array {
  const rows = Array.from({ length: 16 }, (_, y) => [
    0,
    ...Array.from({ length: 16 }, (_, x) => greys[(y < 8 ? 0 : 2) + (x < 8 ? 0 : 1)]!),
  ])
  const head = [0, 0, 0, 16, 0, 0, 0, 16, 8, 0, 0, 0, 0]
  const chunks = [chunk('IHDR', head), chunk('IDAT', [...zlibSync(new Uint8Array(rows.flat()))]), chunk('IEND', [])]
  return new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...chunks.flat()])
}

function chunk(name: string, data: readonly number[]): number[] {
  const body = [...[...name].map((letter) => letter.charCodeAt(0)), ...data]
  return [...fourBytes(data.length), ...body, ...fourBytes(crc(body))]
}

const fourBytes = (value: number): number[] => [24, 16, 8, 0].map((shift) => (value >>> shift) & 255)

function crc(bytes: readonly number[]): number {
  let sum = 0xffffffff
  for (const byte of bytes) {
    sum ^= byte
    for (let i = 0; i < 8; i++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1
  }
  return ~sum >>> 0
}

const png = pngOf()

const picture = (unitToSheet: AffineMap, more: Partial<Picture> = {}): Picture => ({
  kind: 'picture',
  layer: 'wood',
  bytes: png,
  type: 'png',
  unitToSheet,
  clip: null,
  ...more,
})

async function pdfOf(...pages: Item[][]): Promise<Uint8Array> {
  const result = await writePdf(
    {
      title: 'Pictures',
      created: new Date(0),
      id: 'e'.repeat(32),
      pages: pages.map((items, i) => ({ width: 120, height: 100, label: `${i}`, bookmark: null, items })),
    },
    fonts,
  )
  if (!result.ok) throw new Error(result.reason.reason)
  return result.value
}

/** The grey at a place in mm, on a page rendered at 10 pixels a millimetre. */
async function greyAt(items: Item[]) {
  const image = rendered(await pdfOf(items), 254)
  return (x: number, y: number) => image.pixels[Math.round(y * 10) * image.width + Math.round(x * 10)]!
}

const corners = [
  { x: 0.25, y: 0.25 },
  { x: 0.75, y: 0.25 },
  { x: 0.25, y: 0.75 },
  { x: 0.75, y: 0.75 },
]

describe('pictures in PDF, rendered by poppler', () => {
  it.each([
    { laid: 'upright', map: { a: 40, b: 0, c: 0, d: 60, e: 10, f: 20 } },
    { laid: 'a quarter turned', map: { a: 0, b: 40, c: -60, d: 0, e: 90, f: 20 } },
    { laid: 'turned over', map: { a: -40, b: 0, c: 0, d: 60, e: 60, f: 20 } },
  ])('[D13] $laid: each quarter where the map lays it', async ({ map }) => {
    const at = await greyAt([picture(map)])
    corners.forEach(({ x, y }, i) => {
      const found = at(map.a * x + map.c * y + map.e, map.b * x + map.d * y + map.f)
      expect(Math.abs(found - greys[i]!)).toBeLessThan(4)
    })
  })

  it('[D13] nothing outside the clip, and pens go on as before', async () => {
    const clip = [point<'sheet'>(10, 20), point<'sheet'>(25, 20), point<'sheet'>(25, 80), point<'sheet'>(10, 80)]
    const square = fill('mark', [point(100, 10), point(110, 10), point(110, 20), point(100, 20)])
    const at = await greyAt([picture({ a: 40, b: 0, c: 0, d: 60, e: 10, f: 20 }, { clip }), square])
    expect(at(20, 35)).toBeLessThan(4)
    expect(at(28, 35)).toBe(255)
    expect(at(105, 15)).toBeLessThan(4)
  })

  it('[D13] a JPEG file lies the same way', async () => {
    const jpeg = renderedJpeg(await pdfOf([picture({ a: 120, b: 0, c: 0, d: 100, e: 0, f: 0 })]), 50)
    const at = await greyAt([picture({ a: 40, b: 0, c: 0, d: 60, e: 10, f: 20 }, { bytes: jpeg, type: 'jpeg' })])
    corners.forEach(({ x, y }, i) => expect(Math.abs(at(10 + 40 * x, 20 + 60 * y) - greys[i]!)).toBeLessThan(8))
  })

  it('[D13] the same picture on two pages is in the file once', async () => {
    const map = { a: 40, b: 0, c: 0, d: 60, e: 10, f: 20 }
    const file = Buffer.from(await pdfOf([picture(map)], [picture(map)])).toString('latin1')
    expect(file.match(/\/Subtype \/Image/g)).toHaveLength(1)
  })
})

describe('pictures in SVG', () => {
  it('[D13] map, bytes and clip are written', () => {
    const clip = [point<'sheet'>(10, 20), point<'sheet'>(25, 20), point<'sheet'>(10, 80)]
    const svg = writeSvg({
      title: '',
      extent: { min: point(0, 0), max: point(120, 100) },
      items: [picture({ a: -40, b: 0, c: 0, d: 60, e: 60, f: 20 }, { clip })],
    })
    const root = parseSync(svg)
    const clipped = root.children.find(({ attributes }) => attributes.id === 'wood')!.children[0]!
    expect(clipped.attributes['clip-path']).toBe('url(#clip-1)')
    const image = clipped.children[0]!.attributes
    expect(image.transform).toBe('matrix(-40 0 0 60 60 20)')
    expect([...Buffer.from(image['xlink:href']!.split(',')[1]!, 'base64')]).toEqual([...png])
    expect(svg).toContain('<clipPath id="clip-1"><polygon points="10,20 25,20 10,80"/></clipPath>')
  })
})
