import { showLength } from '../units/show-length'
import { MM_PER, type LengthUnit } from '../units/unit'
import { boardTolerance, type Tolerance } from './boards'
import type { Layer } from './pressing'

/** The thickness of a build-up: as the layers say, and the thinnest and thickest that their tolerances allow. */
export interface Thickness {
  readonly nominal: number
  readonly least: number
  readonly most: number
}

/** Boards vary as their makers allow; a leaf's thickness is taken as typed. */
export function totalThickness(layers: readonly Layer[]): Thickness {
  const off = layers.map(toleranceOf)
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
  const nominal = sum(layers.map(({ thickness }) => thickness))
  return {
    nominal,
    least: nominal - sum(off.map(({ under }) => under)),
    most: nominal + sum(off.map(({ over }) => over)),
  }
}

const toleranceOf = (layer: Layer): Tolerance =>
  layer.kind === 'board' ? boardTolerance(layer.board, layer.thickness) : { under: 0, over: 0 }

const PARTS = 64
/** mm: within the first it is the fraction, within the second a hair off; farther off is a shade. */
const SAME = 0.01
const HAIR = 0.1

/** `a hair over 7/16 in`, `a shade under 15/32 in`: a thickness beside the nearest 1/64 of an inch. */
export function besideFraction(thickness: number): string {
  const exact = (Math.max(1, Math.round((thickness / MM_PER.in) * PARTS)) / PARTS) * MM_PER.in
  const off = thickness - exact
  const name = showLength(exact, 'in', 'exact')
  if (Math.abs(off) <= SAME) return name
  return `${Math.abs(off) <= HAIR ? 'a hair' : 'a shade'} ${off > 0 ? 'over' : 'under'} ${name}`
}

/** What the sum comes to, against the thickness wanted. */
export function thicknessSentences(layers: readonly Layer[], wanted: number | null, unit: LengthUnit): string[] {
  const { nominal, least, most } = totalThickness(layers)
  const say = (length: number): string => showLength(length, unit, 'exact')
  const inch = unit === 'in' ? `, ${besideFraction(nominal)}` : ''
  const sum = `The layers add up to ${say(nominal)}${inch}.`
  const spread =
    most - least > 0.01
      ? [`With the boards as thin or thick as their makers allow: ${say(least)} to ${say(most)}.`]
      : []
  if (wanted === null) return [sum, ...spread]
  const off = nominal - wanted
  const verdict =
    Math.abs(off) <= 0.05
      ? `That is the ${say(wanted)} wanted.`
      : `That is ${say(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than the ${say(wanted)} wanted.`
  return [sum, verdict, ...spread]
}

/** One way to come to a thickness: how many boards, of what, and how many leaves of veneer in between and outside. */
export interface ThicknessSuggestion {
  readonly boards: readonly number[]
  readonly leaves: number
  readonly total: number
  /** Total less wanted. */
  readonly off: number
}

const MOST_BOARDS = 3
const MOST_INNER_LEAVES = 3

/**
 * Ways to come near a thickness with boards of these thicknesses, a face and a back of this leaf, and up to three more
 * leaves: one in the middle, or cross-bands in pairs. Best first; only symmetric build-ups, for one board or several
 * alike.
 */
export function thicknessSuggestions(wanted: number, boards: readonly number[], leaf: number): ThicknessSuggestion[] {
  const found = boards.flatMap((board) =>
    range(1, MOST_BOARDS).flatMap((count) =>
      range(0, MOST_INNER_LEAVES)
        // an odd leaf can only lie in the very middle, between two boards
        .filter((inner) => inner % 2 === 0 || count === 2)
        .map((inner): ThicknessSuggestion => {
          const total = count * board + (2 + inner) * leaf
          return { boards: new Array<number>(count).fill(board), leaves: 2 + inner, total, off: total - wanted }
        }),
    ),
  )
  return found.sort(
    (a, b) => Math.abs(a.off) - Math.abs(b.off) || a.boards.length - b.boards.length || a.leaves - b.leaves,
  )
}

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i)

/** A suggestion in words. */
export function suggestionSentence(
  { boards, leaves, total, off }: ThicknessSuggestion,
  leaf: number,
  unit: LengthUnit,
): string {
  const say = (length: number): string => showLength(length, unit, 'exact')
  const count = boards.length === 1 ? 'One board' : boards.length === 2 ? 'Two boards' : `${boards.length} boards`
  const between = leaves % 2 === 1 ? ', one of them between the boards' : ''
  const inch = unit === 'in' ? `, ${besideFraction(total)}` : ''
  const beside = Math.abs(off) <= 0.01 ? '' : `, ${say(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than wanted`
  return `${count} of ${say(boards[0] ?? 0)} and ${leaves} leaves of ${say(leaf)}${between}: ${say(total)}${inch}${beside}.`
}
