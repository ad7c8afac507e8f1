import { panelRing, type Corner, type PanelOutline } from '../../core/geometry/panel-outline'
import { point, type Point } from '../../core/geometry/point'
import type { Part } from '../../core/job/job'
import { ok, refused, type Result } from '../../core/result'
import { lengthSentence } from '../../core/units/length-sentence'
import { readLength } from '../../core/units/read-length'
import { bareLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'

export const OUTLINES: readonly { readonly value: PanelOutline['shape']; readonly name: string }[] = [
  { value: 'rectangle', name: 'a rectangle' },
  { value: 'circle', name: 'a circle' },
  { value: 'ellipse', name: 'an ellipse' },
  { value: 'polygon', name: 'a regular polygon' },
  { value: 'arch top', name: 'an arch top' },
  { value: 'drawn', name: 'a drawn shape' },
]

/** A first outline of a shape, for the size that the part has. */
export function firstOutline(shape: PanelOutline['shape'], { width, length, outline }: Part): PanelOutline {
  switch (shape) {
    case 'polygon':
      return { shape, sides: 8 }
    case 'arch top':
      return { shape, rise: Math.round(Math.min(width / 5, length / 2)) }
    case 'drawn':
      return { shape, corners: startCorners(outline, width, length) }
    default:
      return { shape }
  }
}

/** The corners that one goes on from: those of a straight outline, else of the rectangle. */
function startCorners(outline: PanelOutline, width: number, length: number): readonly Corner[] {
  const straight = outline.shape === 'polygon' ? panelRing(outline, { width, length }, NONE) : null
  const [x, y] = [width / 2, length / 2]
  const ring = straight?.ring ?? [point(-x, -y), point(x, -y), point(x, y), point(-x, y)]
  return ring.map((at) => ({ at, bulge: 0 }))
}

const NONE = { top: 0, right: 0, bottom: 0, left: 0 }

/** Corners as they are typed: a line each, across and along from the middle of the panel, and the bulge if there is one. */
export const cornerLines = (corners: readonly Corner[], unit: LengthUnit): string =>
  corners
    .map(({ at, bulge }) => {
      const place = [at.x, at.y].map((mm) => bareLength(mm, unit, 'exact').replace('≈ ', '')).join('; ')
      return bulge === 0 ? place : `${place}; ${Math.round(bulge * 1e6) / 1e6}`
    })
    .join('\n')

/** Corners from such lines, or what is wrong with the first that can't be read. */
export function readCorners(text: string, unit: LengthUnit): Result<readonly Corner[], string> {
  const corners: Corner[] = []
  const lines = text.split('\n').filter((line) => line.trim() !== '')
  for (const [i, line] of lines.entries()) {
    const fields = line.split(/\s*[;\t]\s*|,\s+/)
    const name = `Corner ${i + 1}`
    if (fields.length !== 2 && fields.length !== 3)
      return refused(`${name}: “${line.trim()}” should be two lengths with a semicolon between them.`)
    const places: number[] = []
    for (const field of fields.slice(0, 2)) {
      const read = readLength(field, unit, { negative: true })
      if (!read.ok) return refused(lengthSentence(read.reason, { name, unit }))
      places.push(read.value)
    }
    const bulge = fields[2] === undefined ? 0 : Number(fields[2].replace(',', '.').replace('−', '-'))
    if (!Number.isFinite(bulge)) return refused(`${name}: “${fields[2]}” is not a number for the bulge.`)
    corners.push({ at: point(places[0]!, places[1]!), bulge })
  }
  return corners.length < 2 ? refused('An outline has at least 3 corners, each on a line of its own.') : ok(corners)
}

/** A ring as the `points` of a polygon. */
export const ringPoints = (ring: readonly Point<'panel'>[]): string => ring.map(({ x, y }) => `${x},${y}`).join(' ')
