/**
 * In which order a face is put together: pairs first, then pairs of pairs, and last what is made at a later stage.
 *
 * Input: the cells of a face and the seams found on them. Output: a tree; each joint puts two groups together along
 * seams, in one straight line where there is one that no piece lies across. Cross seams and the diameter of a sunburst
 * come last, as their allowance says; a jointed sheet is whole before the piece that is cut from it is joined; a straight split leaves an even number on one side, so that pairs are shot
 * together. A border is laid round the field when that is whole: each of its bands is joined first, then the bands are
 * fitted one after the other. Where no straight line goes through (mitres round a panel that is not square, an odd sunburst), the
 * smallest piece at the border is fitted last. Tolerance: pieces may reach over the line by `OVER`. Failure: none.
 */
import type { Cell } from '../faces/cells'
import { depthBehind } from '../geometry/convex'
import { distance } from '../geometry/point'
import { polygonArea, type Edge } from '../geometry/polygon'
import type { CellId } from '../ids'
import { present } from '../invariant'
import { BORDER } from '../faces/window-group'
import { isBandJoint, type Joint } from '../patterns/pattern'
import type { Seam } from './find-seams'

/** One piece, or two groups joined. */
export type Assembly = { readonly kind: 'piece'; readonly cell: CellId } | JoinedPieces

export interface JoinedPieces {
  readonly kind: 'joined'
  readonly first: Assembly
  readonly second: Assembly
  /** What is joined in this step, by the seams' letters. */
  readonly seams: readonly JoinedSeam[]
  /** Whether both edges can be trued in one line. */
  readonly straight: boolean
  readonly joint: Joint
  /** 1 where single pieces are joined, 2 where pairs are, and so on. */
  readonly stage: number
  /** The pieces it holds, in the order of the tree. */
  readonly cells: readonly CellId[]
}

export interface JoinedSeam {
  readonly letter: string
  readonly length: number
}

const OVER = 0.02
/** The seams of a border are short: what their ends are off by grows over the rest of it. */
const OVER_BAND = 0.2

/** A stretch of a seam between two cells. */
interface Link {
  readonly letter: string
  readonly joint: Joint
  readonly edge: Edge<'panel'>
  readonly length: number
  readonly cells: readonly [CellId, CellId]
}

/** The order of jointing of a whole face; null if it has no pieces. */
export function orderOfJointing(cells: readonly Cell[], seams: readonly Seam[]): Assembly | null {
  if (cells.length === 0) return null
  const links = seams.flatMap(({ letter, kind, stretches }) =>
    stretches.map(({ edge, length, left, right }): Link => ({
      letter,
      joint: kind,
      edge,
      length,
      cells: [left, right],
    })),
  )
  return assemble(asPieces(cells), links.flatMap(betweenPieces(cells)), (piece) => sheetTree(piece, cells, links))
}

/** The pieces that are joined once the jointed sheets are whole: of strips the piece that is cut from their sheet. */
function asPieces(cells: readonly Cell[]): readonly Cell[] {
  const sheets = new Set<CellId>()
  return cells.flatMap((cell) => {
    if (!cell.sheet) return [cell]
    if (sheets.has(cell.sheet.id)) return []
    sheets.add(cell.sheet.id)
    return [cell.sheet]
  })
}

/** A link as one of the pieces on its two sides; none within a sheet. */
function betweenPieces(cells: readonly Cell[]): (link: Link) => readonly Link[] {
  const pieceOf = new Map(cells.map(({ id, sheet }) => [id, sheet?.id ?? id]))
  return (link) => {
    const [p, q] = [pieceOf.get(link.cells[0])!, pieceOf.get(link.cells[1])!]
    return p === q ? [] : [{ ...link, cells: [p, q] }]
  }
}

/** How the sheet of a piece is joined; a piece from one leaf is itself. */
function sheetTree(piece: Cell, cells: readonly Cell[], links: readonly Link[]): Assembly {
  const strips = cells.filter(({ sheet }) => sheet?.id === piece.id)
  return strips.length === 0 ? asItIs(piece) : assemble(strips, within(links, idsOf(strips)), asItIs)
}

const asItIs = ({ id }: Cell): Assembly => ({ kind: 'piece', cell: id })

/** The joints of a tree in the order in which they are made: those of jointed sheets first, then stage by stage. */
export function jointsInOrder(tree: Assembly | null): readonly JoinedPieces[] {
  const joints = (one: Assembly): readonly JoinedPieces[] =>
    one.kind === 'piece' ? [] : [...joints(one.first), ...joints(one.second), one]
  const isLater = ({ joint }: JoinedPieces) => (joint === 'sheet' ? 0 : 1)
  return tree ? [...joints(tree)].sort((p, q) => isLater(p) - isLater(q) || p.stage - q.stage) : []
}

export const cellsOf = (one: Assembly): readonly CellId[] => (one.kind === 'piece' ? [one.cell] : one.cells)

const stageOf = (one: Assembly): number => (one.kind === 'piece' ? 0 : one.stage)

/** What stands at the ends of a tree for a piece. */
type OfPiece = (piece: Cell) => Assembly

function assemble(cells: readonly Cell[], links: readonly Link[], ofPiece: OfPiece): Assembly {
  const [only, second] = cells
  if (!second) return ofPiece(present(only, 'a group without pieces'))
  const split = lastBand(cells, links) ?? straightSplit(cells, links) ?? lastFitted(cells, links)
  return joined(split, links, ofPiece)
}

/** The last of the bands round a field, or the last of those that go round; null where all is field, or one band. */
function lastBand(cells: readonly Cell[], links: readonly Link[]): Split | null {
  const band = cells.filter(({ group }) => group === BORDER)
  if (band.length === 0) return null
  const bands = bandsOf(band, links)
  if (bands.length === 1 && band.length === cells.length) return null
  const last = present(bands.at(-1), 'a border without bands')
  return { one: cells.filter((cell) => !last.includes(cell)), other: last, straight: false }
}

/** The pieces of a border in their order, those that follow each other without a corner between them in one band. */
function bandsOf(pieces: readonly Cell[], links: readonly Link[]): readonly (readonly Cell[])[] {
  let bands: readonly (readonly Cell[])[] = []
  for (const piece of pieces) {
    const goesOn = (cell: Cell) =>
      links.some(
        ({ joint, cells: [p, q] }) => joint === 'segment' && isAcross([p, q], new Set([cell.id]), new Set([piece.id])),
      )
    // round a closed curve the last piece may join what was two bands
    const joined = bands.filter((band) => band.some(goesOn))
    bands = [...bands.filter((band) => !joined.includes(band)), [...joined.flat(), piece]]
  }
  return bands
}

interface Split {
  readonly one: readonly Cell[]
  readonly other: readonly Cell[]
  readonly straight: boolean
}

function joined({ one, other, straight }: Split, links: readonly Link[], ofPiece: OfPiece): JoinedPieces {
  const [inOne, inOther] = [idsOf(one), idsOf(other)]
  const first = assemble(one, within(links, inOne), ofPiece)
  const second = assemble(other, within(links, inOther), ofPiece)
  const across = links.filter(({ cells }) => isAcross(cells, inOne, inOther))
  const letters = [...new Set(across.map(({ letter }) => letter))]
  return {
    kind: 'joined',
    first,
    second,
    seams: letters.map((letter) => ({
      letter,
      length: across.filter((link) => link.letter === letter).reduce((sum, one) => sum + one.length, 0),
    })),
    straight,
    // a string lies between a border and its field
    joint: across[0]?.joint ?? (other.some(({ group }) => group === BORDER) ? 'border' : 'side'),
    stage: 1 + Math.max(stageOf(first), stageOf(second)),
    cells: [...cellsOf(first), ...cellsOf(second)],
  }
}

const idsOf = (cells: readonly Cell[]): ReadonlySet<CellId> => new Set(cells.map(({ id }) => id))

const within = (links: readonly Link[], ids: ReadonlySet<CellId>): readonly Link[] =>
  links.filter(({ cells: [p, q] }) => ids.has(p) && ids.has(q))

const isAcross = ([p, q]: Link['cells'], one: ReadonlySet<CellId>, other: ReadonlySet<CellId>): boolean =>
  (one.has(p) && other.has(q)) || (one.has(q) && other.has(p))

/** What is made last stands first. */
const LAST_FIRST: readonly Joint[] = [
  'border',
  'corner',
  'diameter',
  'cross',
  'mitre',
  'radial',
  'segment',
  'side',
  'sheet',
]

/** The best straight line that parts the cells with none across it. */
function straightSplit(cells: readonly Cell[], links: readonly Link[]): Split | null {
  let best: { readonly split: Split; readonly cost: readonly number[] } | null = null
  for (const { edge, joint } of differentLines(links)) {
    const split = splitAt(cells, edge, isBandJoint(joint) ? OVER_BAND : OVER)
    if (!split) continue
    const [a, b] = [split.one.length, split.other.length]
    // an odd group on both sides would leave two pieces without a partner
    const cost = [LAST_FIRST.indexOf(joint), a % 2 === 1 && b % 2 === 1 && a + b > 2 ? 1 : 0, Math.abs(a - b)]
    if (!best || isLess(cost, best.cost)) best = { split, cost }
  }
  return best?.split ?? null
}

const isLess = (cost: readonly number[], other: readonly number[]): boolean => {
  const i = cost.findIndex((value, k) => value !== other[k])
  return i >= 0 && cost[i]! < other[i]!
}

/** One link for each line and joint: grids have many in one line. */
function differentLines(links: readonly Link[]): readonly Link[] {
  const known = new Map<string, Link>()
  for (const link of links) {
    const length = distance(link.edge.a, link.edge.b)
    if (length < 1) continue
    // both ways along a line are one line
    const isForth =
      link.edge.b.x - link.edge.a.x > 1e-6 ||
      (Math.abs(link.edge.b.x - link.edge.a.x) <= 1e-6 && link.edge.b.y > link.edge.a.y)
    const [a, b] = isForth ? [link.edge.a, link.edge.b] : [link.edge.b, link.edge.a]
    const way = Math.round(Math.atan2(b.y - a.y, b.x - a.x) * 1e4)
    const off = Math.round(((b.x - a.x) * a.y - (b.y - a.y) * a.x) / length / 0.05)
    const key = `${link.joint} ${way} ${off}`
    if (!known.has(key)) known.set(key, link)
  }
  return [...known.values()]
}

function splitAt(cells: readonly Cell[], line: Edge<'panel'>, over: number): Split | null {
  const one: Cell[] = []
  const other: Cell[] = []
  for (const cell of cells) {
    const depths = cell.face.ring.map((p) => depthBehind(line, p))
    const [least, most] = [Math.min(...depths), Math.max(...depths)]
    if (least < -over && most > over) return null
    if (most > over) one.push(cell)
    else other.push(cell)
  }
  return one.length > 0 && other.length > 0 ? { one, other, straight: true } : null
}

/** The smallest piece whose going leaves the others in one group is fitted last. */
function lastFitted(cells: readonly Cell[], links: readonly Link[]): Split {
  const bySize = [...cells].sort((p, q) => areaOf(p) - areaOf(q) || q.rank - p.rank)
  const last =
    bySize.find((cell) =>
      isConnected(
        cells.filter((one) => one !== cell),
        links,
      ),
    ) ?? present(bySize[0], 'no pieces')
  return { one: cells.filter((cell) => cell !== last), other: [last], straight: false }
}

const areaOf = (cell: Cell): number => Math.round(polygonArea([cell.face.ring]))

function isConnected(cells: readonly Cell[], links: readonly Link[]): boolean {
  const ids = idsOf(cells)
  const inside = within(links, ids)
  const reached = new Set<CellId>([present(cells[0], 'no pieces').id])
  for (let before = 0; before < reached.size;) {
    before = reached.size
    for (const {
      cells: [p, q],
    } of inside) {
      if (reached.has(p)) reached.add(q)
      if (reached.has(q)) reached.add(p)
    }
  }
  return reached.size === ids.size
}
