import { buildLattice, latticeRow } from './lattice'
import type { Surface } from './surface'
import { acrossAt } from './slicing'

/** How much of every pixel is flake of ray, 0 to 1: where the knife runs along the rays they lie open as bright patches. */
export function rayPixels({ log, sunk, across, along, pixel }: Surface, width: number, height: number): Float32Array {
  const { noise } = log
  const steps = { du: Math.max(1.2, pixel / 2), dz: Math.max(0.6, pixel / 2) }
  const lattice = buildLattice(across, along, steps, 1, (z) => (u, into) => {
    const { x, y } = acrossAt(log.slicing, sunk, u)
    const bend = 9 * noise(x / 55 + 1500, y / 30, z / 80) + 1.6 * noise(x / 13 + 1540, y / 12, z / 25)
    const flake = noise(x / 34 + 1600, y / 5, (z + bend) / 8.5) + 0.4 * noise(x / 11 + 1640, y / 4, (z + bend) / 4.2)
    into[0] = flake + 0.34 * noise(x / 60 + 1700, y / 30, z / 110)
  })
  const row = new Float32Array(lattice.columns)
  const cover = new Float32Array(width * height)
  for (let j = 0; j < height; j++) {
    latticeRow(lattice, 0, along.from + (j + 0.5) * pixel, row)
    for (let i = 0; i < width; i++) {
      const at = (across.from + (i + 0.5) * pixel - lattice.u0) / lattice.du
      const index = at | 0
      const value = row[index]! + (row[index + 1]! - row[index]!) * (at - index)
      cover[j * width + i] = Math.min(Math.max((value - 0.46) / 0.13, 0), 1)
    }
  }
  return cover
}
