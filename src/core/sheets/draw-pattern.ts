import { closedLine, fill, line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { CAP_HEIGHT } from '../drawing/text-width'
import type { LaidFace, Piece } from '../fit/lay-face'
import { boxAround, boxHeight, boxWidth, type Box } from '../geometry/box'
import { depthBehind } from '../geometry/convex'
import { between, point, type Point } from '../geometry/point'
import { ringEdges, type Edge, type Ring } from '../geometry/polygon'
import { compose, transformPoint, type Transform } from '../geometry/transform'

/** The longer side of the picture, mm. */
const SIZE = 70
const MARGIN = 2
/** Crowns along a piece, and strokes in each. */
const CROWNS = 5
const SAMPLES = 24

/**
 * A pattern as a small picture: every piece with one and the same made-up figure, a crown whose points lie towards the
 * numbered end and off the middle, so that each turn of a leaf can be told. White numbers are numbered side up, black
 * ones turned over; `tagScale` makes them, and the strokes of the figure, larger against the picture. What the leaves really look like plays no part.
 */
export function drawPattern(face: LaidFace, title: string, tagScale = 1): Drawing {
  const { sheet } = face.sizes
  const scale = SIZE / Math.max(boxWidth(sheet), boxHeight(sheet))
  const toSheet: Transform<'panel', 'sheet'> = {
    a: scale,
    b: 0,
    c: 0,
    d: scale,
    e: MARGIN - sheet.min.x * scale,
    f: MARGIN - sheet.min.y * scale,
  }
  const figure = madeUpFigure(boxAround(face.pieces.flatMap(({ windowOnLeaf }) => windowOnLeaf)))
  return {
    title,
    extent: {
      min: point<'sheet'>(0, 0),
      max: point<'sheet'>(boxWidth(sheet) * scale + 2 * MARGIN, boxHeight(sheet) * scale + 2 * MARGIN),
    },
    items: [
      ...face.pieces.flatMap((piece) => figureItems(piece, figure, toSheet, tagScale)),
      ...face.pieces.map(({ cell }) => closedLine('seam', onSheet(cell.face.ring, toSheet), { pen: 0.35 })),
      ...face.pieces.flatMap((piece) => numberItems(piece, toSheet, tagScale)),
    ],
  }
}

const onSheet = (ring: Ring<'panel'>, toSheet: Transform<'panel', 'sheet'>) =>
  ring.map((p) => transformPoint(toSheet, p))

/** Nested crowns with their points to the numbered end, a third of the width from the left edge, in leaf mm. */
function madeUpFigure({ min, max }: Box<'leaf'>): readonly (readonly Point<'leaf'>[])[] {
  const [width, length] = [max.x - min.x, max.y - min.y]
  const middle = min.x + width / 3
  return Array.from({ length: 3 * CROWNS }, (_, i) => {
    const tip = min.y + ((i - CROWNS) * length) / CROWNS
    return Array.from({ length: SAMPLES + 1 }, (_, s) => {
      const x = min.x + (width * s) / SAMPLES
      const away = Math.abs(x - middle) / width
      return point<'leaf'>(x, tip + 3 * length * away * away)
    })
  })
}

const GRAIN = '#8a6a45'

function figureItems(
  { cell, leafToPanel }: Piece,
  figure: readonly (readonly Point<'leaf'>[])[],
  toSheet: Transform<'panel', 'sheet'>,
  tagScale: number,
): readonly Item[] {
  const leafToSheet = compose(toSheet, leafToPanel)
  const ring = onSheet(cell.face.ring, toSheet)
  return figure.flatMap((stroke) => {
    const points = stroke.map((p) => transformPoint(leafToSheet, p))
    return points.slice(1).flatMap((b, i) => {
      const part = partInside({ a: points[i]!, b }, ring)
      return part ? [line('wood', [part.a, part.b], { pen: 0.2 * tagScale, colour: GRAIN })] : []
    })
  })
}

/** The part of a stroke inside a convex ring that runs positively. */
function partInside({ a, b }: Edge<'sheet'>, ring: Ring<'sheet'>): Edge<'sheet'> | null {
  let [from, to] = [0, 1]
  for (const edge of ringEdges(ring)) {
    const [here, there] = [depthBehind(edge, a), depthBehind(edge, b)]
    if (here < 0 && there < 0) return null
    if (here < 0) from = Math.max(from, here / (here - there))
    if (there < 0) to = Math.min(to, here / (here - there))
  }
  return from < to ? { a: between(a, b, from), b: between(a, b, to) } : null
}

const NUMBER = 3

function numberItems({ cell, leaf }: Piece, toSheet: Transform<'panel', 'sheet'>, tagScale: number): readonly Item[] {
  const ring = onSheet(cell.face.ring, toSheet)
  const at = point<'sheet'>(
    ring.reduce((sum, { x }) => sum + x, 0) / ring.length,
    ring.reduce((sum, { y }) => sum + y, 0) / ring.length,
  )
  const [half, size, over] = [2 * tagScale, NUMBER * tagScale, cell.turn.turnedOver]
  const box = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ].map(([x, y]) => point<'sheet'>(at.x + x!, at.y + y!))
  return [
    fill('mark', box, over ? '#000000' : '#ffffff'),
    closedLine('mark', box),
    text(point(at.x, at.y + size * CAP_HEIGHT * 0.5), String(leaf?.number ?? '?'), {
      size,
      anchor: 'middle',
      weight: 'bold',
      colour: over ? '#ffffff' : null,
    }),
  ]
}
