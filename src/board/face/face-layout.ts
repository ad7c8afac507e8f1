import { boxAround, boxHeight, boxWidth, type Box, type Edges } from '../../core/geometry/box'
import { isBorderPiece } from '../../core/faces/window-group'
import { between, cross, point, subtract, type Point } from '../../core/geometry/point'
import { ringCovers } from '../../core/geometry/polygon'
import { invert, transformPoint, type Transform } from '../../core/geometry/transform'
import type { CellId } from '../../core/ids'
import { bareLength, showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import type { FaceCell, FaceScene, FaceSeam } from '../board-types'
import { MARKER_RADIUS, tagSize, type Plate, type Tag } from '../paint/marks'
import { SMALL, textWidth } from '../paint/text'
import { boxOnScreen, viewTransform, type Size, type View } from '../view'

/** Where everything stands that keeps its size on the screen: worked out once, drawn and pointed at. */
export interface FaceLayout {
  readonly tags: readonly (Tag & { readonly cell: CellId })[]
  readonly letters: readonly PlacedLetter[]
  readonly markers: readonly { readonly number: number; readonly at: Point<'screen'>; readonly from: Point<'screen'> }[]
  /** How many rows (or columns, when lying) the letters take. */
  readonly letterRows: number
  readonly offsets: readonly (Plate & { readonly text: string })[]
  /** What letters, offsets and tags cover. */
  readonly plates: readonly Plate[]
}

export const NO_LAYOUT: FaceLayout = { tags: [], letters: [], markers: [], letterRows: 0, offsets: [], plates: [] }

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
const TAG_HEIGHT_CROWDED = 24
const LETTER_RADIUS = 12
const LETTER_STEP = 27
/** From the wood to the middle of the first row of letters. */
export const LETTERS_OFF = 26

/** Room round the sheet for letters, dimensions and offsets, px. */
export function faceMargins(scene: FaceScene, { width, height }: Size): Edges {
  const round = scene.seams.some((seam) => seam.round)
  const upright = scene.seams.filter(({ edge, band }) => band === null && Math.abs(edge.a.x - edge.b.x) < 0.01)
  const level = scene.seams.some(({ edge, band }) => band !== 'segment' && Math.abs(edge.a.y - edge.b.y) < 0.01)
  const along = scene.lying ? height : width
  const rows = round ? 1 : upright.length === 0 ? 0 : upright.length * LETTER_STEP > along - 200 ? 2 : 1
  const head = rows * LETTER_STEP + (rows ? 19 : 22)
  const beside = round || level ? 46 : 22
  const chain = (upright.length && !round ? 38 : 22) + (scene.columns.length ? 0 : -10)
  const style = { font: scene.colours.font, size: SMALL }
  const [across, lengthwise] = sizeTexts(scene).map((text) => textWidth(text, style) + 16)
  const rim = round ? 38 : 18
  if (!scene.lying) return { top: head + 22, right: rim, bottom: chain + 24, left: beside + lengthwise! }
  const column = Math.max(
    0,
    ...scene.columns.map(({ from, to }) => textWidth(bareLength(to - from, scene.unit, 'seam'), style)),
  )
  return { top: rim, right: chain + column + 24, bottom: beside + 26, left: head + across! }
}

/** The finished width and length as they are written on the drawing. */
export const sizeTexts = ({ finished, unit }: FaceScene): readonly [string, string] => [
  showLength(boxWidth(finished), unit, 'seam'),
  showLength(boxHeight(finished), unit, 'seam'),
]

export function layOutFace(scene: FaceScene, view: View, tagHeight: number): FaceLayout {
  const tags = placeTags(scene, view, crowded(scene, view) ? Math.min(TAG_HEIGHT_CROWDED, tagHeight) : tagHeight)
  const letters = placeLetters(scene, view, tags)
  const offsets = placeOffsets(scene, letters.placed, view)
  const round = letters.placed.map(({ x, y, radius }) => ({ x, y, width: 2 * radius, height: 2 * radius }))
  const plates = [...tags, ...round, ...offsets]
  return {
    tags,
    letters: letters.placed,
    letterRows: letters.rows,
    offsets,
    plates,
    markers: placeMarkers(scene, view, plates),
  }
}

/** Letters stand beyond the end where a seam begins: at the head (lying: at the left), at the left, or round about. */
function placeLetters(
  scene: FaceScene,
  view: View,
  tags: readonly Plate[],
): { placed: readonly PlacedLetter[]; rows: number } {
  const toScreen = viewTransform<'panel'>(view)
  const sheet = boxOnScreen(view, scene.sheet)
  const centre = transformPoint(toScreen, scene.centre)
  const isPlain = scene.outlines.sheet.ring.length === 4
  const lettered = letteredSeams(scene)
  const onSeams = lettered.filter(({ band }) => band === 'border').map((seam) => onSeam(seam, toScreen, tags))
  const feet = lettered
    .filter(({ band }) => band !== 'border')
    .map((seam) => {
      const ends = [transformPoint(toScreen, seam.edge.a), transformPoint(toScreen, seam.edge.b)]
      const out = seam.round ? ends.sort((p, q) => far(q, centre) - far(p, centre))[0]! : ends.sort(headFirst)[0]!
      const other = ends.find((end) => end !== out)!
      return { seam, foot: out, other }
    })
  const away = (foot: Point<'screen'>, other: Point<'screen'>, round: boolean): Point<'screen'> => {
    // on along the seam where the edge of the sheet may run any way
    if (round || !isPlain) {
      const from = round ? centre : other
      const length = Math.max(1, far(foot, from))
      return point((foot.x - from.x) / length, (foot.y - from.y) / length)
    }
    const gaps = [foot.x - sheet.min.x, foot.y - sheet.min.y, sheet.max.x - foot.x, sheet.max.y - foot.y].map(Math.abs)
    const nearest = gaps.indexOf(Math.min(...gaps))
    return nearest === 0 ? point(-1, 0) : nearest === 1 ? point(0, -1) : nearest === 2 ? point(1, 0) : point(0, 1)
  }
  const rim = scene.outlines.sheet.ring.map((p) => transformPoint(toScreen, p))
  const placed: PlacedLetter[] = []
  let rows = 1
  for (const { seam, foot, other } of feet) {
    const { x, y } = away(foot, other, seam.round)
    let row = 0
    // a seam of the field ends at its border: the letter stands outside that
    const within = roomAhead(rim, foot, point(x, y))
    const at = () => {
      const off = (seam.round ? LETTERS_OFF - 6 : LETTERS_OFF) + row * LETTER_STEP + within
      return { x: foot.x + x * off, y: foot.y + y * off }
    }
    while (row < 3 && placed.some((letter) => Math.hypot(letter.x - at().x, letter.y - at().y) < LETTER_STEP - 2)) row++
    // more seams than three rows can hold: only every so many are lettered on the drawing, the list has them all
    if (row === 3) continue
    // those of a border's corners stand beside the sheet, not in the rows at its head
    if (seam.band === null) rows = Math.max(rows, row + 1)
    placed.push({ letter: seam.letter, ...at(), radius: LETTER_RADIUS, foot })
  }
  return { placed: [...placed, ...onSeams], rows: placed.length ? rows : 0 }
}

/** A seam round a field has no end outside the wood: its letter stands on it, clear of the tags where it can. */
function onSeam(
  { letter, line }: FaceSeam,
  toScreen: Transform<'panel', 'screen'>,
  tags: readonly Plate[],
): PlacedLetter {
  const points = line.map((p) => transformPoint(toScreen, p))
  const size = 2 * LETTER_RADIUS
  const places = ON_SEAM.map((share) => alongLine(points, share))
  const isClear = ({ x, y }: Point<'screen'>) =>
    !tags.some((tag) => overlap({ x, y, width: size, height: size }, tag, 1))
  const at = places.find(isClear) ?? places[0]!
  return { letter, x: at.x, y: at.y, radius: LETTER_RADIUS, foot: at }
}

const ON_SEAM = [0.42, 0.5, 0.58, 0.34, 0.66, 0.25, 0.75, 0.16, 0.84]

function alongLine(points: readonly Point<'screen'>[], share: number): Point<'screen'> {
  const lengths = points.slice(1).map((p, i) => far(p, points[i]!))
  let left = share * lengths.reduce((sum, length) => sum + length, 0)
  const step = Math.max(
    0,
    lengths.findIndex((length) => (left -= length) <= 0),
  )
  return between(points[step + 1]!, points[step]!, -left / lengths[step]!)
}

/** Where a border is made of many pieces only its corners and its seams with the field are lettered on the drawing. */
const MOST_SEGMENTS = 4

function letteredSeams({ seams }: FaceScene): readonly FaceSeam[] {
  const few = seams.filter(({ band }) => band === 'segment').length <= MOST_SEGMENTS
  return few ? seams : seams.filter(({ band }) => band !== 'segment')
}

/** How far it is from a spot to the outline, the way one looks; 0 on it. */
function roomAhead(rim: readonly Point<'screen'>[], from: Point<'screen'>, along: Point<'screen'>): number {
  const met = rim.flatMap((a, i) => {
    const side = subtract(rim[(i + 1) % rim.length]!, a)
    const area = cross(along, side)
    if (Math.abs(area) < 1e-9) return []
    const gap = subtract(a, from)
    const [reach, share] = [cross(gap, side) / area, cross(gap, along) / area]
    return share >= 0 && share <= 1 && reach > 0.5 ? [reach] : []
  })
  return met.length > 0 && ringCovers(rim, from) ? Math.min(...met) : 0
}

const far = (p: Point<'screen'>, q: Point<'screen'>): number => Math.hypot(p.x - q.x, p.y - q.y)

const headFirst = (p: Point<'screen'>, q: Point<'screen'>): number => p.y - q.y || p.x - q.x

/** Whether the cells are narrower than a tag. */
const crowded = ({ cells }: FaceScene, view: View): boolean =>
  cells.some(({ ring }) => {
    const box = boxAround(ring)
    return Math.min(boxWidth(box), boxHeight(box)) * view.scale < 44
  })

/**
 * A tag lies at the numbered end of its leaf as far as the cell is wide enough there, clear of the other tags. Where they
 * have no room beside each other they are smaller; where that does not do, those that would cover others are left out
 * until the drawing is enlarged, that of the cell picked last of all. The list of pieces has them all.
 */
function placeTags(scene: FaceScene, view: View, height: number): FaceLayout['tags'] {
  const cells = taggedCells(scene).filter(({ leaf }) => leaf !== null)
  const heights = [height, ...SMALLER_TAGS.filter((smaller) => smaller < height)]
  for (const each of heights) {
    const tags = clearTags(scene, cells, view, each)
    if (tags.length === cells.length) return tags
  }
  const { selected } = scene
  const isPicked = ({ id }: FaceCell) => selected?.kind === 'cell' && selected.cell === id
  const pickedFirst = [...cells].sort((p, q) => Number(isPicked(q)) - Number(isPicked(p)))
  return clearTags(scene, pickedFirst, view, heights.at(-1)!)
}

/** Heights of tags where there is less room than they would take, px. */
const SMALLER_TAGS = [TAG_HEIGHT_CROWDED, 20]

/** The tags of those cells on which, or beside which, one can lie clear of those before. */
function clearTags(scene: FaceScene, cells: readonly FaceCell[], view: View, height: number): FaceLayout['tags'] {
  const placed: (Tag & { cell: CellId })[] = []
  for (const cell of cells) {
    if (cell.leaf === null) continue
    const size = tagSize(cell.leaf, cell.turnedOver, height, scene.colours)
    const spot = tagSpots(cell, view, size).find((at) => !placed.some((other) => overlap({ ...at, ...size }, other, 3)))
    if (spot) placed.push({ ...spot, ...size, number: cell.leaf, turnedOver: cell.turnedOver, cell: cell.id })
  }
  return placed
}

/** Of a border that is made of many pieces the first of each leaf is tagged; the list of pieces has them all. */
const MOST_BAND_TAGS = 12

function taggedCells({ cells }: FaceScene): readonly FaceCell[] {
  const band = cells.filter(({ id }) => isBorderPiece(id))
  if (band.length <= MOST_BAND_TAGS) return cells
  const later = band.filter((cell, i) => band.findIndex(({ leaf }) => leaf === cell.leaf) < i)
  return cells.filter((cell) => !later.includes(cell))
}

const overlap = (p: Plate, q: Plate, gap: number): boolean =>
  Math.abs(p.x - q.x) < (p.width + q.width) / 2 + gap && Math.abs(p.y - q.y) < (p.height + q.height) / 2 + gap

const STEPS = 28

/** Spots along the middle of a cell from the numbered end on: first those where the whole tag lies on the cell. */
function tagSpots(
  { id, ring, leafToPanel }: FaceCell,
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
  // on a band narrower than the tag it stands out alike on both sides, clear of the letters beyond the rim
  if (isBorderPiece(id)) return fromMiddle(spots)
  const box = boxAround(outline)
  // a cell narrower than the tag: it stays at least within the cell's longer side
  const within = ({ x, y }: Point<'screen'>) =>
    boxWidth(box) > boxHeight(box)
      ? Math.min(x - box.min.x, box.max.x - x) > width / 2 + 3
      : Math.min(y - box.min.y, box.max.y - y) > height / 2 + 3
  return [...spots.filter(within), ...spots]
}

function fromMiddle(spots: readonly Point<'screen'>[]): readonly Point<'screen'>[] {
  const middle = spots[Math.floor(spots.length / 2)]
  return middle ? [...spots].sort((p, q) => far(p, middle) - far(q, middle)) : spots
}

/**
 * At the far end of every upright seam: how far apart in the log the two faces lie that meet there, or how far the
 * figure jumps. Those that have no room are left out; the list of seams has them all.
 */
function placeOffsets(scene: FaceScene, letters: readonly PlacedLetter[], view: View): FaceLayout['offsets'] {
  const toScreen = viewTransform<'panel'>(view)
  const sheet = boxOnScreen(view, scene.sheet)
  const placed: (Plate & { text: string })[] = []
  for (const seam of scene.seams) {
    const upright = !seam.round && seam.band === null && Math.abs(seam.edge.a.x - seam.edge.b.x) < 0.01
    const text = offsetText(seam, scene.unit)
    if (!upright || text === '' || !letters.some(({ letter }) => letter === seam.letter)) continue
    const at = transformPoint(toScreen, seam.edge.b)
    const width = textWidth(text, { font: scene.colours.font, size: SMALL })
    const plate = scene.lying
      ? { x: sheet.max.x + 8 + width / 2, y: at.y, width, height: 15, text }
      : { x: at.x, y: (scene.outlines.sheet.ring.length === 4 ? sheet.max.y : at.y) + 14, width, height: 15, text }
    if (!placed.some((other) => overlap(plate, other, 4))) placed.push(plate)
  }
  return placed
}

function offsetText({ meets, jump, depthOffset }: FaceSeam, unit: LengthUnit): string {
  if (meets === 'breaks') return jump > 0.05 ? `↕ ${bareLength(jump, unit, 'seam')}` : '≠'
  return depthOffset === null ? '' : `Δ ${bareLength(depthOffset, unit, 'depth')}`
}

/** Markers at their places, pushed aside where they would cover a tag or each other. */
function placeMarkers(scene: FaceScene, view: View, plates: readonly Plate[]): FaceLayout['markers'] {
  const toScreen = viewTransform<'panel'>(view)
  const taken: Plate[] = [...plates]
  return scene.markers.map(({ number, at }) => {
    const from = transformPoint(toScreen, at)
    const spot = clearOf(from, taken, boxOnScreen(view, scene.sheet))
    taken.push({ ...spot, width: 2 * MARKER_RADIUS, height: 2 * MARKER_RADIUS })
    return { number, at: spot, from }
  })
}

/** The nearest spot of a widening spiral, on the sheet or at its edge, that covers nothing. */
function clearOf(from: Point<'screen'>, taken: readonly Plate[], { min, max }: Box<'screen'>): Point<'screen'> {
  const size = 2 * MARKER_RADIUS + 4
  for (let i = 0; i < 320; i++) {
    const [angle, off] = [i * 0.7, 7 * Math.sqrt(i)]
    const spot = point<'screen'>(from.x + off * Math.cos(angle), from.y + off * Math.sin(angle))
    const onSheet = spot.x > min.x - 3 && spot.x < max.x + 3 && spot.y > min.y - 3 && spot.y < max.y + 3
    if (i > 0 && !onSheet) continue
    if (!taken.some((other) => overlap({ ...spot, width: size, height: size }, other, 1))) return spot
  }
  return from
}
