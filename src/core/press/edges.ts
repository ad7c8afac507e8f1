import type { Edges, Side } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { EdgeWork } from './pressing'
import { practice } from './provenance'

/** What the edges do to the core; each edge measured from the finished panel, positive outside. */
export interface EdgeEffect {
  /** Where the bare board is cut before anything is glued to it. */
  readonly board: Edges
  /** Where the core goes into the press, lippings put on before counted in. */
  readonly pressed: Edges
  /** Where the faced panel is sawn after pressing, before what comes last. */
  readonly sawn: Edges
}

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

const forSides = (of: (side: Side) => number): Edges =>
  Object.fromEntries(SIDES.map((side) => [side, of(side)])) as Record<Side, number>

/** What makers leave to be sawn off after pressing at an edge that is not finished in the press. */
export const SAWN_AFTER = practice(6)

const ofThickness = (work: EdgeWork): number => (work.edge === 'bare' ? 0 : work.thickness)

/** Put on after the face, outside the sawn panel. */
const comesLast = (work: EdgeWork): boolean => work.edge === 'lipped after' || work.edge === 'edge veneer last'

/** Put on the core before the face, which covers it. */
const comesFirst = (work: EdgeWork): boolean => work.edge === 'lipped before' || work.edge === 'edge veneer first'

/** Where the faced panel is sawn at an edge, beyond the finished panel. */
const sawnEdge = (work: EdgeWork): number => (comesLast(work) ? -ofThickness(work) : 0)

/** What is sawn off an edge after pressing, given where its core goes into the press. */
export const edgeSpare = (work: EdgeWork, pressed: number): number => Math.max(0, pressed - sawnEdge(work))

/**
 * Where the core goes into the press at an edge, beyond the finished panel, when `spare` is to be sawn off afterwards.
 * An edge put on first must end up where the panel does, so no more can be sawn off it than it has to give: veneer is
 * too thin to be trued after pressing; a lipping is glued on up to half as thick again. One put on last leaves the core
 * as much smaller.
 */
export function pressedEdge(work: EdgeWork, spare: number): number {
  if (work.edge === 'edge veneer first') return 0
  if (work.edge === 'lipped before') return Math.min(spare, work.thickness / 2)
  return sawnEdge(work) + spare
}

/** What follows for the board and the saw from the work at the edges and the core as pressed. */
export function edgeEffect(edges: Readonly<Record<Side, EdgeWork>>, pressed: Edges): EdgeEffect {
  const sawn = forSides((side) => sawnEdge(edges[side]))
  const board = forSides((side) => (comesFirst(edges[side]) ? -ofThickness(edges[side]) : pressed[side]))
  return { board, pressed, sawn }
}

/** A panel's size with its edges moved. */
export const sizeWith = (panel: { width: number; length: number }, by: Edges): { width: number; length: number } => ({
  width: panel.width + by.left + by.right,
  length: panel.length + by.top + by.bottom,
})

/** How thick a lipping put on first must be before it is sawn true: its share of the finished edge and what comes off. */
export const lippingBefore = (
  work: Extract<EdgeWork, { edge: 'lipped before' }>,
  effect: EdgeEffect,
  side: Side,
): number => work.thickness + effect.pressed[side]

/** The core's size in a sentence; `core` is where it goes into the press. */
export function coreSentence(
  panel: { width: number; length: number },
  edges: Readonly<Record<Side, EdgeWork>>,
  core: Edges,
  unit: LengthUnit,
): string {
  const effect = edgeEffect(edges, core)
  const say = (by: Edges): string => {
    const size = sizeWith(panel, by)
    return `${showLength(size.width, unit, 'seam')} × ${showLength(size.length, unit, 'seam')}`
  }
  const pressed =
    say(effect.board) === say(effect.pressed)
      ? ''
      : ` With what is glued to its edges it goes into the press at ${say(effect.pressed)}.`
  const sawn =
    say(effect.sawn) === say({ top: 0, right: 0, bottom: 0, left: 0 })
      ? ''
      : ` After pressing saw it to ${say(effect.sawn)}; what comes on last makes it ${say({ top: 0, right: 0, bottom: 0, left: 0 })}.`
  return `Cut the board ${say(effect.board)}.${pressed}${sawn}`
}

/** The order of work at the edges: what is put on before the press, and what after. */
export function edgeOrder(edges: Readonly<Record<Side, EdgeWork>>): string[] {
  const names = (kind: EdgeWork['edge']): string =>
    SIDES.filter((side) => edges[side].edge === kind)
      .map((side) => NAMES[side])
      .join(', ')
  const step = (kind: EdgeWork['edge'], words: (at: string) => string): string[] =>
    names(kind) === '' ? [] : [words(names(kind))]
  return [
    ...step('edge veneer first', (at) => `Veneer the core’s edges (${at}) and flush them with both sides.`),
    ...step(
      'lipped before',
      (at) =>
        `Glue lippings to the core (${at}), let them dry through, and flush both sides: a lipping that shrinks later shows as a line in the face.`,
    ),
    'Press face and back.',
    'Saw to size from the centre seam.',
    ...step(
      'lipped after',
      (at) => `Glue lippings to the faced panel (${at}) and flush them without sanding through the face.`,
    ),
    ...step(
      'edge veneer last',
      (at) => `Veneer the edges (${at}) with strips from the same leaves, so that the face’s edge is covered.`,
    ),
  ]
}

const NAMES: Readonly<Record<Side, string>> = {
  top: 'upper end',
  right: 'right side',
  bottom: 'lower end',
  left: 'left side',
}

/** Strips of edge veneer: how wide each is cut, how many leaves-widths they take. */
export interface EdgeStrips {
  readonly count: number
  /** As cut: the edge's thickness and a margin on both sides. */
  readonly width: number
  readonly lengths: readonly number[]
  /** Strips side by side out of one usable width. */
  readonly perLeaf: number
  readonly leaves: number
}

export const STRIP_MARGIN = practice(3)

/**
 * Strips for the edges that are veneered, from leaves of this usable width and length; a strip longer than the leaf is
 * pieced from several. Null when a strip is wider than a leaf or no edge is veneered.
 */
export function edgeStrips(
  panel: { width: number; length: number; thickness: number },
  edges: Readonly<Record<Side, EdgeWork>>,
  leaf: { width: number; length: number },
): EdgeStrips | null {
  const width = panel.thickness + 2 * STRIP_MARGIN.value
  const perLeaf = Math.floor(leaf.width / width + 1e-9)
  const lengths = SIDES.filter((side) => edges[side].edge.startsWith('edge veneer')).map(
    (side) => (side === 'top' || side === 'bottom' ? panel.width : panel.length) + 2 * STRIP_MARGIN.value,
  )
  if (lengths.length === 0 || perLeaf === 0) return null
  const count = lengths.reduce((sum, length) => sum + Math.ceil(length / leaf.length - 1e-9), 0)
  return { count, width, lengths, perLeaf, leaves: Math.ceil(count / perLeaf) }
}

/** Whether veneer goes on any edge. */
export const hasEdgeVeneer = (edges: Readonly<Record<Side, EdgeWork>>): boolean =>
  SIDES.some((side) => edges[side].edge.startsWith('edge veneer'))

export const LEAF_TOO_NARROW =
  'A leaf is too narrow for a strip as wide as the edge is thick: take the edges from another leaf.'

/** How many strips are cut from the same leaves, and how many leaves they take. */
export function stripSentence({ count, width, lengths, perLeaf, leaves }: EdgeStrips, unit: LengthUnit): string {
  const strips = count === 1 ? 'One strip' : `${count} strips`
  const pieced = count > lengths.length ? ', the long ones pieced' : ''
  const from = leaves === 1 ? 'one leaf is enough' : `${leaves} leaves are needed`
  return `${strips} for the edges from the same leaves, ${showLength(width, unit, 'seam')} wide${pieced}: ${perLeaf} lie side by side on a leaf, ${from}. Cut them from what is left over, before it is thrown away.`
}
