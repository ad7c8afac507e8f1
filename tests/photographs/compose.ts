/**
 * Photographs composed from a simulated log, with everything about them known: the leaf's outline, the camera, the
 * table, light and shadow, noise, and the blocks that lossy files are made of.
 */
import { boxGrown } from '../../src/core/geometry/box'
import { point, type Point } from '../../src/core/geometry/point'
import type { Ring } from '../../src/core/geometry/polygon'
import { leafOutline } from '../../src/core/figure/log/leaf-outline'
import { leafPixels, type Pixels } from '../../src/core/figure/log/leaf-pixels'
import { leafFrame, makeLog, type LogOptions } from '../../src/core/figure/log/log'
import { bellNumber, mixedSeed, seededRandom } from '../../src/core/figure/log/random'
import type { SpeciesName } from '../../src/core/figure/log/species'
import { applyHomography, fitHomography, invertHomography } from '../../src/core/figure/photo/homography'
import { distorted, lensOf, undistorted } from '../../src/core/figure/photo/lens'
import { RING_MARK } from '../../src/core/figure/photo/ring-marks'
import { blocky } from './blocky'

export interface Table {
  readonly name: string
  readonly colour: readonly [number, number, number]
  /** Streaks as of a board, and unevenness as of a cloth, as shares of the brightness. */
  readonly grain: number
  readonly weave: number
}

export const TUNING_TABLES: readonly Table[] = [
  { name: 'green cloth', colour: [58, 92, 70], grain: 0, weave: 0.05 },
  { name: 'slate', colour: [72, 78, 84], grain: 0, weave: 0.04 },
  { name: 'white paper', colour: [226, 226, 220], grain: 0, weave: 0.01 },
  { name: 'grey floor', colour: [150, 150, 148], grain: 0, weave: 0.05 },
  { name: 'plywood', colour: [206, 176, 132], grain: 0.08, weave: 0.02 },
]

export const UNSEEN_TABLES: readonly Table[] = [
  { name: 'blue sheet', colour: [46, 70, 116], grain: 0, weave: 0.06 },
  { name: 'concrete', colour: [122, 124, 120], grain: 0, weave: 0.09 },
  { name: 'pale linen', colour: [204, 202, 194], grain: 0, weave: 0.05 },
  { name: 'black felt', colour: [34, 34, 38], grain: 0, weave: 0.06 },
  { name: 'pine bench', colour: [196, 158, 108], grain: 0.12, weave: 0.03 },
]

export interface PhotoOptions {
  readonly seed: number
  readonly species: SpeciesName
  readonly table: Table
  /** Of the photograph, in pixels. */
  readonly width: number
  readonly height: number
  readonly leafLength: number
  readonly tilt: number
  readonly k1: number
  /** Share of brightness lost from one side to the other; how deep and soft (mm) a shadow across lies. */
  readonly gradient: number
  readonly shadow: number
  readonly noise: number
  /** Step of the coarsest quantisation; 0 leaves the pixels alone. */
  readonly blocks: number
  readonly withMarks: boolean
  readonly middleMarks?: boolean
  /** Of the log's four; the first unless told. */
  readonly leaf?: number
  /** The narrow shadow that the leaf throws: how far it reaches (mm) and what share of the light it takes. */
  readonly contact?: { readonly across: number; readonly along: number; readonly depth: number }
}

export interface ComposedPhoto {
  readonly pixels: Pixels
  /** In the frame of the marks: 0 to across, 0 to along. */
  readonly outline: Ring<'leaf'>
  readonly rectangle: { readonly across: number; readonly along: number; readonly diagonal: number }
  /** Where the marks' middles are seen, the dotted one first and clockwise. */
  readonly marks: readonly Point<'photo'>[]
}

/** Kept clear round the leaf up to the lines of the marks. */
const ROOM = { across: 70, along: 60 }

/** A photograph of a leaf of a log of its own. */
export function composePhoto(options: PhotoOptions): ComposedPhoto {
  const log = makeLog(logOf(options))
  const frame = leafFrame(log)
  const scale = 1.5
  const leaf = leafPixels(log, options.leaf ?? 1, {
    pxPerMm: scale,
    box: boxGrown(frame, { top: 4, bottom: 4, left: 0, right: 0 }),
  })
  const rectangle = { across: frame.max.x + 2 * ROOM.across, along: frame.max.y + 2 * ROOM.along }
  const camera = cameraFor(options, rectangle)
  const places = markPlaces(rectangle, options.middleMarks ?? false)
  const light = lightOf(options, rectangle)
  const colour = tableColour(options)
  const wood = new Float64Array(4)
  const contact = options.contact ?? { across: 1.2, along: 2.5, depth: 0.35 }
  const at = (x: number, y: number, into: Float64Array) => {
    colour(x, y, into)
    if (options.withMarks)
      for (let i = 0; i < places.length; i++) printMark(x - places[i]!.x, y - places[i]!.y, i === 0, into)
    readLeaf(leaf, (x - ROOM.across) * scale, (y - ROOM.along + 4) * scale, wood)
    const cover = wood[3]!
    const lit = light(x, y)
    const shaded = contactShadow(leaf, x - ROOM.across - contact.across, y - ROOM.along + contact.along, scale)
    const bright = lit * (1 - contact.depth * shaded)
    for (let c = 0; c < 3; c++) {
      const under = into[c]! * (cover > 0.5 ? lit : bright)
      into[c] = under * (1 - cover) + wood[c]! * lit * cover
    }
  }
  const pixels = expose(at, camera, options)
  return {
    pixels: options.blocks > 0 ? blocky(pixels, options.blocks) : pixels,
    outline: leafOutline(log, options.leaf ?? 1).map(({ x, y }) => point<'leaf'>(x + ROOM.across, y + ROOM.along)),
    rectangle: { ...rectangle, diagonal: Math.hypot(rectangle.across, rectangle.along) },
    marks: places.map((mark) => camera.toPhoto(mark)),
  }
}

function logOf({ seed, species, leafLength }: PhotoOptions): LogOptions {
  const radius = 120 + (seed % 5) * 8
  return {
    seed: mixedSeed(seed, 71),
    species,
    slicing: { cut: 'flat', firstDepth: radius * 0.72 },
    leaves: 4,
    thickness: 0.6,
    trunk: {
      length: leafLength,
      radius,
      heart: { x: 8, y: -4 },
      lean: { x: 0.004, y: -0.006 },
      wander: 7,
      taper: 0.032,
      barkTaper: 3,
      bulge: 2,
    },
    knots: [],
    splits: [],
  }
}

interface Camera {
  readonly toPhoto: (p: Point<'leaf'>) => Point<'photo'>
  readonly toPlane: (p: Point<'photo'>) => Point<'leaf'>
}

/** The plane lies along the long side of the photograph, seen from above but for a tilt. */
function cameraFor(o: PhotoOptions, { across, along }: { across: number; along: number }): Camera {
  const margin = 45
  const fit = Math.min(o.width / (along + 2 * margin), o.height / (across + 2 * margin))
  const [w, h] = [along * fit, across * fit]
  const [x0, y0] = [(o.width - w) / 2, (o.height - h) / 2]
  const t = o.tilt
  // the dotted corner (0, 0) lies bottom left: the leaf is turned by a quarter, its numbered end to the left
  const to = [
    point<'photo'>(x0 + t * h * 0.16, y0 + h * (1 - t * 0.1)),
    point<'photo'>(x0 - t * h * 0.04, y0 + t * h * 0.05),
    point<'photo'>(x0 + w * (1 - t * 0.06), y0 + t * h * 0.12),
    point<'photo'>(x0 + w, y0 + h),
  ]
  const corners = [point<'leaf'>(0, 0), point<'leaf'>(across, 0), point<'leaf'>(across, along), point<'leaf'>(0, along)]
  const map = fitHomography<'leaf', 'photo'>(corners, to)!
  const back = invertHomography(map)
  const lens = lensOf(o.width, o.height, o.k1)
  return {
    toPhoto: (p) => distorted(lens, applyHomography(map, p)),
    toPlane: (p) => applyHomography(back, o.k1 === 0 ? p : undistorted(lens, p)),
  }
}

function markPlaces({ across, along }: { across: number; along: number }, middle: boolean): Point<'leaf'>[] {
  const corners = [point<'leaf'>(0, 0), point<'leaf'>(across, 0), point<'leaf'>(across, along), point<'leaf'>(0, along)]
  return middle ? [...corners, point(0, along * 0.52), point(across, along * 0.47)] : corners
}

/** A printed card: white square with the ring on it. */
function printMark(x: number, y: number, dotted: boolean, into: Float64Array): void {
  if (Math.abs(x) > 34 || Math.abs(y) > 34) return
  const r = Math.hypot(x, y)
  const isBlack = (r > RING_MARK.hole && r < RING_MARK.ring) || (dotted && r < RING_MARK.dot)
  const value = isBlack ? 26 : 234
  into[0] = into[1] = into[2] = value
}

function tableColour({ table, seed }: PhotoOptions) {
  const random = seededRandom(mixedSeed(seed, 5))
  const size = 256
  const noise = Float32Array.from({ length: size * size }, () => bellNumber(random))
  const streak = Float32Array.from({ length: 4096 }, () => bellNumber(random))
  return (x: number, y: number, into: Float64Array) => {
    const n =
      noise[(((y * 1.3) & 255) << 8) | ((x * 1.3) & 255)]! * 0.5 +
      noise[(((y / 9) & 255) << 8) | ((x / 9) & 255)]! * 0.5
    const s = streak[(x * 0.7 + 6 * Math.sin(y / 300)) & 4095]! * 0.5 + streak[((x + 500) / 6) & 4095]! * 0.7
    const by = 1 + table.weave * n + table.grain * s
    for (let c = 0; c < 3; c++) into[c] = table.colour[c]! * by
  }
}

function lightOf(o: PhotoOptions, { across, along }: { across: number; along: number }) {
  const random = seededRandom(mixedSeed(o.seed, 9))
  const way = random() * 2 * Math.PI
  const [gx, gy] = [Math.cos(way) / across, Math.sin(way) / along]
  const [sx, sy] = [Math.cos(way + 1), Math.sin(way + 1)]
  const edge = sx * across * 0.5 + sy * along * (0.3 + 0.4 * random())
  return (x: number, y: number) => {
    const slope = 1 - o.gradient * (0.5 + 0.5 * ((x - across / 2) * gx + (y - along / 2) * gy))
    if (o.shadow === 0) return slope
    const off = (sx * x + sy * y - edge) / 25
    const shade = 1 - o.shadow / (1 + Math.exp(-off))
    return slope * shade
  }
}

/** The leaf's colour and how much of it covers a place, read between four pixels; written out, it runs very often. */
function readLeaf({ width, height, rgba }: Pixels, u: number, v: number, into: Float64Array): void {
  into[3] = 0
  const x = u - 0.5
  const y = v - 0.5
  if (x < 0 || y < 0 || x >= width - 1 || y >= height - 1) return
  const x0 = x | 0
  const y0 = y | 0
  let r = 0
  let g = 0
  let b = 0
  let a = 0
  for (let corner = 0; corner < 4; corner++) {
    const dx = corner & 1
    const dy = corner >> 1
    const at = ((y0 + dy) * width + x0 + dx) * 4
    const share = (dx ? x - x0 : 1 - x + x0) * (dy ? y - y0 : 1 - y + y0) * (rgba[at + 3]! / 255)
    r += rgba[at]! * share
    g += rgba[at + 1]! * share
    b += rgba[at + 2]! * share
    a += share
  }
  if (a <= 0) return
  into[0] = r / a
  into[1] = g / a
  into[2] = b / a
  into[3] = a
}

/** Whether a place lies in the narrow shadow that the leaf throws. */
function contactShadow({ width, height, rgba }: Pixels, x: number, y: number, scale: number): number {
  const [u, v] = [Math.floor(x * scale), Math.floor(y * scale)]
  return u < 0 || v < 0 || u >= width || v >= height ? 0 : rgba[(v * width + u) * 4 + 3]! / 255
}

/** Four looks at each pixel, and the noise of the sensor. */
function expose(at: (x: number, y: number, into: Float64Array) => void, camera: Camera, o: PhotoOptions): Pixels {
  const random = seededRandom(mixedSeed(o.seed, 3))
  const rgba = new Uint8ClampedArray(o.width * o.height * 4)
  const colour = new Float64Array(3)
  const sums = new Float64Array(3)
  for (let y = 0, to = 0; y < o.height; y++)
    for (let x = 0; x < o.width; x++, to += 4) {
      sums.fill(0)
      for (let look = 0; look < 4; look++) {
        const p = camera.toPlane(point(x + (look & 1 ? 0.75 : 0.25), y + (look & 2 ? 0.75 : 0.25)))
        at(p.x, p.y, colour)
        for (let c = 0; c < 3; c++) sums[c]! += colour[c]!
      }
      for (let c = 0; c < 3; c++)
        rgba[to + c] = sums[c]! / 4 + (o.noise > 0 ? o.noise * (random() + random() + random() - 1.5) * 2 : 0)
      rgba[to + 3] = 255
    }
  return { width: o.width, height: o.height, rgba }
}

/** The photographs of a set: species, tables and conditions by chance from the seeds. */
export function photoSet(tables: readonly Table[], firstSeed: number, count: number): readonly PhotoOptions[] {
  return Array.from({ length: count }, (_, i) => {
    const random = seededRandom(mixedSeed(firstSeed, i))
    const species = (['walnut', 'maple', 'oak', 'sapele'] as const)[i % 4]!
    return {
      seed: firstSeed + i,
      species,
      table: tables[Math.floor(i / 4) % tables.length]!,
      width: 1400,
      height: 620,
      leafLength: 620 + Math.round(random() * 160),
      tilt: random(),
      k1: 0,
      gradient: random() * 0.4,
      shadow: random() < 0.5 ? random() * 0.5 : 0,
      noise: 1 + random() * 3,
      blocks: random() < 0.5 ? 6 + random() * 14 : 0,
      withMarks: true,
    }
  })
}
