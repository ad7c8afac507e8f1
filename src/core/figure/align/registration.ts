import { boxAround, type Box } from '../../geometry/box'
import { add, point, subtract, type Point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import { leafOutline, placeInSequence } from '../../leaves/bundle'
import type { Cut, Flitch } from '../../leaves/flitch'
import { edgeDrift } from './edge-drift'
import { evenGrowth } from './even-growth'
import type { FoundShift } from './find-shift'

/** One leaf as it is looked at for its drift, against the one before it. */
export interface DriftLook {
  readonly leaf: number
  readonly outline: Ring<'leaf'>
  /** What of it is looked at: one size for all leaves, moved along with the drift that the leaf has already. */
  readonly box: Box<'leaf'>
  readonly drift: Point<'leaf'>
  /** Its place in the log, counted in leaves from the first, those that are missing counted too. */
  readonly place: number
}

/** The leaves of a flitch that have a picture, in sequence. */
export function driftLooks(flitch: Flitch, hasPicture: (leaf: number) => boolean): readonly DriftLook[] {
  const pictured = flitch.leaves.filter(({ number }) => hasPicture(number))
  const all = boxAround(pictured.flatMap((leaf) => leafOutline(flitch, leaf).map((p) => subtract(p, leaf.drift))))
  return pictured.map((leaf) => ({
    leaf: leaf.number,
    outline: leafOutline(flitch, leaf),
    box: { min: add(all.min, leaf.drift), max: add(all.max, leaf.drift) },
    drift: leaf.drift,
    place: placeInSequence(flitch, leaf.number),
  }))
}

/**
 * Two ways to read a shift of figure. `log`: what grows evenly from leaf to leaf is the figure's own wandering (a ring that
 * meets the leaf at angle b moves by thickness / tan b) and is left out, so that drift says where a spot of the log lies.
 * `figure`: all of it counts, so that one position of a window shows the same figure on every leaf.
 */
export type DriftMeaning = 'log' | 'figure'

/** Crowns wander; where the rings stand on edge the figure stays about where it is in the log. */
export const figureWanders = (cut: Cut): boolean => cut !== 'quarter' && cut !== 'rift'

/** With fewer leaves what grows evenly can't be told from drift, unless wild edges tell it. */
export const LEAST_LEAVES = 5

/** What pictures say of the drift of their leaves. */
export interface Registration {
  readonly leaves: readonly { readonly leaf: number; readonly drift: Point<'leaf'> }[]
  /** By how much the figure wanders along from leaf to leaf, mm, the least and the most; null where nothing was found. */
  readonly wander: readonly [least: number, most: number] | null
  /** What told the figure's wandering from drift: the wild edges, or only that it grows evenly. */
  readonly by: 'edges' | 'even growth'
}

/**
 * The drift of leaves from what was found of each against the one before: `found[i]` for `looks[i + 1]`, of which the
 * candidate `chosen(i)` counts. The first leaf keeps the drift it has. Where nothing was found, or any shift along looks
 * the same, wild edges count, and without them the leaf is taken to lie as the one before it.
 */
export function registered(
  looks: readonly DriftLook[],
  found: readonly (FoundShift | null)[],
  meaning: DriftMeaning,
  chosen: (pair: number) => number = () => 0,
): Registration {
  const steps = looks.slice(1).map((_, i) => stepOf(found[i] ?? null, chosen(i)))
  const edges = looks.slice(1).map((look, i) => edgeStep(looks[i]!, look))
  const by = edges.length > 0 && edges.every((edge) => edge !== null) ? 'edges' : 'even growth'
  const known = (axis: 'x' | 'y') => (by === 'edges' ? edges.map((edge) => edge![axis]) : edges.map(() => 0))
  const wander = {
    x: wanderOf(
      looks,
      steps.map((step) => step?.across ?? null),
      known('x'),
    ),
    y: wanderOf(
      looks,
      steps.map((step) => step?.along ?? null),
      known('y'),
    ),
  }
  const own = (axis: 'x' | 'y', i: number) => (meaning === 'log' ? wander[axis][i + 1]! - wander[axis][i]! : 0)
  const drifts = [looks[0]?.drift ?? point<'leaf'>(0, 0)]
  for (const [i, step] of steps.entries()) {
    const edge = by === 'edges' ? edges[i]! : null
    const across = step ? step.across - own('x', i) : (edge?.x ?? 0)
    const along = step === null || step.along === null ? (edge?.y ?? 0) : step.along - own('y', i)
    drifts.push(add(drifts[i]!, point(across, along)))
  }
  const rates = looks.slice(1).map(({ place }, i) => (wander.y[i + 1]! - wander.y[i]!) / (place - looks[i]!.place))
  return {
    leaves: looks.map(({ leaf }, i) => ({ leaf, drift: rounded(drifts[i]!) })),
    wander: steps.some((step) => step !== null && step.along !== null)
      ? [Math.min(...rates), Math.max(...rates)]
      : null,
    by,
  }
}

/**
 * How far the figure has wandered by itself on each leaf since the first: a smooth curve through its steps added up, less
 * what is known of the leaves' own. An unknown step is taken to go on as the others do.
 */
function wanderOf(
  looks: readonly DriftLook[],
  steps: readonly (number | null)[],
  known: readonly number[],
): readonly number[] {
  const gap = (i: number) => looks[i + 1]!.place - looks[i]!.place
  const left = steps.map((step, i) => (step === null ? null : step - known[i]!))
  const rates = left.flatMap((step, i) => (step === null ? [] : [step / gap(i)])).sort((p, q) => p - q)
  const usual = rates[Math.floor(rates.length / 2)] ?? 0
  const sums = [0]
  for (const [i, step] of left.entries()) sums.push(sums[i]! + (step ?? usual * gap(i)))
  return evenGrowth(
    looks.map(({ place }) => place),
    sums,
  )
}

/** How far a leaf is shifted against the one before; `along: null` where any shift looks the same. */
function stepOf(found: FoundShift | null, chosen: number): { across: number; along: number | null } | null {
  const candidate = found?.candidates[chosen] ?? found?.candidates[0]
  if (!found || !candidate || found.trust === 'none') return null
  return { across: candidate.across, along: found.trust === 'any' ? null : candidate.along }
}

/** The same by the wild edges; searched about the drift that the leaves have already. */
function edgeStep(before: DriftLook, here: DriftLook): Point<'leaf'> | null {
  const [one, next] = [before, here].map(({ outline, drift }) => outline.map((p) => subtract(p, drift)))
  const shift = edgeDrift(one!, next!)
  return shift && add(shift, subtract(here.drift, before.drift))
}

/** To a tenth: pictures tell no more. */
const rounded = ({ x, y }: Point<'leaf'>): Point<'leaf'> => point(tenth(x), tenth(y))
const tenth = (value: number): number => Math.round(value * 10) / 10 + 0
