import { MM_PER, type LengthUnit } from './unit'

/**
 * How finely a length is shown: a place on a leaf to 1 mm or 1/32 in; a seam or a trim to 0.5 mm or 1/64; a whole
 * size, such as a board's, to 1 mm or 1/16; how deep in the log, where a leaf is a few tenths thick, to 0.1 mm or 0.001
 * in, in decimals; exactly (what a field holds) to 0.01 mm, or as a fraction down to 1/64
 * where that is true within 0.01 mm and as decimal inches where not.
 */
export type Grain = 'place' | 'seam' | 'whole' | 'depth' | 'exact'

/** A shown length in its pieces, for a page that sets the fraction in a way of its own. */
export interface LengthPieces {
  /** Whether the fraction is off by more than 0.01 mm. */
  readonly about: boolean
  readonly minus: boolean
  /** '' where only a fraction is left. */
  readonly whole: string
  /** Reduced, as `3/8`; '' when there is none. */
  readonly fraction: string
  readonly unit: LengthUnit
}

const MM_STEP: Readonly<Record<Grain, number>> = { place: 1, seam: 0.5, whole: 1, depth: 0.1, exact: 0.01 }
const PARTS_OF_INCH: Readonly<Record<Exclude<Grain, 'depth'>, number>> = { place: 32, seam: 64, whole: 16, exact: 64 }

/** A fraction farther from the truth than this is marked with ≈; mm. */
const TRUE_WITHIN = 0.01

/** The pieces of a length given in mm. */
export function lengthPieces(length: number, unit: LengthUnit, grain: Grain): LengthPieces {
  const size = Math.abs(length)
  const shown = unit === 'mm' ? metric(size, grain) : inches(size, grain)
  const isZero = shown.whole === '0' && shown.fraction === ''
  return { ...shown, minus: length < 0 && !isZero, unit }
}

/** A length in mm as people read it: `442 mm`, `17 3/8 in`, `≈ 17 3/8 in`, `−0.5 mm`. */
export function showLength(length: number, unit: LengthUnit, grain: Grain): string {
  return `${bareLength(length, unit, grain)} ${unit}`
}

/** The same without the unit's name, for a table whose head names it. */
export function bareLength(length: number, unit: LengthUnit, grain: Grain): string {
  const { about, minus, whole, fraction } = lengthPieces(length, unit, grain)
  const number = [whole, fraction].filter((piece) => piece !== '').join(' ')
  return `${about ? '≈ ' : ''}${minus ? '−' : ''}${number}`
}

/** A bow as an upper bound: `about ½ mm at most`, `about 1/32 in at most`. The sign does not matter. */
export function showWarp(length: number, unit: LengthUnit): string {
  const step = unit === 'mm' ? 0.5 : MM_PER.in / 32
  // a sum that ends a hair above a step is not one step more
  const steps = Math.max(1, Math.ceil(Math.abs(length) / step - 1e-6))
  if (length === 0) return `0 ${unit}`
  if (unit === 'in') return `about ${fractionOf(steps, 32).join(' ').trim()} in at most`
  const whole = Math.floor(steps / 2)
  return `about ${whole === 0 ? '' : whole}${steps % 2 === 1 ? '½' : ''} mm at most`
}

type Shown = Pick<LengthPieces, 'about' | 'whole' | 'fraction'>

function metric(size: number, grain: Grain): Shown {
  const step = MM_STEP[grain]
  return { about: false, whole: decimalText(Math.round(size / step + 1e-9) * step, 2), fraction: '' }
}

function inches(size: number, grain: Grain): Shown {
  if (grain === 'depth') return { about: false, whole: decimalText(size / MM_PER.in, 3), fraction: '' }
  const parts = PARTS_OF_INCH[grain]
  const steps = Math.round((size / MM_PER.in) * parts + 1e-9)
  const about = Math.abs((steps / parts) * MM_PER.in - size) > TRUE_WITHIN
  if (about && grain === 'exact') return { about: false, whole: decimalText(size / MM_PER.in, 4), fraction: '' }
  const [whole, fraction] = fractionOf(steps, parts)
  return { about, whole, fraction }
}

/** `steps` parts of an inch as whole inches and a reduced fraction; `parts` is a power of two. */
function fractionOf(steps: number, parts: number): [whole: string, fraction: string] {
  const whole = Math.floor(steps / parts)
  let over = steps % parts
  let under = parts
  while (over > 0 && over % 2 === 0) {
    over /= 2
    under /= 2
  }
  return [whole === 0 && over > 0 ? '' : String(whole), over === 0 ? '' : `${over}/${under}`]
}

/** A number of at most `places` decimals, none of them a trailing nought. */
export const decimalText = (value: number, places: number): string => value.toFixed(places).replace(/\.?0+$/, '')
