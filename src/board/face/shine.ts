import { invert, transformVector } from '../../core/geometry/transform'
import { point, type Point } from '../../core/geometry/point'
import { viewTransform } from '../view'
import type { Flitch } from '../../core/leaves/flitch'
import type { LightFrom } from '../../store/session.svelte'
import type { FaceCell } from '../board-types'

const TOWARDS: Readonly<Record<LightFrom, Point<'screen'>>> = {
  top: point(0, -1),
  right: point(1, 0),
  bottom: point(0, 1),
  left: point(-1, 0),
}

/** Of all that makes leaves shine unlike each other: how much the slope of the fibres does, the rest being the side. */
const BY_SLOPE = 0.7

/**
 * How much lighter or darker a leaf shines than it is, from -1 to 1, for want of anything better known taken from two
 * rules of the shop: fibres come out of a sliced leaf at a slant, the other way when it is turned over or spun, and throw
 * the light that comes along them towards the eye or away; and the loose side, opened by the knife, looks duller than
 * the tight one.
 */
export function shineOf(
  { turnedOver, leafToPanel }: Pick<FaceCell, 'turnedOver' | 'leafToPanel'>,
  { numberedFaceIs }: Pick<Flitch, 'numberedFaceIs'>,
  lightFrom: LightFrom,
  lying: boolean,
): number {
  const panelToScreen = viewTransform<'panel'>({ scale: 1, x: 0, y: 0, quarter: lying })
  const light = transformVector(invert(panelToScreen), TOWARDS[lightFrom])
  const fibre = transformVector(leafToPanel, point<'leaf'>(0, 1))
  const along = fibre.x * light.x + fibre.y * light.y
  // turned over, the fibres that sloped up slope down
  const slope = turnedOver ? along : -along
  const isTight = (numberedFaceIs === 'tight') !== turnedOver
  return BY_SLOPE * slope + (1 - BY_SLOPE) * (isTight ? 1 : -1)
}
