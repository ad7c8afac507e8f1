import { middleDepths } from './laminate-strip'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { Curve, Layer } from './pressing'

/** A bent panel: the arc of its show face and the developed widths that differ from face to back. */
export interface Bent {
  /** Radius of the show face. */
  readonly radius: number
  /** Radians of arc. */
  readonly angle: number
  /** Height of the show face's arc over its chord. */
  readonly rise: number
  /** Along the arc. */
  readonly front: number
  readonly back: number
  /** Of each layer's middle, front to back. */
  readonly layers: readonly number[]
  /** Where the centre seam lies from either edge, along each arc. */
  readonly centreFront: number
  readonly centreBack: number
}

/** Radius and angle of an arc over a chord, by its rise; a rise above half the chord is more than a half circle. */
export function arcByRise(chord: number, rise: number): { radius: number; angle: number } {
  return { radius: (chord * chord) / (8 * rise) + rise / 2, angle: 4 * Math.atan2(2 * rise, chord) }
}

/** The same by its radius, for arcs up to a half circle; null when the chord is longer than the circle is wide. */
export function arcByRadius(chord: number, radius: number): { radius: number; angle: number } | null {
  if (chord > 2 * radius) return null
  return { radius, angle: 2 * Math.asin(chord / (2 * radius)) }
}

/** How a length is told. */
export type SayLength = (length: number) => string

/** The developed panel, or null when the curve can't be: see `curveTrouble`. */
export function developed(curve: Curve, layers: readonly Layer[]): Bent | null {
  const arc = curve.by === 'rise' ? arcByRise(curve.chord, curve.rise) : arcByRadius(curve.chord, curve.radius)
  if (!arc || curveTrouble(curve, layers, String) !== null) return null
  const { radius, angle } = arc
  const thickness = layers.reduce((sum, layer) => sum + layer.thickness, 0)
  // behind a hollow face the arcs grow, behind a round one they shrink
  const way = curve.show === 'hollow' ? 1 : -1
  const at = (depth: number): number => (radius + way * depth) * angle
  return {
    radius,
    angle,
    rise: radius * (1 - Math.cos(angle / 2)),
    front: at(0),
    back: at(thickness),
    layers: middleDepths(layers).map((depth) => at(depth + thickness / 2)),
    centreFront: at(0) / 2,
    centreBack: at(thickness) / 2,
  }
}

/** Why there is no such curve, in a sentence; null when there is. */
export function curveTrouble(curve: Curve, layers: readonly Layer[], say: SayLength): string | null {
  if (!(curve.chord > 0)) return `The chord is ${say(curve.chord)}; it must be above 0.`
  if (curve.by === 'rise' && !(curve.rise > 0))
    return `The rise is ${say(curve.rise)}; it must be above 0, else the panel is flat.`
  if (curve.by === 'radius' && !(curve.radius > 0)) return `The radius is ${say(curve.radius)}; it must be above 0.`
  if (curve.by === 'radius' && curve.chord > 2 * curve.radius)
    return `A chord of ${say(curve.chord)} is longer than a circle of radius ${say(curve.radius)} is wide, ${say(2 * curve.radius)}.`
  const thickness = layers.reduce((sum, layer) => sum + layer.thickness, 0)
  const radius = curve.by === 'rise' ? arcByRise(curve.chord, curve.rise).radius : curve.radius
  if (curve.show === 'round' && thickness >= radius)
    return `A panel ${say(thickness)} thick can’t bend round a radius of ${say(radius)}: its back would have none left.`
  return null
}

/** The developed widths in a sentence. */
export function curveSentence({ front, back, centreFront }: Bent, unit: LengthUnit): string {
  const say = (length: number): string => showLength(length, unit, 'seam')
  const wider = front > back ? 'narrower' : 'wider'
  return `Round the arc the face is ${say(front)} wide and the back ${say(back)}, ${say(Math.abs(front - back))} ${wider}. The centre seam lies at mid-arc, ${say(centreFront)} from either edge along the face, not halfway along the chord.`
}
