/**
 * Where two pins hold the taped sheet to its core, so that it can't creep on wet glue.
 *
 * Input: the sizes of a face and its seams. Output: two spots of the panel, one beyond each end (else each side) of the
 * finished panel, in wood that is sawn away afterwards, beside the centre line and clear of every seam. Failure: null
 * where the core is pressed too near its finished size. That they are used so is common practice.
 */
import type { ThreeSizes } from '../faces/face'
import { boxCentre, type Side } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { ringCovers } from '../geometry/polygon'
import { distanceToEdge, distanceToRing } from '../geometry/segment'
import type { SeamReport } from '../seams/seam-report'

/** A thin pin wants this much core round it, and this much between it and the panel that stays. */
const CLEAR = 3
/** Kept from a seam, which would open at a pin. */
const FROM_SEAM = 8
/** Off the centre line, which is wanted for laying the sheet: the first that is clear. */
const BESIDE = [25, -25, 40, -40, 60, -60, 90, -90]

export interface PanelPin {
  readonly at: Point<'panel'>
  /** The edge of the panel in whose waste it stands. */
  readonly side: Side
  /** From the centre line that meets that edge: to the right, or down, is more. */
  readonly beside: number
  /** From the edge of the core. */
  readonly inside: number
}

export type PanelPins = readonly [PanelPin, PanelPin]

export function panelPins(sizes: ThreeSizes, seams: readonly SeamReport[]): PanelPins | null {
  const pinAt = (side: Side): PanelPin | null =>
    BESIDE.map((beside) => pinBeside(sizes, side, beside)).find(({ at }) => isWaste(at, sizes) && isOff(at, seams)) ??
    null
  return both(pinAt('top'), pinAt('bottom')) ?? both(pinAt('left'), pinAt('right'))
}

const both = (one: PanelPin | null, other: PanelPin | null): PanelPins | null => one && other && [one, other]

/** Half-way between the finished panel and the edge of its core. */
function pinBeside({ finished, core }: ThreeSizes, side: Side, beside: number): PanelPin {
  const end = side === 'top' || side === 'left' ? 'min' : 'max'
  const { x, y } = boxCentre(finished)
  if (side === 'top' || side === 'bottom') {
    const at = point<'panel'>(x + beside, (finished[end].y + core[end].y) / 2)
    return { at, side, beside, inside: Math.abs(core[end].y - at.y) }
  }
  const at = point<'panel'>((finished[end].x + core[end].x) / 2, y + beside)
  return { at, side, beside, inside: Math.abs(core[end].x - at.x) }
}

const isWaste = (p: Point<'panel'>, { outlines: { core, finished } }: ThreeSizes): boolean =>
  ringCovers(core.ring, p) &&
  !ringCovers(finished.ring, p) &&
  distanceToRing(core.ring, p) >= CLEAR &&
  distanceToRing(finished.ring, p) >= CLEAR

const isOff = (p: Point<'panel'>, seams: readonly SeamReport[]): boolean =>
  seams.every(({ edge }) => distanceToEdge(edge, p) >= FROM_SEAM)
