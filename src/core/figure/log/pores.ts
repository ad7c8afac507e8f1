import { SLOW, type Surface } from './leaf-fields'
import { latticeAt, type Lattice } from './lattice'
import { mixedSeed, seededRandom } from './random'
import { tableMean } from './ring-table'

/** Pores are sown in cells of this size, each with chance of its own, so that a crop shows what the leaf shows. */
const CELL = { across: 8, along: 24 }

/**
 * How much of every pixel is pore: the vessels that the knife laid open, as short dashes along the grain.
 * Where a pixel is too coarse to show dashes it gets their mean.
 */
export function porePixels(surface: Surface, slow: Lattice, width: number, height: number): Float32Array {
  const { log, across, along, pixel, sunk } = surface
  const { density, width: wide, length } = log.wood.pores
  const cover = new Float32Array(width * height)
  if (pixel > 2) return cover.fill(density * wide * length * 0.5)
  const leaf = Math.round(sunk / log.thickness)
  for (let row = Math.floor((along.from - 4 * length) / CELL.along); row * CELL.along < along.to; row++) {
    for (let column = Math.floor(across.from / CELL.across); column * CELL.across < across.to; column++) {
      sowCell(surface, slow, seededRandom(mixedSeed(log.seed, 5, leaf, row, column)), row, column, cover, width, height)
    }
  }
  return cover
}

function sowCell(
  { log, across, along, pixel, knots }: Surface,
  slow: Lattice,
  random: () => number,
  row: number,
  column: number,
  cover: Float32Array,
  width: number,
  height: number,
): void {
  const { density, width: wide, length, early } = log.wood.pores
  const count = Math.round(density * CELL.across * CELL.along * (0.85 + 0.3 * random()))
  for (let n = 0; n < count; n++) {
    const u = (column + random()) * CELL.across
    const z = (row + random()) * CELL.along
    const chance = random()
    const size = 0.35 + 1.3 * random() * random()
    const thick = wide * (0.7 + 0.6 * random())
    const ring = latticeAt(slow, SLOW.ring, u, z)
    const crowd = tableMean(log.rings.early, ring - 0.1, ring + 0.1)
    if (chance > 1 - early + 2.4 * early * crowd) continue
    if (knots.some((knot) => Math.hypot(u - knot.u, z - knot.z) < 1.5 * knot.radius)) continue
    drawDash(
      (u - across.from) / pixel,
      (z - along.from) / pixel,
      (length * size) / pixel,
      thick / pixel,
      cover,
      width,
      height,
    )
  }
}

/** A dash from (x, y) downwards, all in pixels: thin, and thinner at its ends. */
function drawDash(
  x: number,
  y: number,
  long: number,
  thick: number,
  cover: Float32Array,
  width: number,
  height: number,
): void {
  const left = Math.floor(x - 0.5)
  const right = x - 0.5 - left
  const first = Math.max(0, Math.floor(y))
  const last = Math.min(height - 1, Math.floor(y + long))
  for (let j = first; j <= last; j++) {
    const part = Math.min(j + 1, y + long) - Math.max(j, y)
    const share = Math.min(Math.max((j + 0.5 - y) / long, 0.04), 0.96)
    const amount = thick * part * Math.min(1, 5 * share * (1 - share))
    if (left >= 0 && left < width) cover[j * width + left]! += amount * (1 - right)
    if (left + 1 >= 0 && left + 1 < width) cover[j * width + left + 1]! += amount * right
  }
}
