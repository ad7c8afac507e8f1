import { buildLattice, type Lattice, type Stretch } from './lattice'
import { poreReach } from './pores'
import { acrossAt } from './slicing'
import { SLOW, type Surface } from './surface'
import { findSpot, sectionAt, type Spot } from './trunk'

/** Room for fibre that a knot has pushed aside. */
const widened = ({ across, knots }: Surface): Stretch => {
  const room = knots.reduce((most, { sweep }) => Math.max(most, sweep), 4)
  return { from: across.from - room, to: across.to + room }
}

export function slowLattice(surface: Surface): Lattice {
  const { log, sunk, along, pixel } = surface
  const { trunk, noise } = log
  const spot: Spot = { ring: 0, depth: 0 }
  const steps = pixel > 6 ? { du: 8, dz: 30 } : pixel > 2 ? { du: 5, dz: 20 } : { du: 2, dz: 8 }
  // pores that begin before the window reach into it
  const reached = { from: along.from - poreReach(log.wood), to: along.to }
  return buildLattice(widened(surface), reached, steps, SLOW.count, (z) => {
    const section = sectionAt(trunk, noise, z)
    return (u, into) => {
      const { x, y } = acrossAt(log.slicing, sunk, u)
      findSpot(trunk, noise, section, x, y, spot)
      into[SLOW.ring] = spot.ring
      into[SLOW.depth] = spot.depth
      into[SLOW.blend] = 0.5 + 0.7 * noise(x / 75 + 500, y / 75, z / 900)
      into[SLOW.warmth] = noise(x / 90 + 600, y / 90, z / 700) + 0.5 * noise(x / 14 + 640, y / 14, z / 420)
      into[SLOW.sheen] = noise(x / 70 + 700, y / 70, z / 170) + 0.6 * noise(x / 26 + 740, y / 26, z / 90)
    }
  })
}

/** Fields of the fibre lattice. */
export const FIBRE = { wobble: 0, streak: 1, count: 2 } as const

/** How the ring edges fray, and the streaks: size across, size along, strength. */
const WOBBLE = [
  { across: 1.5, along: 55, by: 0.24 },
  { across: 5, along: 130, by: 0.55 },
  { across: 12, along: 300, by: 0.5 },
] as const
const STREAK = [
  { across: 0.9, along: 45, by: 0.5 },
  { across: 3, along: 130, by: 0.55 },
  { across: 9, along: 400, by: 0.5 },
] as const

export function fibreLattice(surface: Surface): Lattice {
  const { log, sunk, along, pixel } = surface
  const { trunk, noise } = log
  // what is finer than two pixels would only flicker
  const kept = (waves: readonly (typeof WOBBLE | typeof STREAK)[number][], seat: number) =>
    waves
      .map((wave, i) => ({ ...wave, seat: seat + 50 * i, by: wave.by * fade(wave.across / pixel) }))
      .filter(({ by }) => by > 0)
  const [wobble, streak] = [kept(WOBBLE, 800), kept(STREAK, 1000)]
  const steps = { du: Math.max(0.4, pixel / 2), dz: pixel > 2 ? 24 : 12 }
  return buildLattice(widened(surface), along, steps, FIBRE.count, (z) => {
    const { pithX, pithY } = sectionAt(trunk, noise, z)
    const sum = (waves: typeof wobble, x: number, y: number) => {
      let total = 0
      for (const { across, along, by, seat } of waves) total += by * noise(x / across + seat, y / across, z / along)
      return total
    }
    return (u, into) => {
      const { x, y } = acrossAt(log.slicing, sunk, u)
      into[FIBRE.wobble] = sum(wobble, x - pithX, y - pithY)
      into[FIBRE.streak] = sum(streak, x - pithX, y - pithY)
    }
  })
}

const fade = (pixels: number): number => Math.min(Math.max((pixels - 0.7) / 0.9, 0), 1)

/** Fields of the cross lattice: bands of light across the grain. */
export const CROSS = { curl: 0, count: 1 } as const

export function crossLattice(surface: Surface): Lattice {
  const { log, sunk, along, pixel } = surface
  const { noise, wood } = log
  const { pitch, strength } = wood.curl
  // a faint curl does not show on a thumbnail
  const steps = pixel > 2 && strength < 0.03 ? { du: 40, dz: 400 } : { du: 4, dz: Math.max(pitch / 6, pixel / 2) }
  return buildLattice(widened(surface), along, steps, CROSS.count, (z) => (u, into) => {
    const { x, y } = acrossAt(log.slicing, sunk, u)
    const bend = 0.8 * noise(x / 85 + 1300, y / 70, z / 160)
    const band =
      noise(x / 75 + 1200, y / 40, z / pitch + bend) + 0.5 * noise(x / 34 + 1250, y / 30, (1.7 * z) / pitch + bend)
    into[CROSS.curl] = band * (0.75 + 0.45 * noise(x / 90 + 1400, y / 90, z / 260))
  })
}
