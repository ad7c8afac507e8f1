import { boxCentre, boxHeight, boxWidth } from '../../core/geometry/box'
import { transformPoint } from '../../core/geometry/transform'
import { bareLength, showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import type { PartFace, PartsScene } from '../board-types'
import { NORMAL, SMALL, textWidth } from '../paint/text'
import { viewTransform, type Size, type View } from '../view'

/** A part in its place on the board. */
export interface PlacedPart {
  readonly part: PartFace
  readonly view: View
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const GAP = 26
/** Two lines of words under each part. */
export const WORDS = 42

const sizeOf = ({ finished, lying }: PartFace): Size => {
  const [across, along] = [boxWidth(finished), boxHeight(finished)]
  return lying ? { width: along, height: across } : { width: across, height: along }
}

interface Shelf {
  readonly parts: { part: PartFace; x: number; width: number; height: number; taken: number }[]
  width: number
  height: number
}

/** Width of the words under a part, px. */
const wordsWidth = (part: PartFace, { colours, unit }: PartsScene): number =>
  Math.max(
    textWidth(part.name, { font: colours.font, size: NORMAL, bold: true }),
    textWidth(partWords(part, unit), { font: colours.font, size: SMALL }),
  )

/** Size and remark, as they stand under the name. */
export function partWords({ finished, remark }: PartFace, unit: LengthUnit): string {
  const size = `${bareLength(boxWidth(finished), unit, 'whole')} × ${showLength(boxHeight(finished), unit, 'whole')}`
  return remark === '' ? size : `${size}, ${remark}`
}

/** Parts in rows, each row as wide as the board allows; the feet of a row stand on one line. */
function shelves(scene: PartsScene, scale: number, width: number): Shelf[] {
  const rows: Shelf[] = []
  for (const part of scene.parts) {
    const size = sizeOf(part)
    const [wide, high] = [size.width * scale, size.height * scale]
    const taken = Math.max(wide, wordsWidth(part, scene))
    const last = rows.at(-1)
    const row = last && last.width + GAP + taken <= width - 2 * GAP ? last : { parts: [], width: -GAP, height: 0 }
    if (row !== last) rows.push(row)
    row.parts.push({ part, x: row.width + GAP, width: wide, height: high, taken })
    row.width += GAP + taken
    row.height = Math.max(row.height, high)
  }
  return rows
}

const heightOf = (rows: readonly Shelf[]): number => rows.reduce((sum, { height }) => sum + height + WORDS + GAP, GAP)

/** The largest part is shown at least this share of the board wide, even if one then has to move along the rows. */
const LEAST_SHARE = 0.42
const LEAST_LENGTH = 170

/** The largest scale, px a mm, at which all parts fit on a board, or at which the largest can still be made out. */
export function partsScale(scene: PartsScene, { width, height }: Size): number {
  let [fits, fails] = [0.005, 3]
  for (let i = 0; i < 26; i++) {
    const middle = (fits + fails) / 2
    const rows = shelves(scene, middle, width)
    if (heightOf(rows) <= height && rows.every((row) => row.width <= width - 2 * GAP)) fits = middle
    else fails = middle
  }
  const longest = Math.max(1, ...scene.parts.map(sizeOf).map((size) => Math.max(size.width, size.height)))
  return Math.max(fits, Math.min(LEAST_SHARE * width, LEAST_LENGTH) / longest)
}

/** How high everything is at the scale it has, px. */
export const partsHeight = (scene: PartsScene, size: Size): number =>
  heightOf(shelves(scene, partsScale(scene, size), size.width))

/** Where each part stands, seen at a view whose scale is 1 when everything fits. */
export function placeParts(scene: PartsScene, size: Size, view: View): readonly PlacedPart[] {
  const scale = partsScale(scene, size)
  const rows = shelves(scene, scale, size.width)
  let top = Math.max(GAP, (size.height - heightOf(rows)) / 2 + GAP)
  return rows.flatMap((row) => {
    const left = Math.max(GAP, (size.width - row.width) / 2)
    const placed = row.parts.map(({ part, x, width, height, taken }) =>
      onBoard(part, scale, view, { x: left + x + (taken - width) / 2, y: top + row.height - height, width, height }),
    )
    top += row.height + WORDS + GAP
    return placed
  })
}

function onBoard(
  part: PartFace,
  scale: number,
  view: View,
  at: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): PlacedPart {
  const own = { scale: scale * view.scale, x: 0, y: 0, quarter: part.lying }
  const centre = transformPoint(viewTransform<'panel'>(own), boxCentre(part.finished))
  const [x, y] = [view.x + at.x * view.scale, view.y + at.y * view.scale]
  const [width, height] = [at.width * view.scale, at.height * view.scale]
  return { part, view: { ...own, x: x + width / 2 - centre.x, y: y + height / 2 - centre.y }, x, y, width, height }
}
