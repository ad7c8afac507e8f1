import { circle, closedLine, frame, line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textLines } from '../drawing/text-width'
import { otherFlitch, type LaidFace, type Piece } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'
import { originOnLeaf } from '../fit/placement'
import { boxAround, boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box'
import { add, distance, point, type Point } from '../geometry/point'
import { landmarkBox } from '../figure/landmarks/find-landmarks'
import { landmarkPlaces, viewfinders, type LandmarkPlace, type Sight, type Sights } from '../templates/viewfinder'
import type { LengthUnit } from '../units/unit'
import { placeFigure, placeGrain } from './figures'
import { numberTag } from './number-tag'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { recipeSentence } from './recipe-sentence'

/** The least height of a leaf's part of the page, and the width of its picture. */
const LEAST_ROW = 84
const PICTURE = 62

const FOOT = [
  'Along: from the inner edge of the card at the numbered end; across: from the filled points in the middle. Landmarks are the leaf’s own figure as its picture shows it; knots are those marked on the leaf. See that all of them agree before you draw: figure wanders from leaf to leaf.',
]

/** For each leaf the picture of its window with the landmarks, and where they lie in the viewfinder. */
export function drawViewfinderLeaves(
  face: LaidFace,
  sights: Sights,
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const head = pageHead(
    page,
    face.part.name,
    `Viewfinder, leaf by leaf, ${placeGrain(unit)}`,
    recipeSentence(face.part, face.count, unit),
  )
  const foot = pageFoot(page, FOOT)
  const top = head.bottom + 3
  const each = Math.max(1, Math.floor((foot.bottom - top) / LEAST_ROW))
  const height = (foot.bottom - top) / each
  const rows = viewfinders(face).flatMap(({ name, pieces }) => pieces.map((piece) => ({ name, piece })))
  const pages = Array.from({ length: Math.ceil(rows.length / each) }, (_, i) => rows.slice(i * each, (i + 1) * each))
  return pages.map((here) => [
    ...head.items,
    ...here.flatMap(({ name, piece }, i) => {
      const box: Box<'sheet'> = {
        min: point(PAGE_ROOM, top + i * height),
        max: point(page.width - PAGE_ROOM, top + (i + 1) * height - 5),
      }
      return [
        ...leafItems(face, name, piece, sights.get(piece.cell.id) ?? null, unit, box),
        ...(i > 0
          ? [line('mark', [point(box.min.x, box.min.y - 2.5), point(box.max.x, box.min.y - 2.5)], { pen: 0.1 })]
          : []),
      ]
    }),
    ...foot.items,
  ])
}

function leafItems(
  face: LaidFace,
  name: string,
  piece: Piece,
  sight: Sight | null,
  unit: LengthUnit,
  { min, max }: Box<'sheet'>,
): readonly Item[] {
  const places = sight ? landmarkPlaces(piece, sight) : []
  const left = min.x + PICTURE + 8
  const title = [
    text(point(left, min.y + 6), `Leaf ${piece.leaf?.number ?? '–'}${ofFlitch(otherFlitch(face, piece))}`, {
      size: 7,
      weight: 'bold',
    }),
    text(point(max.x, min.y + 6), `Viewfinder ${name}, piece ${piece.cell.id}`, { size: 4.4, anchor: 'end' }),
  ]
  const picture: Box<'sheet'> = { min: point(min.x, min.y + 4), max: point(min.x + PICTURE, max.y - 4) }
  return [
    ...title,
    ...pictureItems(piece, sight, places, picture),
    ...(places.length > 0
      ? tableItems(places, unit, { min: point(left, min.y + 12), max })
      : noLandmarks(sight, { min: point(left, min.y + 12), max })),
  ]
}

/** Said where there is nothing to measure; the card is of use all the same. */
function noLandmarks(sight: Sight | null, { min, max }: Box<'sheet'>): readonly Item[] {
  const words = sight
    ? 'Nothing in this picture stands out enough to be found again.'
    : 'There is no picture of this leaf.'
  const then = 'Lay the card where you want the window, and mark on it with a pencil what runs in under its edges.'
  return textLines(`${words} ${then}`, max.x - min.x, 4.2).map((words, i) =>
    text(point(min.x, min.y + 5 + i * 5.6), words, { size: 4.2 }),
  )
}

const ROW = 8.6

function tableItems(places: readonly LandmarkPlace[], unit: LengthUnit, { min, max }: Box<'sheet'>): readonly Item[] {
  const along = min.x + (max.x - min.x) * 0.66
  const head = [
    text(point(along, min.y), `along, ${unit}`, { anchor: 'end' }),
    text(point(max.x, min.y), `across, ${unit}`, { anchor: 'end' }),
    line('mark', [point(min.x, min.y + 2), point(max.x, min.y + 2)], { pen: 0.25 }),
  ]
  const rows = places.map((place, i) => ({ place, y: min.y + 2 + (i + 1) * ROW - 2.4, number: i + 1 }))
  return [
    ...head,
    ...rows
      .filter(({ y }) => y < max.y)
      .flatMap(({ place, y, number }) => [
        ...tagAt(point(min.x + 2.6, y - 1.5), String(number)),
        text(point(min.x + 8, y), words(place), { size: 4.2 }),
        text(point(along, y), alongWords(place, unit), { size: 5.2, weight: 'bold', anchor: 'end' }),
        text(point(max.x, y), acrossWords(place, unit), { size: 5.2, weight: 'bold', anchor: 'end' }),
      ]),
  ]
}

function words({ landmark }: LandmarkPlace): string {
  if (landmark.kind === 'knot') return 'knot'
  const end = landmark.end === 'near' ? 'numbered end' : 'far end'
  return landmark.kind === 'crown tip' ? `crown, to ${end}` : `stripe, ${end}`
}

/** Stripes are met on the edge itself. */
const alongWords = ({ landmark, along }: LandmarkPlace, unit: LengthUnit): string =>
  landmark.kind === 'stripe' ? 'edge' : placeFigure(along, unit)

function acrossWords({ across }: LandmarkPlace, unit: LengthUnit): string {
  const figure = placeFigure(Math.abs(across), unit)
  if (figure === '0') return 'middle'
  return `${figure} ${across < 0 ? 'left' : 'right'}`
}

/** The leaf at its window with the hole, its middles and the landmarks, numbered as in the table. */
function pictureItems(
  { place, rough, roughOnLeaf }: Piece,
  sight: Sight | null,
  places: readonly LandmarkPlace[],
  room: Box<'sheet'>,
): readonly Item[] {
  const seen = sight?.picture?.box ?? landmarkBox(roughOnLeaf)
  const scale = Math.min(boxWidth(room) / boxWidth(seen), boxHeight(room) / boxHeight(seen))
  const corner = point<'sheet'>((room.min.x + room.max.x - boxWidth(seen) * scale) / 2, room.min.y)
  const onSheet = (p: Point<'leaf'>): Point<'sheet'> =>
    point(corner.x + (p.x - seen.min.x) * scale, corner.y + (p.y - seen.min.y) * scale)
  const origin = originOnLeaf(place)
  const fromWindow = (p: Point<'window'>) => onSheet(add(point<'leaf'>(p.x, p.y), origin))
  const hole = boxAround(rough)
  const centre = boxCentre(hole)
  const box: Box<'sheet'> = { min: onSheet(seen.min), max: onSheet(seen.max) }
  const lines = (pen: number, colour: string) => [
    closedLine('mark', rough.map(fromWindow), { pen, colour }),
    ...[
      [point<'window'>(centre.x, hole.min.y), point<'window'>(centre.x, hole.max.y)],
      [point<'window'>(hole.min.x, centre.y), point<'window'>(hole.max.x, centre.y)],
    ].map((ends) => line('mark', ends.map(fromWindow), { pen: pen / 2, colour, dash: [2, 2] })),
  ]
  return [
    ...(sight?.picture
      ? [
          {
            kind: 'picture' as const,
            layer: 'wood' as const,
            bytes: sight.picture.bytes,
            type: sight.picture.type,
            unitToSheet: { a: boxWidth(box), b: 0, c: 0, d: boxHeight(box), e: box.min.x, f: box.min.y },
            clip: null,
          },
        ]
      : []),
    frame('mark', box, { pen: 0.1 }),
    ...lines(0.9, '#ffffff'),
    ...lines(0.35, '#000000'),
    ...tagItems(
      places.map(({ at }) => fromWindow(at)),
      box,
    ),
  ]
}

const inside = ({ min, max }: Box<'sheet'>, { x, y }: Point<'sheet'>): boolean =>
  x > min.x && x < max.x && y > min.y && y < max.y

/** A dot at each landmark that the picture shows, and its number beside it where no other stands. */
function tagItems(spots: readonly Point<'sheet'>[], box: Box<'sheet'>): readonly Item[] {
  const taken: Point<'sheet'>[] = []
  return spots.flatMap((at, i) => {
    if (!inside(box, at)) return []
    const free = tagPlaces(at).find((place) => taken.every((other) => distance(other, place) > 2 * TAG + 0.4))
    const place = free ?? at
    taken.push(place)
    return [
      line('mark', [at, place], { pen: 0.7, colour: '#ffffff' }),
      line('mark', [at, place], { pen: 0.3 }),
      circle('mark', at, 0.9, { pen: 0.7, colour: '#ffffff' }),
      circle('mark', at, 0.9, { pen: 0.35 }),
      ...tagAt(place, String(i + 1)),
    ]
  })
}

/** Round about a spot, near ones first. */
const tagPlaces = ({ x, y }: Point<'sheet'>): readonly Point<'sheet'>[] =>
  [4.2, 7.5, 11, 15, 20].flatMap((away) =>
    [-1, -3, 1, 3, 0, 4, -2, 2].map((eighth) => {
      const angle = (eighth * Math.PI) / 4
      return point<'sheet'>(x + away * Math.cos(angle), y + away * Math.sin(angle))
    }),
  )

const TAG = 2.5

const tagAt = (at: Point<'sheet'>, words: string): readonly Item[] =>
  numberTag(at, words, { radius: TAG, size: 3.4, pen: 0.25 })
