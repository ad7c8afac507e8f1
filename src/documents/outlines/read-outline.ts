import type { Corner } from '../../core/geometry/panel-outline'
import { MOST_POINTS } from '../../core/job/limits'
import { ok, refused, type Result } from '../../core/result'
import { shapesInDxf } from './read-dxf'
import { shapesInSvg } from './read-svg'
import { shapeArea, type FoundShapes } from './shape'

/** The outline taken from a file, and what is to be said about it. */
export interface ReadOutline {
  readonly corners: readonly Corner[]
  /** How many closed shapes the file has; the largest is taken. */
  readonly shapes: number
  /** How its lengths were read, in words. */
  readonly unit: string
}

/** Longer texts are drawings of houses, not of a panel. */
const LONGEST = 8_000_000

/** The largest closed shape of an SVG or DXF file, told apart by the name; else why there is none, in a sentence. */
export function readOutline(name: string, text: string): Result<ReadOutline, string> {
  const kind = name.toLowerCase().split('.').pop()
  if (kind !== 'svg' && kind !== 'dxf') return refused(`${name} is not an SVG or DXF file.`)
  if (text.length > LONGEST) return refused(`${name} is too large: 8 million characters are the most.`)
  let found: FoundShapes
  try {
    found = kind === 'svg' ? shapesInSvg(text) : shapesInDxf(text)
  } catch {
    return refused(
      `${name} can’t be read as ${kind === 'svg' ? 'an SVG' : 'a DXF'} file. Save it again from the program that drew it.`,
    )
  }
  return largestOf(name, found)
}

function largestOf(name: string, { shapes, unit, open }: FoundShapes): Result<ReadOutline, string> {
  const sized = shapes.map((corners) => ({ corners, area: shapeArea(corners) })).filter(({ area }) => area > 1)
  const [largest] = sized.sort((p, q) => q.area - p.area)
  if (!largest) {
    const lines = open === 0 ? '' : ` It has ${open} ${open === 1 ? 'line that does' : 'lines that do'} not close.`
    return refused(`${name} has no closed shape.${lines} Close the outline in the program that drew it.`)
  }
  if (largest.corners.length > MOST_POINTS)
    return refused(`${name} has an outline of ${largest.corners.length} corners; ${MOST_POINTS} are the most.`)
  return ok({ corners: largest.corners, shapes: sized.length, unit })
}
