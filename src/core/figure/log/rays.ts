import { buildLattice, latticeRow } from './lattice'
import type { Surface } from './leaf-fields'
import { acrossAt } from './slicing'

/** How much of every pixel is flake of ray, 0 to 1: where the knife runs along the rays they lie open as bright patches. */
export function rayPixels({ log, sunk, across, along, pixel }: Surface, width: number, height: number): Float32Array {
  const { noise } = log
  const steps = { du: Math.max(1.2, pixel / 2), dz: Math.max(0.6, pixel / 2) }
  const lattice = buildLattice(across, along, steps, 1, (z) => (u, into) => {
    const { x, y } = acrossAt(log.slicing, sunk, u)
    const bend = 5 * noise(x / 38 + 1500, y / 30, z / 60) + 1.6 * noise(x / 11 + 1540, y / 12, z / 25)
    const flake = noise(x / 21 + 1600, y / 5, (z + bend) / 6.5) + 0.45 * noise(x / 9 + 1640, y / 4, (z + bend) / 3.4)
    into[0] = flake + 0.3 * noise(x / 45 + 1700, y / 30, z / 110)
  })
  const row = new Float32Array(lattice.columns)
  const cover = new Float32Array(width * height)
  for (let j = 0; j < height; j++) {
    latticeRow(lattice, 0, along.from + (j + 0.5) * pixel, row)
    for (let i = 0; i < width; i++) {
      const at = (across.from + (i + 0.5) * pixel - lattice.u0) / lattice.du
      const index = at | 0
      const value = row[index]! + (row[index + 1]! - row[index]!) * (at - index)
      cover[j * width + i] = Math.min(Math.max((value - 0.5) / 0.16, 0), 1)
    }
  }
  return cover
}
