import { boxHeight, boxWidth, type Box } from '../../geometry/box'
import { invariant } from '../../invariant'
import { CROSS, crossLattice, FIBRE, fibreLattice, slowLattice } from './leaf-fields'
import { SLOW, surfaceOf, type Surface } from './surface'
import { knotDistance, straightened, type KnotTrace } from './knot'
import { latticeRow, type Lattice } from './lattice'
import { faceDepth, type Log } from './log'
import { porePixels, poreShare } from './pores'
import { rayPixels } from './rays'
import { tableMean } from './ring-table'
import { splitTraces, type SplitTrace } from './split'
import type { Rgb, Species } from './species'

/** Plain pixels, four bytes each, row by row; wood is opaque, beyond the bark is clear. */
export interface Pixels {
  readonly width: number
  readonly height: number
  readonly rgba: Uint8ClampedArray
}

export interface PixelRequest {
  readonly pxPerMm: number
  /** What to show, in the leaf's frame; any part of it may lie off the leaf. */
  readonly box: Box<'leaf'>
  /** The face that carries the number unless the other is asked for, which is shown as if the wood were glass. */
  readonly face?: 'numbered' | 'other'
}

/** How many pixels a request comes to: at least one each way. */
export const pixelSize = ({ pxPerMm, box }: PixelRequest): { readonly width: number; readonly height: number } => ({
  width: Math.max(1, Math.round(boxWidth(box) * pxPerMm)),
  height: Math.max(1, Math.round(boxHeight(box) * pxPerMm)),
})

/** Paints a part of a leaf (numbered from 1) in the leaf's frame. The same request gives the same pixels. */
export function leafPixels(log: Log, leaf: number, request: PixelRequest): Pixels {
  const { pxPerMm, box, face = 'numbered' } = request
  invariant(pxPerMm > 0 && Number.isInteger(leaf), `a picture of leaf ${leaf} at ${pxPerMm} pixels a millimetre`)
  const { width, height } = pixelSize(request)
  const pixel = 1 / pxPerMm
  const across = { from: box.min.x - log.left, to: box.min.x - log.left + width * pixel }
  const along = { from: box.min.y, to: box.min.y + height * pixel }
  const surface = surfaceOf(log, faceDepth(log, leaf, face), across, along, pixel)
  const rgba = new Uint8ClampedArray(width * height * 4)
  paint(surface, splitTraces(log, leaf), width, height, rgba)
  return { width, height, rgba }
}

/** A row of a lattice's field, read between its columns. */
interface RowReader {
  readonly row: Float32Array
  readonly moveTo: (z: number) => void
}

function rowReader(lattice: Lattice, field: number): RowReader {
  const row = new Float32Array(lattice.columns)
  return { row, moveTo: (z) => latticeRow(lattice, field, z, row) }
}

const between = (row: Float32Array, at: number, index: number): number => {
  const a = row[index]!
  return a + (row[index + 1]! - a) * (at - index)
}

// One loop on purpose: it runs once a pixel, and what it reads is laid out row by row for it.
function paint(
  surface: Surface,
  splits: readonly SplitTrace[],
  width: number,
  height: number,
  rgba: Uint8ClampedArray,
): void {
  const { log, pixel, across, along } = surface
  const { wood, rings, trunk } = log
  const [slow, fibre, cross] = [slowLattice(surface), fibreLattice(surface), crossLattice(surface)]
  const [ring, depth, blend, warmth, sheen] = [0, 1, 2, 3, 4].map((f) => rowReader(slow, f)) as [
    RowReader,
    RowReader,
    RowReader,
    RowReader,
    RowReader,
  ]
  const ringAhead = rowReader(slow, SLOW.ring)
  const wobble = rowReader(fibre, FIBRE.wobble)
  const streak = rowReader(fibre, FIBRE.streak)
  const curl = rowReader(cross, CROSS.curl)
  const pores = porePixels(surface, slow, width, height)
  const poreMean = poreShare(wood)
  const rays = wood.rays > 0 ? rayPixels(surface, width, height) : null
  const ramp = colourRamp(wood.light, wood.dark)
  const feather = 0.1 + 0.1 * pixel
  for (let j = 0; j < height; j++) {
    const z = along.from + (j + 0.5) * pixel
    for (const reader of [ring, depth, blend, warmth, sheen, wobble, streak, curl]) reader.moveTo(z)
    ringAhead.moveTo(z + pixel)
    const knots = surface.knots.filter((knot) => Math.abs(knot.z - z) < 9 * knot.sweep)
    const offLength = z < 0 || z > trunk.length
    for (let i = 0; i < width; i++) {
      const seen = across.from + (i + 0.5) * pixel
      let u = seen
      for (const knot of knots) u = straightened(knot, u, z)
      const s = (u - slow.u0) / slow.du
      const si = s | 0
      const seenAt = (seen - slow.u0) / slow.du
      const under = between(depth.row, seenAt, seenAt | 0)
      const at = (j * width + i) * 4
      const cover = offLength ? 0 : Math.min(Math.max(under / pixel + 0.5, 0), 1)
      if (cover === 0) continue

      const f = (u - fibre.u0) / fibre.du
      const fi = f | 0
      const plain = between(ring.row, s, si)
      const radius = plain + between(wobble.row, f, fi)
      const slopeAcross = (ring.row[si + 1]! - ring.row[si]!) / slow.du
      const slopeAlong = (between(ringAhead.row, s, si) - plain) / pixel
      const half = 0.5 * (Math.sqrt(slopeAcross * slopeAcross + slopeAlong * slopeAlong) * pixel + feather)
      const mix = Math.min(Math.max(between(blend.row, s, si), 0), 1)
      const pigment =
        tableMean(rings.pigments[0], radius - half, radius + half) * mix +
        tableMean(rings.pigments[1], radius - half, radius + half) * (1 - mix)
      const rayHere = rays ? rays[j * width + i]! : 0
      const pore = (pores[j * width + i]! - poreMean) * wood.pores.darkness
      let dark =
        wood.ground +
        tableMean(rings.darkness, radius - half, radius + half) +
        wood.pigment * pigment +
        wood.streak * between(streak.row, f, fi) +
        pore
      if (rayHere > 0) dark += rayHere * wood.rays * (-0.16 - dark)
      for (const knot of knots) dark = knotted(knot, seen, z, dark, log)
      const c = (seen - cross.u0) / cross.du
      const light =
        1 +
        wood.sheen * 0.6 * between(sheen.row, s, si) +
        wood.curl.strength * between(curl.row, c, c | 0) +
        (wood.ribbon.strength > 0
          ? wood.ribbon.strength * tableMean(rings.lean, radius - half - 0.8, radius + half + 0.8)
          : 0)
      const shade = Math.min(Math.max((dark + 0.4) * 512, 0), 1023) | 0
      const warm = wood.warmth * between(warmth.row, s, si)
      const sap = sapShare(wood, under, between(streak.row, f, fi))
      const crack = splitDarkness(splits, seen, z, pixel)
      const sapDim = 1 - 0.22 * dark
      for (let channel = 0; channel < 3; channel++) {
        const tint = channel === 0 ? 1 + warm : channel === 2 ? 1 - warm : 1
        const heart = ramp[shade * 3 + channel]! * tint
        rgba[at + channel] = (heart + sap * (wood.sapwood[channel]! * sapDim - heart)) * light * (1 - crack)
      }
      rgba[at + 3] = 255 * cover
    }
  }
}

/** 1 in the pale wood under the bark, 0 in the heartwood. */
function sapShare(wood: Species, under: number, streak: number): number {
  const t = (wood.sapwoodWidth + 2.5 * streak - under) / 2.4 + 0.5
  return t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t)
}

/** Darkness where a knot comes through: its own years, drawn uneven, a dark rim and a dark heart. */
function knotted(knot: KnotTrace, u: number, z: number, dark: number, { noise, rings }: Log): number {
  const away = knotDistance(knot, u, z)
  if (knot.radius === 0 || away > 6 * knot.radius) return dark
  const rough = noise((u - knot.u) / 6, (z - knot.z) / 7, 50)
  const fine = noise((u - knot.u) / 1.6, (z - knot.z) / 2.2, 60)
  const rim = knot.radius * (1 + 0.08 * rough) + 0.35 * fine
  const inside = Math.min(Math.max((rim - away) / 1.6 + 0.5, 0), 1)
  const halo = 0.34 * Math.exp(-(((away - rim) / 1.7) ** 2)) + 0.26 * Math.exp(-Math.max(0, away - rim) / 7)
  const year = 40 + 1.9 * (away + 0.9 * rough + 0.25 * fine)
  const within =
    0.5 + 0.6 * tableMean(rings.darkness, year, year + 0.6) + 0.12 * fine + 0.4 * Math.exp(-((away / 2.4) ** 2))
  return dark + halo * (1 - inside) + inside * (within + 0.6 * halo - dark)
}

function splitDarkness(splits: readonly SplitTrace[], u: number, z: number, pixel: number): number {
  let darkness = 0
  for (const split of splits) {
    const gap = split.gapAt(z)
    if (gap <= 0) continue
    const off = Math.abs(u - split.acrossAt(z))
    darkness = Math.max(
      darkness,
      0.85 * Math.min(Math.max((gap / 2 + pixel / 2 - off) / pixel, 0), Math.min(1, gap / pixel)),
    )
  }
  return darkness
}

/** Colours for darkness −0.4 to 1.6 in 1024 steps, going on a little beyond light and dark. */
function colourRamp(light: Rgb, dark: Rgb): Float32Array {
  const ramp = new Float32Array(1024 * 3)
  for (let i = 0; i < 1024; i++) {
    const darkness = i / 512 - 0.4
    for (let channel = 0; channel < 3; channel++) {
      const [from, to] = [light[channel]!, dark[channel]!]
      // beyond dark the ramp flattens out, so that pores stay brown
      const value = darkness <= 1 ? from + (to - from) * darkness : to * (1 - 0.35 * (darkness - 1))
      ramp[i * 3 + channel] = value
    }
  }
  return ramp
}
