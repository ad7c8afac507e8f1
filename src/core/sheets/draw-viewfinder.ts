import { arrow, arrowHead, closedLine, line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { itemsBox } from '../drawing/item-box'
import { textCutTo } from '../drawing/text-width'
import type { LaidFace } from '../fit/lay-face'
import { boxAround, boxCentre, boxGrown, boxHeight, boxRing, boxWidth, type Box, type Side } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { transformPoint, translation } from '../geometry/transform'
import { ringEdges, type Ring } from '../geometry/polygon'
import { levelCrossings } from '../geometry/segment'
import { present } from '../invariant'
import { landmarkPlaces, type Sights, type Viewfinder } from '../templates/viewfinder'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { leavesInWords } from './leaf-words'
import { depthTo, laneAt, outside, tickItems } from './viewfinder-ticks'
import { blockItems, setBlock, type Paragraph } from './text-block'

/** White round the card on the sheet, the band for its name, and how far the arms of an end reach along the window. */
const ROOM = 3
const BAND = 12
const ARM = 90

/** The least width of the arms of an end. */
const ARM_WIDTH = 24

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

/** The whole card, or the end of it at the numbered or the far end of the window. */
export type CardPart = 'whole' | 'near' | 'far'

/** The parts of which a viewfinder is made, in the order in which they are printed. */
export const cardParts = ({ frame }: Viewfinder): readonly CardPart[] =>
  frame === 'whole' ? ['whole'] : ['near', 'far']

export const cardTitle = ({ name }: Viewfinder, part: CardPart): string =>
  `Viewfinder ${name}${part === 'whole' ? '' : part === 'near' ? ', numbered end' : ', far end'}`

/**
 * A card frame at full size, in leaf orientation, to be laid on a leaf numbered side up: its hole is the rough piece. Ticks
 * at the middle of the four sides; for each leaf, in a lane of its own, where its landmarks lie.
 */
export function drawViewfinder(
  face: LaidFace,
  finder: Viewfinder,
  part: CardPart,
  sights: Sights,
  unit: LengthUnit,
): Drawing {
  const ring = finder.template.rough
  const hole = boxAround(ring)
  const card = cardBox(hole, finder.pieces.length, part)
  const windowToSheet = translation<'window', 'sheet'>(ROOM - card.min.x, ROOM - card.min.y)
  const onSheet = (p: Point<'window'>) => transformPoint(windowToSheet, p)
  const leaves = finder.pieces.map((piece) => {
    const sight = sights.get(piece.cell.id)
    return { leaf: piece.leaf?.number ?? 0, places: sight ? landmarkPlaces(piece, sight) : [] }
  })
  const shown = (p: Point<'window'>) => p.y >= card.min.y && p.y <= card.max.y
  const sides = SIDES.filter((side) => !(part === 'near' && side === 'bottom') && !(part === 'far' && side === 'top'))
  const marks = sides.flatMap((side) => [
    ...centreTick(side, ring, hole, onSheet, shown),
    ...tickItems(
      side,
      ring,
      hole,
      leaves.map(({ leaf, places }) => ({
        leaf,
        places: places.filter(({ at }) => side === 'top' || side === 'bottom' || shown(at)),
      })),
      onSheet,
    ),
  ])
  const items = [
    ...outlineItems(ring, card, part).map(({ points, closed }) =>
      (closed ? closedLine : line)('cut', points.map(onSheet)),
    ),
    ...marks,
    ...bandItems(face, finder, part, { min: onSheet(card.min), max: onSheet(card.max) }),
    ...noteItems(finder, part, onSheet(point(card.min.x, card.max.y)), boxWidth(card), unit),
  ]
  const all = present(itemsBox(items), 'a card has lines')
  return {
    title: `${face.part.name}, ${cardTitle(finder, part).toLowerCase()}`,
    extent: boxGrown(all, { top: ROOM, right: ROOM, bottom: ROOM, left: ROOM }),
    items,
  }
}

function cardBox(hole: Box<'window'>, leaves: number, part: CardPart): Box<'window'> {
  const end = laneAt(leaves) + BAND
  const side = part === 'whole' ? end : Math.max(ARM_WIDTH, laneAt(leaves))
  const { min, max } = boxGrown(hole, { top: end, right: side, bottom: end, left: side })
  if (part === 'near') return { min, max: point(max.x, hole.min.y + ARM) }
  return part === 'far' ? { min: point(min.x, hole.max.y - ARM), max } : { min, max }
}

interface Outline {
  readonly points: readonly Point<'window'>[]
  readonly closed: boolean
}

/** What is cut: the hole and the card round it, or the one line round an end that is open to the other. */
function outlineItems(ring: Ring<'window'>, card: Box<'window'>, part: CardPart): readonly Outline[] {
  if (part === 'whole')
    return [
      { points: ring, closed: true },
      { points: boxRing(card), closed: true },
    ]
  const mouth = part === 'near' ? card.max.y : card.min.y
  const back = part === 'near' ? card.min.y : card.max.y
  const within = (y: number) => (part === 'near' ? y < mouth : y > mouth)
  const [left, right] = [...levelCrossings(ringEdges(ring), 'y', mouth)].sort((p, q) => p - q)
  const inner = fromLeft(
    ring.filter(({ y }) => within(y)),
    ring,
    within,
  )
  return [
    {
      closed: true,
      points: [
        point(card.min.x, mouth),
        point(card.min.x, back),
        point(card.max.x, back),
        point(card.max.x, mouth),
        point(present(right, 'a window is crossed twice'), mouth),
        ...[...inner].reverse(),
        point(present(left, 'a window is crossed twice'), mouth),
      ],
    },
  ]
}

/** The points of a convex ring beyond a level, from the left crossing to the right one. */
function fromLeft(
  beyond: readonly Point<'window'>[],
  ring: Ring<'window'>,
  within: (y: number) => boolean,
): readonly Point<'window'>[] {
  const first = ring.findIndex(({ y }, i) => within(y) && !within(ring[(i + ring.length - 1) % ring.length]!.y))
  const inOrder = beyond.map((_, k) => ring[(first + k) % ring.length]!)
  const [start, end] = [inOrder[0], inOrder.at(-1)]
  return start && end && start.x > end.x ? inOrder.reverse() : inOrder
}

/** A filled point that looks into the hole from the middle of a side, with a line behind it. */
function centreTick(
  side: Side,
  ring: Ring<'window'>,
  hole: Box<'window'>,
  onSheet: (p: Point<'window'>) => Point<'sheet'>,
  shown: (p: Point<'window'>) => boolean,
): readonly Item[] {
  const centre = boxCentre(hole)
  const along = side === 'top' || side === 'bottom' ? centre.x : centre.y
  const depth = depthTo(side, ring, hole, along)
  const [tip, back] = [outside(side, hole, along, -depth), outside(side, hole, along, 5 - depth)]
  if (!shown(tip)) return []
  const [to, from] = [onSheet(tip), onSheet(back)]
  const angle = Math.atan2(to.y - from.y, to.x - from.x)
  return [arrowHead('mark', to, angle, 4), line('mark', [from, to], { pen: 0.5 })]
}

/** The name of the card in its outer band, which end it is laid to, and which side up. */
function bandItems(face: LaidFace, finder: Viewfinder, part: CardPart, { min, max }: Box<'sheet'>): readonly Item[] {
  const right = 46
  const room = max.x - min.x - right - 8
  const name = textCutTo(`Viewfinder ${finder.name}, ${leavesInWords(face, finder.pieces)}`, room, 4.6, 'bold')
  const owner = textCutTo(face.part.name, room, 4, 'regular')
  const band = (y: number, first: string, second: string, size: number, weight: 'bold' | 'regular') => [
    text(point(min.x + 4, y), first, { size, weight }),
    text(point(max.x - 4, y), second, { size: 4, anchor: 'end', weight: 'bold' }),
  ]
  const near = min.y + 7
  const far = max.y - 4
  const up = point<'sheet'>(max.x - 34, near + 2.5)
  return [
    ...(part === 'far'
      ? []
      : [
          ...band(near, name, 'numbered end', 4.6, 'bold'),
          ...arrow('mark', up, point(up.x, up.y - 8), { pen: 0.7, head: 4 }),
        ]),
    ...(part === 'near'
      ? []
      : band(
          far,
          part === 'far' ? name : owner,
          'far end',
          part === 'far' ? 4.6 : 4,
          part === 'far' ? 'bold' : 'regular',
        )),
  ]
}

/** How it is used; beside the card, for it is not needed on the leaf. */
function noteItems(
  finder: Viewfinder,
  part: CardPart,
  at: Point<'sheet'>,
  width: number,
  unit: LengthUnit,
): readonly Item[] {
  const box = boxAround(finder.template.rough)
  const [across, along] = [boxWidth(box), boxHeight(box)].map((length) => showLength(length, unit, 'seam'))
  const notes: readonly Paragraph[] = [
    `Print on card, or stick to it; cut along the full line. The hole is the rough piece, ${across} × ${along}, jointing allowance included.`,
    ...(part === 'whole' ? [] : [`Two ends of one frame: lay them in one line by a rule, inner edges ${along} apart.`]),
    `Lay it numbered side up, the arrow to the numbered end. Move it until what is named beside the leaf’s number meets its line; ${part === 'whole' ? 'a crown tip or a knot lies where the lines of two sides cross' : 'how far along a crown tip or a knot lies is told leaf by leaf'}. Filled points are the middles. Then draw along the hole with chalk.`,
  ].map((words) => ({ words, size: 3.4, bold: false }))
  const block = setBlock(notes, Math.max(width, 100))
  return block ? blockItems(block, point(at.x, at.y + 3)) : []
}
