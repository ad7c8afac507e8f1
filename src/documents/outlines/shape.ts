import { flattened, type Corner } from '../../core/geometry/panel-outline'
import { point } from '../../core/geometry/point'
import { signedArea } from '../../core/geometry/polygon'

/** A closed shape found in a file, in millimetres, y down. */
export type Shape = readonly Corner[]

/** What a file holds, before one of its shapes is chosen. */
export interface FoundShapes {
  readonly shapes: readonly Shape[]
  /** How its lengths were read, in words. */
  readonly unit: string
  /** Lines that did not close. */
  readonly open: number
}

export const corner = (x: number, y: number, bulge = 0): Corner => ({ at: point<'panel'>(x, y), bulge })

/** The area of a shape, whatever way it runs. */
export const shapeArea = (shape: Shape): number => (shape.length < 2 ? 0 : Math.abs(signedArea(flattened(shape).ring)))

/** How many straight pieces a curve that turns by an angle at a radius needs to stay within the chord error. */
export const stepsFor = (radius: number, angle: number, chordError: number): number =>
  Math.max(1, Math.ceil(Math.abs(angle) / (2 * Math.acos(Math.max(0, 1 - chordError / Math.max(radius, chordError))))))
