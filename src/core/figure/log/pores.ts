import { SLOW, type Surface } from './surface'
import { latticeAt, type Lattice } from './lattice'
import { mixedSeed, seededRandom } from './random'
import { EARLY_WOOD, tableMean } from './ring-table'
import type { Species } from './species'

/** Pores are sown in cells of this size, each with chance of its own, so that a crop shows what the leaf shows. */
const CELL = { across: 8, along: 24 }

/** Dashes come from a third of the usual length to this much of it. */
const LONGEST = 1.65

/** How far along the grain a dash reaches at most. */
export const poreReach = ({ pores }: Species): number => LONGEST * pores.length

/** How much of the wood is pore, on the mean. */
export function poreShare({ pores }: Species): number {
  let kept = 0
  for (let i = 0; i < 50; i++) kept += keepChance(pores.early, Math.max(0, 1 - (i + 0.5) / 50 / EARLY_WOOD)) / 50
  // dashes have 0.675 of the usual length on the mean, and the thinning of their ends takes a fifth off
  return pores.density * pores.width * pores.length * 0.675 * 0.79 * kept
}

const keepChance = (early: number, crowd: number): number => Math.min(1, 1 - early + 2.4 * early * crowd)

/**
 * How much of every pixel is pore: the vessels that the knife laid open, as short dashes along the grain.
 * Where a pixel is too coarse to show dashes it gets their mean.
 */
export function porePixels(surface: Surface, slow: Lattice, width: number, height: number): Float32Array {
  const { log, across, along, pixel, sunk } = surface
  const cover = new Float32Array(width * height)
  if (pixel > 2) return cover.fill(poreShare(log.wood))
  const leaf = Math.round(sunk / log.thickness)
  for (let row = Math.floor((along.from - poreReach(log.wood)) / CELL.along); row * CELL.along < along.to; row++) {
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
    if (chance > keepChance(early, crowd)) continue
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
