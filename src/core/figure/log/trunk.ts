import type { NoiseFunction3D } from 'simplex-noise'

/** The shape of a trunk. Lengths in mm; x and y across the log from its middle, z along from the numbered end. */
export interface TrunkShape {
  readonly length: number
  /** Middle radius of the log under its bark. */
  readonly radius: number
  /** Where the pith lies at half length, off the middle of the log. */
  readonly heart: { readonly x: number; readonly y: number }
  /** How far the pith moves per mm of length. */
  readonly lean: { readonly x: number; readonly y: number }
  /** How far the pith wanders to either side. */
  readonly wander: number
  /** How fast the inner rings narrow along the log: it draws the crowns. */
  readonly taper: number
  /** How far the bark narrows from one end to the other. */
  readonly barkTaper: number
  /** Unevenness of the rings' radius. */
  readonly bulge: number
}

/** One cross-section of the trunk. */
export interface Section {
  readonly z: number
  readonly pithX: number
  readonly pithY: number
  readonly middleX: number
  readonly middleY: number
  readonly barkRadius: number
}

export function sectionAt(trunk: TrunkShape, noise: NoiseFunction3D, z: number): Section {
  const { heart, lean, wander, length, radius, barkTaper } = trunk
  const along = z - length / 2
  const driftX = wander * (noise(z / 1900, 3.1, 0) + 0.22 * noise(z / 520, 7.7, 0))
  const driftY = wander * (noise(z / 1900, 13.4, 5) + 0.22 * noise(z / 520, 17.9, 5))
  return {
    z,
    pithX: heart.x + lean.x * along + driftX,
    pithY: heart.y + lean.y * along + driftY,
    middleX: 0.35 * driftX,
    middleY: 0.35 * driftY,
    barkRadius: radius - barkTaper * (along / length) + 5 * Math.exp(-z / 260),
  }
}

/** A spot of the log: its ring radius (equal all round a year) and how deep it lies under the bark. */
export interface Spot {
  ring: number
  /** Negative outside the log. */
  depth: number
}

/**
 * Fills `spot` for the place (x, y) of a section. Rings are round near the pith and follow the bark further out,
 * so a heart off the middle gives wide years on one side and narrow ones on the other.
 */
export function findSpot(
  trunk: TrunkShape,
  noise: NoiseFunction3D,
  at: Section,
  x: number,
  y: number,
  spot: Spot,
): void {
  const dx = x - at.pithX
  const dy = y - at.pithY
  const r = Math.max(Math.hypot(dx, dy), 1e-6)
  const ux = dx / r
  const uy = dy / r
  const bark = barkAlong(at, ux, uy) + barkLobes(noise, ux, uy, at.z)
  const share = r / bark
  const narrowing = trunk.taper * (at.z - trunk.length / 2) * Math.max(0, 1 - share * share)
  const lump = trunk.bulge * (noise(x / 85, y / 85, at.z / 520) + 0.4 * noise(x / 34 + 40, y / 34, at.z / 260))
  spot.ring = trunk.radius * share + narrowing + lump * Math.min(1, 2.2 * (1 - share) + 0.25)
  spot.depth = bark + barkRoughness(noise, ux, uy, at.z) - r
}

/** From the pith to a round bark along a direction. */
function barkAlong({ pithX, pithY, middleX, middleY, barkRadius }: Section, ux: number, uy: number): number {
  const cx = middleX - pithX
  const cy = middleY - pithY
  const sideways = ux * cy - uy * cx
  return ux * cx + uy * cy + Math.sqrt(Math.max(barkRadius * barkRadius - sideways * sideways, 1))
}

const barkLobes = (noise: NoiseFunction3D, ux: number, uy: number, z: number): number =>
  3.2 * noise(1.3 * ux + 60, 1.3 * uy, z / 1100)

const barkRoughness = (noise: NoiseFunction3D, ux: number, uy: number, z: number): number =>
  1.6 * noise(3 * ux + 90, 3 * uy, z / 260) + 0.7 * noise(6 * ux + 120, 6 * uy, z / 85)
