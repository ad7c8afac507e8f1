import { point, type Point } from '../../geometry/point'
import { darkerThanAround, greysOf, type Grey } from './grey'
import { findPatches, type Patches } from './patches'
import type { Photograph } from './photograph'

/** The printed mark, radii in mm: a white disc, a black ring on it, a white hole; one of a set has a dot in the hole. */
export const RING_MARK = { disc: 26, ring: 20, hole: 10, dot: 4 }

/** A ring mark found in a photograph. */
export interface FoundMark {
  readonly centre: Point<'photo'>
  /** Outer width and height of the black ring, in pixels. */
  readonly width: number
  readonly height: number
  readonly isDotted: boolean
}

/** Photographs with more pixels are searched at half size first. */
const LARGE = 5_000_000

/** A ring smaller than this is not measured well enough. */
const LEAST_RING = 14

/**
 * The ring marks of a photograph, from the left. Found as a light patch whose left neighbour is a dark one twice as
 * large round the same centre; the centre is that of the darkness within the disc.
 */
export function findRingMarks(photo: Photograph): readonly FoundMark[] {
  const isLarge = photo.width * photo.height > LARGE
  const [full, half] = greysOf(photo, isLarge ? [1, 2] : [1]) as [Grey, Grey?]
  const found = half ? ringsIn(half, 2) : ringsIn(full, 1)
  const rings = found.length < 4 && half ? ringsIn(full, 1) : found
  const printed = rings.filter((ring) => isPrinted(full, ring))
  return [...ofOneSize(printed.map((ring) => refined(full, ring)))].sort((a, b) => a.centre.x - b.centre.x)
}

/** Black on white, as no knot is: the hole as white as the disc, the ring far darker. */
function isPrinted(grey: Grey, ring: RoughRing): boolean {
  const white = whiteRound(grey, ring)
  return meanAlong(grey, ring, 0.36) > 0.75 * white && meanAlong(grey, ring, 0.75) < 0.5 * white
}

/** The marks of a set are of one size, but for the tilt of the camera. */
function ofOneSize(marks: readonly FoundMark[]): readonly FoundMark[] {
  const sizes = marks.map(({ width, height }) => Math.max(width, height)).sort((a, b) => b - a)
  const usual = sizes[Math.min(3, sizes.length - 1)] ?? 0
  return marks.filter(({ width, height }) => Math.max(width, height) > 0.5 * usual)
}

/** A ring by the box of its dark part, in pixels of the photograph. */
interface RoughRing {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

function ringsIn(grey: Grey, step: number): RoughRing[] {
  const { width, height } = grey
  const dark = darkerThanAround(grey, Math.round(Math.max(width, height) / 40), 7)
  const patches = findPatches(dark, width, height)
  const rings: RoughRing[] = []
  for (let hole = 0; hole < patches.count; hole++) {
    const at = patches.leftmost[hole]!
    if (dark[at] === 1 || patches.left[hole] === 0) continue
    const ring = patches.of[at - 1]!
    if (isRing(patches, hole, ring)) rings.push(roughRing(patches, ring, step))
  }
  return rings
}

const roughRing = ({ left, right, top, bottom }: Patches, i: number, step: number): RoughRing => ({
  x: ((left[i]! + right[i]! + 1) / 2) * step,
  y: ((top[i]! + bottom[i]! + 1) / 2) * step,
  width: (right[i]! - left[i]! + 1) * step,
  height: (bottom[i]! - top[i]! + 1) * step,
})

function isRing(patches: Patches, hole: number, ring: number): boolean {
  const [inner, outer] = [roughRing(patches, hole, 1), roughRing(patches, ring, 1)]
  if (outer.width < LEAST_RING || outer.height < LEAST_RING || outer.width > 4 * outer.height) return false
  if (outer.height > 4 * outer.width) return false
  const isTwice = (a: number, b: number) => a / b > 1.55 && a / b < 2.7
  if (!isTwice(outer.width, inner.width) || !isTwice(outer.height, inner.height)) return false
  const slack = (size: number) => Math.max(0.08 * size, 1.5)
  if (Math.abs(inner.x - outer.x) > slack(outer.width) || Math.abs(inner.y - outer.y) > slack(outer.height))
    return false
  const expected = (Math.PI / 4) * (outer.width * outer.height - inner.width * inner.height)
  return Math.abs(patches.area[ring]! / expected - 1) < 0.22
}

/** The centre of the darkness in the disc, measured against its white; and whether there is a dot in the hole. */
function refined(grey: Grey, ring: RoughRing): FoundMark {
  const white = whiteRound(grey, ring)
  let { x, y } = ring
  for (let pass = 0; pass < 3; pass++) ({ x, y } = darkCentre(grey, ring, x, y, white))
  const middle = meanAlong(grey, { ...ring, x, y }, 0.06)
  const hole = meanAlong(grey, { ...ring, x, y }, 0.34)
  const black = meanAlong(grey, { ...ring, x, y }, 0.75)
  return { centre: point(x, y), width: ring.width, height: ring.height, isDotted: middle < (hole + black) / 2 }
}

/** Between the ring and the edge of the disc. */
const CLEAR_WHITE = 1.15

const whiteRound = (grey: Grey, ring: RoughRing): number => meanAlong(grey, ring, CLEAR_WHITE)

/** Mean lightness on the ellipse that is `share` of the ring's outer one. */
function meanAlong({ width, height, values }: Grey, ring: RoughRing, share: number): number {
  let sum = 0
  const steps = 32
  for (let i = 0; i < steps; i++) {
    const x = Math.floor(ring.x + (Math.cos((2 * Math.PI * i) / steps) * share * ring.width) / 2)
    const y = Math.floor(ring.y + (Math.sin((2 * Math.PI * i) / steps) * share * ring.height) / 2)
    sum += values[Math.min(Math.max(y, 0), height - 1) * width + Math.min(Math.max(x, 0), width - 1)]!
  }
  return sum / steps
}

function darkCentre(grey: Grey, ring: RoughRing, atX: number, atY: number, white: number) {
  const [rx, ry] = [(ring.width / 2) * CLEAR_WHITE, (ring.height / 2) * CLEAR_WHITE]
  let [sum, sumX, sumY] = [0, 0, 0]
  for (let y = Math.max(0, Math.floor(atY - ry)); y <= Math.min(grey.height - 1, atY + ry); y++)
    for (let x = Math.max(0, Math.floor(atX - rx)); x <= Math.min(grey.width - 1, atX + rx); x++) {
      const [dx, dy] = [(x + 0.5 - atX) / rx, (y + 0.5 - atY) / ry]
      if (dx * dx + dy * dy > 1) continue
      const darkness = Math.max(0, white - 12 - grey.values[y * grey.width + x]!)
      sum += darkness
      sumX += darkness * (x + 0.5)
      sumY += darkness * (y + 0.5)
    }
  return sum > 0 ? { x: sumX / sum, y: sumY / sum } : { x: atX, y: atY }
}
