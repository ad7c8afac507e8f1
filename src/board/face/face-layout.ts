import { boxAround, boxHeight, boxWidth, type Edges } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import { ringCovers } from '../../core/geometry/polygon'
import { invert, transformPoint } from '../../core/geometry/transform'
import type { CellId } from '../../core/ids'
import type { FaceCell, FaceScene } from '../board-types'
import { MARKER_RADIUS, tagSize, type Plate, type Tag } from '../paint/marks'
import { boxOnScreen, viewTransform, type Size, type View } from '../view'

/** Where everything stands that keeps its size on the screen: worked out once, drawn and pointed at. */
export interface FaceLayout {
  readonly tags: readonly (Tag & { readonly cell: CellId })[]
  readonly letters: readonly PlacedLetter[]
  readonly markers: readonly { readonly number: number; readonly at: Point<'screen'>; readonly from: Point<'screen'> }[]
  /** How many rows (or columns, when lying) the letters take. */
  readonly letterRows: number
}

export interface PlacedLetter {
  readonly letter: string
  readonly x: number
  readonly y: number
  readonly radius: number
  /** Where its seam comes out of the wood. */
  readonly foot: Point<'screen'>
}

export const TAG_HEIGHT = 28
export const TAG_HEIGHT_TOUCH = 36
const LETTER_RADIUS = 12
const LETTER_STEP = 27
/** From the wood to the middle of the first row of letters. */
export const LETTERS_OFF = 26

/** Room round the sheet for letters, dimensions and offsets, px. */
export function faceMargins(scene: FaceScene, { width, height }: Size): Edges {
  const narrow = width < 560
  const letters = scene.seams.some(({ round }) => !round) ? LETTER_STEP * (scene.seams.length > 14 ? 2 : 1) : 0
  const rim = scene.seams.some(({ round }) => round) ? 34 : 10
  const head = letters + 44
  const foot = (letters ? 22 : 0) + 40
  const side = narrow ? 58 : 84
  const low = height < 420 ? 0.85 : 1
  if (!scene.lying)
    return { top: head * low + 4, right: rim + 16, bottom: foot * low, left: side + (rim > 10 ? 10 : 0) }
  return {
    top: rim + 14,
    right: (letters ? 34 : 0) + (scene.columns.length ? side - 14 : 16),
    bottom: 44,
    left: letters + side,
  }
}

export function layOutFace(scene: FaceScene, view: View, tagHeight: number): FaceLayout {
  const letters = placeLetters(scene, view)
  const tags = placeTags(scene, view, tagHeight)
  return {
    tags,
    letters: letters.placed,
    letterRows: letters.rows,
    markers: placeMarkers(scene, view, tags),
  }
}

/** Letters stand beyond the end where a seam begins: at the head (lying: at the left), at the left, or round about. */
function placeLetters(scene: FaceScene, view: View): { placed: readonly PlacedLetter[]; rows: number } {
  const toScreen = viewTransform<'panel'>(view)
  const sheet = boxOnScreen(view, scene.sheet)
  const centre = transformPoint(toScreen, point<'panel'>(0, 0))
  const feet = scene.seams.map((seam) => {
    const ends = [transformPoint(toScreen, seam.edge.a), transformPoint(toScreen, seam.edge.b)]
    const out = seam.round ? ends.sort((p, q) => far(q, centre) - far(p, centre))[0]! : ends.sort(headFirst)[0]!
    return { seam, foot: out }
  })
  const away = (foot: Point<'screen'>, round: boolean): Point<'screen'> => {
    if (round) {
      const length = Math.max(1, far(foot, centre))
      return point((foot.x - centre.x) / length, (foot.y - centre.y) / length)
    }
    const gaps = [foot.x - sheet.min.x, foot.y - sheet.min.y, sheet.max.x - foot.x, sheet.max.y - foot.y].map(Math.abs)
    const nearest = gaps.indexOf(Math.min(...gaps))
    return nearest === 0 ? point(-1, 0) : nearest === 1 ? point(0, -1) : nearest === 2 ? point(1, 0) : point(0, 1)
  }
  const placed: PlacedLetter[] = []
  let rows = 1
  for (const { seam, foot } of feet) {
    const { x, y } = away(foot, seam.round)
    let row = 0
    const at = () => {
      const off = (seam.round ? LETTERS_OFF - 6 : LETTERS_OFF) + row * LETTER_STEP
      return { x: foot.x + x * off, y: foot.y + y * off }
    }
    while (row < 3 && placed.some((other) => Math.hypot(other.x - at().x, other.y - at().y) < LETTER_STEP - 2)) row++
    // more seams than three rows can hold: only every so many are lettered on the drawing, the list has them all
    if (row === 3) continue
    rows = Math.max(rows, row + 1)
    placed.push({ letter: seam.letter, ...at(), radius: LETTER_RADIUS, foot })
  }
  return { placed, rows: placed.length ? rows : 0 }
}

const far = (p: Point<'screen'>, q: Point<'screen'>): number => Math.hypot(p.x - q.x, p.y - q.y)

const headFirst = (p: Point<'screen'>, q: Point<'screen'>): number => p.y - q.y || p.x - q.x

/** A tag lies at the numbered end of its leaf as far as the cell is wide enough there, clear of the other tags. */
function placeTags(scene: FaceScene, view: View, height: number): FaceLayout['tags'] {
  const placed: (Tag & { cell: CellId })[] = []
  for (const cell of scene.cells) {
    if (cell.leaf === null) continue
    const size = tagSize(cell.leaf, cell.turnedOver, height, scene.colours)
    const spots = tagSpots(cell, view, size)
    const plates = spots.map((spot) => ({ ...spot, ...size }))
    const best =
      plates.find((plate) => !placed.some((other) => overlap(plate, other, 3))) ?? leastCovered(plates, placed)
    if (best) placed.push({ ...best, number: cell.leaf, turnedOver: cell.turnedOver, cell: cell.id })
  }
  return placed
}

const overlap = (p: Plate, q: Plate, gap: number): boolean =>
  Math.abs(p.x - q.x) < (p.width + q.width) / 2 + gap && Math.abs(p.y - q.y) < (p.height + q.height) / 2 + gap

const leastCovered = (plates: readonly Plate[], placed: readonly Plate[]): Plate | null =>
  [...plates].sort((p, q) => covered(p, placed) - covered(q, placed))[0] ?? null

const covered = (plate: Plate, placed: readonly Plate[]): number =>
  placed.filter((other) => overlap(plate, other, 0)).length

const STEPS = 28

/** Spots along the middle of a cell from the numbered end on: first those where the whole tag lies on the cell. */
function tagSpots(
  { ring, leafToPanel }: FaceCell,
  view: View,
  { width, height }: { readonly width: number; readonly height: number },
): readonly Point<'screen'>[] {
  const toScreen = viewTransform<'panel'>(view)
  const panelToLeaf = invert(leafToPanel)
  const onLeaf = boxAround(ring.map((p) => transformPoint(panelToLeaf, p)))
  const outline = ring.map((p) => transformPoint(toScreen, p))
  const middle = (onLeaf.min.x + onLeaf.max.x) / 2
  const spots = Array.from({ length: STEPS + 1 }, (_, i) => {
    const along = onLeaf.min.y + ((onLeaf.max.y - onLeaf.min.y) * i) / STEPS
    return transformPoint(toScreen, transformPoint(leafToPanel, point<'leaf'>(middle, along)))
  }).filter((spot) => ringCovers(outline, spot))
  const lies = ({ x, y }: Point<'screen'>) =>
    [-1, 1].every((i) =>
      [-1, 1].every((j) => ringCovers(outline, point(x + (i * width) / 1.8, y + (j * height) / 1.6))),
    )
  const roomy = spots.filter(lies)
  if (roomy.length) return [...roomy, ...spots]
  const box = boxAround(outline)
  const inset = (boxHeight(box) > boxWidth(box) ? boxHeight(box) : boxWidth(box)) * 0.06
  return spots.filter(({ x, y }) => y - box.min.y > Math.min(inset, 20) || x - box.min.x > Math.min(inset, 20))
}

/** Markers at their places, pushed aside where they would cover a tag or each other. */
function placeMarkers(scene: FaceScene, view: View, tags: readonly Plate[]): FaceLayout['markers'] {
  const toScreen = viewTransform<'panel'>(view)
  const taken: Plate[] = [...tags]
  return scene.markers.map(({ number, at }) => {
    const from = transformPoint(toScreen, at)
    const spot = clearOf(from, taken)
    taken.push({ ...spot, width: 2 * MARKER_RADIUS, height: 2 * MARKER_RADIUS })
    return { number, at: spot, from }
  })
}

/** The nearest spot of a widening spiral that covers nothing. */
function clearOf(from: Point<'screen'>, taken: readonly Plate[]): Point<'screen'> {
  const plate = (x: number, y: number) => ({ x, y, width: 2 * MARKER_RADIUS + 4, height: 2 * MARKER_RADIUS + 4 })
  for (let i = 0; i < 90; i++) {
    const [angle, off] = [i * 0.7, 3.2 * Math.sqrt(i) * (i > 0 ? 2.2 : 0)]
    const spot = point<'screen'>(from.x + off * Math.cos(angle), from.y + off * Math.sin(angle))
    if (!taken.some((other) => overlap(plate(spot.x, spot.y), other, 1))) return spot
  }
  return from
}
