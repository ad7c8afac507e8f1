import { boxAround, boxesOverlap, boxGrown } from '../geometry/box'
import { between, cross, distance, dot, point, subtract, type Point } from '../geometry/point'
import { ringCovers, ringEdges, type Edge, type Ring } from '../geometry/polygon'
import { sharedStretch } from '../geometry/segment'
import { GRID } from '../geometry/tolerance'
import type { CellId } from '../ids'
import type { Joint } from '../patterns/pattern'
import type { Cell } from '../faces/cells'

/**
 * Input: the cells of a face, running positively, seam edges tagged, and where seams round a centre meet. Output: the seams, found on the cells and
 * not taken from the pattern: the edges that two cells share, collinear touching ones of one kind joined. Tolerance:
 * the grid. Failure: an edge tagged as a seam that no other cell shares is no seam.
 */
export interface Seam {
  /** A, B … from left to right, then down; round a centre clockwise from the first. */
  readonly letter: string
  readonly kind: Joint
  readonly edge: Edge<'panel'>
  /** Its length within the finished panel. */
  readonly finishedLength: number
  readonly stretches: readonly Stretch[]
}

/** The part of a seam between two cells. `left` lies anticlockwise of the direction of the edge, so left of a seam that runs down… and above one that runs to the right. */
export interface Stretch {
  readonly edge: Edge<'panel'>
  readonly left: CellId
  readonly right: CellId
}

type Loose = Stretch & { readonly kind: Joint }

export function findSeams(
  cells: readonly Cell[],
  finished: Ring<'panel'>,
  centre: Point<'panel'> = point(0, 0),
): readonly Seam[] {
  const joined = joinInLine(sharedEdges(cells, centre))
  return [...joined].sort(inReadingOrder).map((stretches, i) => {
    const edge = wholeEdge(stretches)
    return {
      letter: seamLetter(i),
      kind: stretches[0]!.kind,
      edge,
      finishedLength: lengthInside(edge, finished),
      stretches: stretches.map(({ edge, left, right }) => ({ edge, left, right })),
    }
  })
}

/** A to Z, then AA, AB … */
export const seamLetter = (i: number): string =>
  (i >= 26 ? seamLetter(Math.floor(i / 26) - 1) : '') + String.fromCharCode(65 + (i % 26))

function sharedEdges(cells: readonly Cell[], centre: Point<'panel'>): readonly Loose[] {
  const found: Loose[] = []
  const boxes = cells.map(({ face }) => boxGrown(boxAround(face.ring), { top: 1, right: 1, bottom: 1, left: 1 }))
  cells.forEach((one, i) => {
    for (let j = i + 1; j < cells.length; j++) {
      if (!boxesOverlap(boxes[i]!, boxes[j]!)) continue
      found.push(...sharedBy(one, cells[j]!, centre))
    }
  })
  return found
}

function sharedBy(one: Cell, other: Cell, centre: Point<'panel'>): readonly Loose[] {
  const otherEdges = ringEdges(other.face.ring)
  return ringEdges(one.face.ring).flatMap((edge, e) => {
    const tag = one.face.tags[e]!
    if (tag.kind !== 'seam') return []
    return otherEdges.flatMap((otherEdge, o) => {
      if (other.face.tags[o]!.kind !== 'seam') return []
      const stretch = sharedStretch(edge, otherEdge, GRID)
      return stretch ? [directed(stretch, tag.joint, one.id, other.id, centre)] : []
    })
  })
}

/**
 * Seams run down, level ones to the right, those round a centre outwards. A positive ring has its inside clockwise of
 * its edges, so `inside` is on the right hand of the stretch as found: seen running down, that is the left of the panel.
 */
function directed(stretch: Edge<'panel'>, kind: Joint, inside: CellId, outside: CellId, centre: Point<'panel'>): Loose {
  const isRound = kind === 'radial' || kind === 'diameter'
  const along = subtract(stretch.b, stretch.a)
  const forward = isRound
    ? distance(stretch.b, centre) > distance(stretch.a, centre)
    : runsDown(along)
      ? along.y > 0
      : along.x > 0
  const edge = forward ? stretch : { a: stretch.b, b: stretch.a }
  const firstIsClockwise = forward
  const isUpright = runsDown(along)
  // clockwise of a direction that points down lies the left of the panel; of one to the right, the lower side
  const clockwiseIsLeft = isRound ? false : isUpright
  const insideIsLeft = firstIsClockwise === clockwiseIsLeft
  return insideIsLeft ? { edge, kind, left: inside, right: outside } : { edge, kind, left: outside, right: inside }
}

/** Seams at 45° count as upright, whatever the last digit says. */
const runsDown = ({ x, y }: Point<'panel'>): boolean => Math.abs(y) > Math.abs(x) * (1 - 1e-9) - GRID

/** Stretches gathered into seams: in one line, touching, of one kind. Those round a centre stay single. */
function joinInLine(stretches: readonly Loose[]): readonly (readonly Loose[])[] {
  const seams: Loose[][] = []
  for (const stretch of stretches) {
    const touching = seams.filter((seam) => seam.some((other) => continues(stretch, other)))
    const joined = [stretch, ...touching.flat()]
    for (const seam of touching) seams.splice(seams.indexOf(seam), 1)
    seams.push(joined)
  }
  return seams.map((seam) => seam.sort((p, q) => alongFirst(seam[0]!, p) - alongFirst(seam[0]!, q)))
}

const alongFirst = (first: Loose, other: Loose): number =>
  dot(subtract(other.edge.a, first.edge.a), subtract(first.edge.b, first.edge.a))

function continues(one: Loose, other: Loose): boolean {
  if (one.kind !== other.kind || one.kind === 'radial' || one.kind === 'diameter') return false
  const touches = [one.edge.a, one.edge.b].some((p) =>
    [other.edge.a, other.edge.b].some((q) => distance(p, q) < 2 * GRID),
  )
  const along = subtract(one.edge.b, one.edge.a)
  const turned = cross(along, subtract(other.edge.b, other.edge.a)) / distance(one.edge.a, one.edge.b)
  return touches && Math.abs(turned) < 2 * GRID
}

const wholeEdge = (stretches: readonly Loose[]): Edge<'panel'> => ({
  a: stretches[0]!.edge.a,
  b: stretches[stretches.length - 1]!.edge.b,
})

/** From left to right, then down; round a centre by the angle of the seam, clockwise from the first one laid out. */
function inReadingOrder(p: readonly Loose[], q: readonly Loose[]): number {
  if (isRound(p) && isRound(q)) return wedgeOf(p) - wedgeOf(q)
  const [m, n] = [middle(wholeEdge(p)), middle(wholeEdge(q))]
  return Math.abs(m.x - n.x) > GRID ? m.x - n.x : m.y - n.y
}

const isRound = (seam: readonly Loose[]): boolean => seam[0]!.kind === 'radial' || seam[0]!.kind === 'diameter'

/** The wedge that begins at a seam: the one clockwise of it. */
const wedgeOf = (seam: readonly Loose[]): number => Number.parseInt(seam[0]!.right.slice(1), 10)

const middle = ({ a, b }: Edge<'panel'>): Point<'panel'> => point((a.x + b.x) / 2, (a.y + b.y) / 2)

/** How much of an edge lies in a ring. */
function lengthInside({ a, b }: Edge<'panel'>, ring: Ring<'panel'>): number {
  const along = subtract(b, a)
  const crossings = ringEdges(ring).flatMap((side) => {
    const other = subtract(side.b, side.a)
    const area = cross(along, other)
    if (area === 0) return []
    const gap = subtract(side.a, a)
    const [t, u] = [cross(gap, other) / area, cross(gap, along) / area]
    return t > 0 && t < 1 && u >= -1e-9 && u <= 1 + 1e-9 ? [t] : []
  })
  const places = [0, ...crossings.sort((p, q) => p - q), 1]
  const shares = places.slice(1).map((to, i) => ({ from: places[i]!, to }))
  const inside = shares.filter(({ from, to }) => ringCovers(ring, between(a, b, (from + to) / 2)))
  return inside.reduce((sum, { from, to }) => sum + to - from, 0) * distance(a, b)
}
