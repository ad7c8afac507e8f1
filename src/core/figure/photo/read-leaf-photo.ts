import { point, type Point } from '../../geometry/point'
import { boxAround, type Box } from '../../geometry/box'
import { ok, type Result } from '../../result'
import type { Defect } from '../../leaves/leaf'
import type { Pixels } from '../log/leaf-pixels'
import { findOutline, type FoundOutline } from './find-outline'
import type { Photograph } from './photograph'
import { proposeDefects } from './propose-defects'
import {
  mmPerPixelAt,
  rectangleCorners,
  viewFromCorners,
  viewFromMarks,
  type HowTheyLie,
  type MarkRectangle,
  type PhotoView,
  type ViewTrouble,
} from './photo-view'
import { findRingMarks } from './ring-marks'
import type { OutlineRefusal } from './separate-leaf'
import { straightened, type StraightFrame, type View } from './straighten'

/** Where the corners of the rectangle are known from. */
export type CornersFrom =
  { readonly from: 'marks' } | { readonly from: 'taps'; readonly corners: readonly Point<'photo'>[] }

/** All that one photograph tells of a leaf. */
export interface LeafPhoto extends PhotoView {
  readonly view: View
  /** The straightened picture, all of what lies between the marks, and its frame. */
  readonly picture: Pixels
  readonly frame: StraightFrame
  readonly outline: Result<FoundOutline, OutlineRefusal>
  /** Dark knots and end splits, to be accepted or dismissed. */
  readonly proposed: readonly Defect[]
}

/** The finest that a picture is kept, and the scale at which outlines are looked for; pixels to the mm. */
const FINEST = 1.25
const OUTLINE_SCALE = 0.8
/** No side of a picture is longer, in pixels. */
const LONGEST = 4_096
/** The cards of the marks reach so far from their middles. */
const CARD = 52

/** Straightens a photograph and finds the leaf on it. `onStep` is told what share of the work is done. */
export function readLeafPhoto(
  photo: Photograph,
  from: CornersFrom,
  rectangle: MarkRectangle,
  lie: HowTheyLie,
  onStep: (share: number) => void = () => undefined,
): Result<LeafPhoto, ViewTrouble> {
  const marks = from.from === 'marks' ? findRingMarks(photo) : []
  onStep(0.3)
  const viewed =
    from.from === 'marks'
      ? viewFromMarks(marks, photo, rectangle, lie)
      : viewFromCorners(from.corners, photo, rectangle, lie)
  if (!viewed.ok) return viewed
  const { view } = viewed.value
  const corners = rectangleCorners(rectangle, lie)
  const box = boxAround(corners)
  const middle = point<'leaf'>((box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2)
  const native = 1 / mmPerPixelAt(view.leafToPhoto, middle)
  const frame = frameOf(box, Math.min(FINEST, Math.max(native, 0.2)))
  const picture = straightened(photo, view, frame)
  const coarse = frameOf(box, Math.min(OUTLINE_SCALE, 1 / frame.mmPerPx))
  const small = straightened(photo, view, coarse)
  photo.close()
  onStep(0.5)
  const cards = from.from === 'marks' ? corners.map((centre) => ({ centre, radius: CARD })) : []
  const outline = findOutline(small, coarse, cards)
  onStep(0.9)
  const proposed = outline.ok ? proposeDefects(small, coarse, outline.value.outline) : []
  return ok({ ...viewed.value, picture, frame, outline, proposed })
}

function frameOf({ min, max }: Box<'leaf'>, pxPerMm: number): StraightFrame {
  const scale = Math.min(pxPerMm, LONGEST / Math.max(max.x - min.x, max.y - min.y))
  return {
    origin: min,
    width: Math.round((max.x - min.x) * scale),
    height: Math.round((max.y - min.y) * scale),
    mmPerPx: 1 / scale,
  }
}
