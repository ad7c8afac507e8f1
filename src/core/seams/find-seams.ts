import { boxAround, boxesOverlap, boxGrown } from '../geometry/box'
import { between, cross, distance, dot, point, subtract, type Point } from '../geometry/point'
import { ringCovers, ringEdges, type Edge, type Ring } from '../geometry/polygon'
import { sharedStretch } from '../geometry/segment'
import { GRID } from '../geometry/tolerance'
import type { CellId } from '../ids'
import { isBandJoint, type Joint } from '../patterns/pattern'
import type { Cell } from '../faces/cells'
import { BORDER } from '../faces/window-group'
import { sharedArcs } from './arc-stretches'

/**
 * Input: the cells of a face, running positively, seam edges tagged, and where seams round a centre meet. Output: the
 * seams, found on the cells and not taken from the pattern: the edges that two cells share, collinear touching ones of
 * one kind joined; between border and field all that lie along one edge of the panel are one seam, curved where it is.
 * Tolerance: the grid. Failure: an edge tagged as a seam that no other cell shares is no seam; with a string between
 * them border and field share none.
 */
export interface Seam {
  /**
   * A, B … from left to right, then down; round a centre clockwise from the first. Those within jointed sheets follow,
   * sheet by sheet. Those of a border come last: where it meets the field, then the others as they come round it
   * clockwise.
   */
  readonly letter: string
  readonly kind: Joint
  /** Whether it begins at a centre round which the pieces lie. */
  readonly round: boolean
  /** From end to end; of a seam that closes on itself from its beginning to the point opposite. */
  readonly edge: Edge<'panel'>
  /** Points along it: its two ends where it is straight. */
  readonly line: readonly Point<'panel'>[]
  readonly length: number
  /** Its length within the finished panel. */
  readonly finishedLength: number
  readonly stretches: readonly Stretch[]
}

/** The part of a seam between two cells. `left` lies anticlockwise of the direction of the edge, so left of a seam that runs down… and above one that runs to the right. */
export interface Stretch {
  readonly edge: Edge<'panel'>
  /** Along the curve where it is one. */
  readonly length: number
  readonly left: CellId
  readonly right: CellId
}

interface Loose extends Stretch {
  readonly kind: Joint
  /** Between border and field: along which edge of the panel. */
  readonly source: number
  readonly line: readonly Point<'panel'>[]
}

export function findSeams(
  cells: readonly Cell[],
  finished: Ring<'panel'>,
  at: Point<'panel'> = point(0, 0),
): readonly Seam[] {
  const centre = liesRound(cells) ? at : null
  const shared = sharedEdges(cells, centre)
  const joined = [
    ...joinInLine(shared.filter(({ kind }) => kind !== 'border')),
    ...joinAlongEdges(shared.filter(({ kind }) => kind === 'border')),
  ]
  return [...joined].sort(inReadingOrder(cells.map(({ id }) => id))).map((stretches, i) => {
    const line = wholeLine(stretches)
    const edge = wholeEdge(stretches)
    const { kind } = stretches[0]!
    return {
      letter: seamLetter(i),
      kind,
      round: isRound(stretches) || (isInSheet(stretches) && touches(edge, centre)),
      edge,
      line,
      length: lineLength(line),
      finishedLength: kind === 'border' ? lineLength(line) : lengthInside(edge, finished),
      stretches: stretches.map((each) => ({
        edge: each.edge,
        length: each.length,
        left: each.left,
        right: each.right,
      })),
    }
  })
}

/** A to Z, then AA, AB … */
export const seamLetter = (i: number): string =>
  (i >= 26 ? seamLetter(Math.floor(i / 26) - 1) : '') + String.fromCharCode(65 + (i % 26))

/** Whether pieces lie round a centre: only then do seams within sheets run from it. */
const liesRound = (cells: readonly Cell[]): boolean =>
  cells.some(({ face }) =>
    face.tags.some((tag) => tag.kind === 'seam' && (tag.joint === 'radial' || tag.joint === 'diameter')),
  )

function sharedEdges(cells: readonly Cell[], centre: Point<'panel'> | null): readonly Loose[] {
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

function sharedBy(one: Cell, other: Cell, centre: Point<'panel'> | null): readonly Loose[] {
  const isBetween = one.group !== other.group
  const otherSeams = ringEdges(other.face.ring).filter((_, o) => other.face.tags[o]!.kind === 'seam')
  const straight = ringEdges(one.face.ring).flatMap((edge, e) => {
    const tag = one.face.tags[e]!
    if (tag.kind !== 'seam' || tag.curve?.shape === 'arc') return []
    return otherSeams.flatMap((otherEdge) => {
      const stretch = sharedStretch(edge, otherEdge, GRID)
      if (!stretch) return []
      return isBetween
        ? [betweenStretch([stretch.a, stretch.b], tag.source ?? 0, one, other)]
        : [directed(stretch, tag.joint, one.id, other.id, centre)]
    })
  })
  const arcs = isBetween ? sharedArcs(one.face, other.face) : []
  return [...straight, ...arcs.map(({ line, source }) => betweenStretch(line, source, one, other))]
}

/** Between border and field: clockwise round the field, which lies on its right. */
function betweenStretch(line: readonly Point<'panel'>[], source: number, one: Cell, other: Cell): Loose {
  const [field, band] = one.group === BORDER ? [other, one] : [one, other]
  const run = field === one ? line : [...line].reverse()
  return {
    edge: { a: run[0]!, b: run.at(-1)! },
    length: lineLength(run),
    line: run,
    kind: 'border',
    source,
    left: band.id,
    right: field.id,
  }
}

/**
 * Seams run down, level ones to the right, those round a centre outwards. A positive ring has its inside clockwise of
 * its edges, so `inside` is on the right hand of the stretch as found: seen running down, that is the left of the panel.
 */
function directed(
  stretch: Edge<'panel'>,
  kind: Joint,
  inside: CellId,
  outside: CellId,
  centre: Point<'panel'> | null,
): Loose {
  const isRound =
    centre !== null && (kind === 'radial' || kind === 'diameter' || (kind === 'sheet' && touches(stretch, centre)))
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
  const line = [edge.a, edge.b]
  const length = lineLength(line)
  return insideIsLeft
    ? { edge, line, length, kind, source: 0, left: inside, right: outside }
    : { edge, line, length, kind, source: 0, left: outside, right: inside }
}

const touches = ({ a, b }: Edge<'panel'>, at: Point<'panel'> | null): boolean =>
  at !== null && (distance(a, at) < 2 * GRID || distance(b, at) < 2 * GRID)

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

const STAY_SINGLE: ReadonlySet<Joint> = new Set<Joint>(['radial', 'diameter', 'sheet', 'segment', 'corner'])

function continues(one: Loose, other: Loose): boolean {
  if (one.kind !== other.kind || STAY_SINGLE.has(one.kind)) return false
  const touches = [one.edge.a, one.edge.b].some((p) =>
    [other.edge.a, other.edge.b].some((q) => distance(p, q) < 2 * GRID),
  )
  const along = subtract(one.edge.b, one.edge.a)
  const turned = cross(along, subtract(other.edge.b, other.edge.a)) / distance(one.edge.a, one.edge.b)
  return touches && Math.abs(turned) < 2 * GRID
}

/** Stretches along one edge of the panel, each gathered from where the one before ends. */
function joinAlongEdges(stretches: readonly Loose[]): readonly (readonly Loose[])[] {
  const sources = [...new Set(stretches.map(({ source }) => source))]
  return sources.flatMap((source) => {
    const left = stretches.filter((one) => one.source === source)
    const seams: Loose[][] = []
    while (left.length > 0) {
      const isBegun = (one: Loose) => left.some((other) => other !== one && follows(other, one))
      // of one that closes on itself the uppermost is the first
      const start = left.find((one) => !isBegun(one)) ?? left.reduce((p, q) => (q.edge.a.y < p.edge.a.y ? q : p))
      const seam = [start]
      left.splice(left.indexOf(start), 1)
      for (let next = left.find((one) => follows(start, one)); next;) {
        const last: Loose = next
        seam.push(last)
        left.splice(left.indexOf(last), 1)
        next = left.find((one) => follows(last, one))
      }
      seams.push(seam)
    }
    return seams
  })
}

const follows = (one: Loose, next: Loose): boolean => distance(one.edge.b, next.edge.a) < 0.02

/** Points along all stretches, those left out at which a straight line only goes on. */
function wholeLine(stretches: readonly Loose[]): readonly Point<'panel'>[] {
  const points = stretches.flatMap(({ line }, i) => (i === 0 ? line : line.slice(1)))
  return points.filter((p, i) => {
    const [before, after] = [points[i - 1], points[i + 1]]
    if (!before || !after) return true
    return Math.abs(cross(subtract(p, before), subtract(after, before))) > GRID * distance(before, after)
  })
}

const lineLength = (line: readonly Point<'panel'>[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + distance(line[i]!, p), 0)

function wholeEdge(stretches: readonly Loose[]): Edge<'panel'> {
  const [a, b] = [stretches[0]!.edge.a, stretches[stretches.length - 1]!.edge.b]
  if (distance(a, b) > 2 * GRID) return { a, b }
  const line = wholeLine(stretches)
  return { a, b: line[Math.floor(line.length / 2)]! }
}

/**
 * From left to right, then down; round a centre by the angle of the seam, clockwise from the first one laid out; sheet
 * by sheet within sheets; round a border as its pieces follow each other.
 */
const inReadingOrder =
  (ids: readonly CellId[]) =>
  (p: readonly Loose[], q: readonly Loose[]): number => {
    if (isRound(p) && isRound(q)) return wedgeOf(p) - wedgeOf(q)
    const order = placeOf(p) - placeOf(q)
    if (order !== 0) return order
    if (placeOf(p) === 2) return ids.indexOf(p[0]!.left) - ids.indexOf(q[0]!.left)
    if (placeOf(p) === 3) return p[0]!.source - q[0]!.source
    if (placeOf(p) === 4) return placeRound(ids, p[0]!) - placeRound(ids, q[0]!)
    const [m, n] = [middle(wholeEdge(p)), middle(wholeEdge(q))]
    return Math.abs(m.x - n.x) > GRID ? m.x - n.x : m.y - n.y
  }

/** Behind which of the pieces a seam of a border comes; the one before the first piece is the last. */
function placeRound(ids: readonly CellId[], { left, right }: Loose): number {
  const [low, high] = [ids.indexOf(left), ids.indexOf(right)].sort((i, j) => i - j) as [number, number]
  return high - low > 1 ? high : low
}

/** Those round a centre first, those within jointed sheets behind the others of the field, those of a border last. */
function placeOf(seam: readonly Loose[]): number {
  if (isRound(seam)) return 0
  const { kind } = seam[0]!
  return kind === 'sheet' ? 2 : kind === 'border' ? 3 : isBandJoint(kind) ? 4 : 1
}

const isInSheet = ([first]: readonly Loose[]): boolean => first!.kind === 'sheet'

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
