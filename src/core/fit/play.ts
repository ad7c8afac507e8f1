import { boxAround, boxCentre, boxHeight } from '../geometry/box'
import { intersectAll } from '../geometry/clip'
import { innerFit, innerFitExact } from '../geometry/inner-fit'
import { movedSimple } from '../geometry/moved-simple'
import { farthestInside } from '../geometry/pole'
import { point, type Point } from '../geometry/point'
import { polygonArea, transformRegion, type Region, type Ring } from '../geometry/polygon'
import { EXACT_FIT } from '../geometry/tolerance'
import { translation } from '../geometry/transform'
import { withoutMemory, type Answers } from './answers'
import { onLeaf } from './placement'

/**
 * Input: for each piece of a run its rough window (a simple ring about the window's origin), the usable area of its leaf and
 * by how much this leaf's window is shifted against the others (drift + nudge). Output: every position of the window's
 * origin for which all rough pieces lie in their usable areas. Tolerance: the grid; a fit without any play is found to
 * `EXACT_FIT` and said to be exact. Failure: an empty region.
 */
export interface Fitting {
  readonly rough: Ring<'window'>
  readonly usable: Region<'leaf'>
  readonly shift: Point<'leaf'>
}

export interface Play {
  readonly region: Region<'leaf'>
  /** The pieces fit, but cannot be moved at all in some direction. */
  readonly exact: boolean
}

/** The intersection of the plays of all pieces. */
export function findPlay(groups: readonly Group[]): Play {
  let exact = false
  const { fits, failed } = inTurn(groups, ({ rough, usable }) => {
    const fit = innerFitExact(usable, atOrigin(rough))
    exact ||= fit.exact
    return fit.region
  })
  const roomy = failed ? [] : intersectAll(fits)
  const region = exact ? roomy : withoutDust(roomy)
  return region.length > 0 ? { region, exact } : playOfDrawnIn(firstOf(groups, failed))
}

/** More than the rounding of one step after the other can take off a fit. */
const BEYOND_ROUNDING = 0.05

/** Pieces that fit without any play have some when all are a hair smaller. */
function playOfDrawnIn(groups: readonly Group[]): Play {
  const fitsOf = (by: number) => inTurn(groups, ({ rough, usable }) => fitOf(drawnIn(rough, by), usable))
  // where even smaller pieces have nothing in common it is known at once
  if (fitsOf(EXACT_FIT + BEYOND_ROUNDING).failed) return { region: [], exact: false }
  const region = intersectAll(groups.map(({ rough, usable }) => fitOf(drawnIn(rough, EXACT_FIT), usable)))
  return { region, exact: region.length > 0 }
}

/**
 * The fits of some groups, and what they have in common, found one after the other up to the group that leaves nothing.
 * Each step rounds to the grid once more: in the end all fits are best put together anew, as a tree.
 */
function inTurn(groups: readonly Group[], fit: (group: Group) => Region<'leaf'>) {
  const fits: Region<'leaf'>[] = []
  let common: Region<'leaf'> = []
  for (const group of groups) {
    const own = fit(group)
    common = fits.length > 0 ? intersectAll([common, own]) : own
    if (common.length === 0) return { fits, common, failed: group }
    fits.push(own)
  }
  return { fits, common, failed: null }
}

/** Whoever left nothing most likely does again: when it is asked first the others need not be. */
const firstOf = (groups: readonly Group[], failed: Group | null): readonly Group[] =>
  failed ? [failed, ...groups.filter((other) => other !== failed)] : groups

// what is left where two plays only touch is no room to move; the exact search looks there again
const withoutDust = (region: Region<'leaf'>): Region<'leaf'> => region.filter((polygon) => polygonArea(polygon) > 1e-4)

/** Pieces of one shape need only be fitted once, on what their leaves have in common. */
export interface Group {
  readonly rough: Ring<'window'>
  readonly usable: Region<'leaf'>
}

/** The fittings gathered by the shape of their rough piece, each with the common usable area, shifts taken off. */
export function groupsOfEqualPieces(fittings: readonly Fitting[], answers: Answers = withoutMemory): readonly Group[] {
  const byShape = new Map<string, Fitting[]>()
  for (const fitting of fittings) {
    const shape = shapeOf(fitting.rough)
    byShape.set(shape, [...(byShape.get(shape) ?? []), fitting])
  }
  return [...byShape.values()].map((alike) => groupOf(alike, answers))
}

/** What the leaves have in common is found when it is first asked for: of pieces of which one has no place, mostly never. */
function groupOf(alike: readonly Fitting[], answers: Answers): Group {
  let found: Region<'leaf'> | null = null
  return {
    rough: alike[0]!.rough,
    get usable() {
      return (found ??= commonArea(alike, answers))
    },
  }
}

/** What the leaves have in common does not hang on the shape of the piece: remembered while only that changes. */
const commonArea = (fittings: readonly Fitting[], answers: Answers): Region<'leaf'> =>
  answers(
    'common area',
    fittings.flatMap(({ usable, shift }) => [usable, shift.x, shift.y]),
    () => inCommon(fittings.map(({ usable, shift }) => shifted(usable, shift))),
  )

/** What areas have in common: one by itself is as it is, and comes onto the grid when a piece is laid in it. */
export const inCommon = (areas: readonly Region<'leaf'>[]): Region<'leaf'> =>
  areas.length === 1 ? areas[0]! : intersectAll(areas)

const shifted = (usable: Region<'leaf'>, { x, y }: Point<'leaf'>): Region<'leaf'> =>
  x === 0 && y === 0 ? usable : transformRegion(translation<'leaf'>(-x, -y), usable)

/** A text equal for rings that are the same to a fraction of the grid, whatever point they start at. */
export function shapeOf(ring: Ring<'window'>): string {
  const points = ring.map(({ x, y }) => `${Math.round(x * 1e4)},${Math.round(y * 1e4)}`)
  const first = points.indexOf([...points].sort()[0]!)
  return [...points.slice(first), ...points.slice(0, first)].join(' ')
}

/** The piece with the window's origin at the leaf's. */
const atOrigin = (rough: Ring<'window'>): Ring<'leaf'> => onLeaf(rough, point(0, 0))

const fitOf = (rough: Ring<'window'>, usable: Region<'leaf'>): Region<'leaf'> => innerFit(usable, atOrigin(rough))

/** Where the window lies unless someone has put it elsewhere: as far as can be from every border of the play. */
export const firstPosition = (play: Play): Point<'leaf'> | null => farthestInside(play.region)?.at ?? null

/** The least by which all pieces would have to shrink on every edge to fit, and where they then would; null if the wood is too small for anything. */
export function leastShortfall(groups: readonly Group[]): { readonly by: number; readonly at: Point<'leaf'> } | null {
  let tightestFirst = groups
  const playAt = (by: number): Region<'leaf'> | null => {
    const { common, failed } = inTurn(tightestFirst, ({ rough, usable }) => fitOf(drawnIn(rough, by), usable))
    tightestFirst = firstOf(tightestFirst, failed)
    return failed ? null : common
  }
  let [fails, works] = [0, 1]
  while (!playAt(works)) {
    if (works > 4000) return null
    ;[fails, works] = [works, works * 2]
  }
  for (let i = 0; i < 14 && works - fails > 0.02; i++) {
    const middle = (fails + works) / 2
    if (playAt(middle)) works = middle
    else fails = middle
  }
  const at = farthestInside(playAt(works)!)?.at
  return at ? { by: works, at } : null
}

/** A piece with every edge drawn in; when that is more than half its width, its middle line goes on getting shorter. */
function drawnIn(rough: Ring<'window'>, by: number): Ring<'window'> {
  const smaller = movedSimple(
    rough,
    rough.map(() => -by),
  )
  if (smaller) return smaller
  const box = boxAround(rough)
  const { x, y } = boxCentre(box)
  const half = Math.max(0, boxHeight(box) / 2 - by)
  return half > 0 ? [point(x, y - half), point(x, y + half)] : [point(x, y)]
}
