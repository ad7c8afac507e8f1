/**
 * [X4] A scarfed rectangle made by boolean operations is the one of the formulas: its widest rectangle of the scarfed
 * length agrees to 0.02 mm, nothing wider fits, and no wood is lost or found but what was trued off.
 * [X5] The seam lies wholly on the trued faces, in one line, and both halves keep their side and their size.
 *
 * Sources: the polygon operations of this program for the pieces, Clipper2 (C++ compiled to WebAssembly) for the areas
 * of the halves joined. LEAFTURN_CASES sets how many scarfs are made.
 */
import { expect, it } from 'vitest'
import { regionLess } from '../../src/core/geometry/clip'
import { toGridPolygons } from '../../src/core/geometry/clip-grid'
import { point } from '../../src/core/geometry/point'
import { polygonArea, transformRegion, type Region } from '../../src/core/geometry/polygon'
import { edgeLength } from '../../src/core/geometry/segment'
import { GRID } from '../../src/core/geometry/tolerance'
import { determinant } from '../../src/core/geometry/transform'
import type { FlitchId } from '../../src/core/ids'
import { alongCut, flattestSlope, scarfedSize } from '../../src/core/scarf/extension'
import type { SlantedCut } from '../../src/core/job/make-up'
import { scarfedPiece } from '../../src/core/scarf/piece'
import { regionEdges, widestRectangle } from '../../src/core/scarf/strip'
import { clipperArea } from '../fixtures/geometry/oracles'
import { box, chanceFrom, spread, type Chance } from '../fixtures/geometry/shapes'

const CASES = Number(process.env.LEAFTURN_CASES ?? 1000)
const STEP = 1e6 // square grid steps in a square millimetre
const leaf = { flitch: 'walnut' as FlitchId, leaf: 1 }

function randomScarf(chance: Chance) {
  const sound = { width: spread(chance, 60, 400), length: spread(chance, 500, 3000) }
  const loss = chance() < 0.2 ? 0 : spread(chance, 0.2, 3)
  const flattest = flattestSlope(sound, loss)
  const slope = chance() < 0.2 ? flattest : spread(chance, flattest, flattest * 3)
  const gain = spread(chance, 5, Math.min(0.6 * sound.length, (0.8 * sound.width) / slope))
  // the row where the marked line crosses the middle of the leaf lets it run from edge to edge
  const room = Math.max(0, sound.length - sound.width / slope)
  const middle = sound.length / 2 + spread(chance, -0.5, 0.5) * room
  const runs = chance() < 0.5 ? ('right' as const) : ('left' as const)
  const cut: SlantedCut = { slope, gain, loss, runs, through: point(sound.width / 2, middle) }
  return { sound, cut }
}

it(`[X4] [X5] ${CASES} random scarfs agree with boolean operations`, { timeout: 120_000 }, () => {
  const chance = chanceFrom(48)
  const wrong: string[] = []
  let made = 0
  for (let n = 0; n < CASES; n++) {
    const { sound, cut } = randomScarf(chance)
    const region: Region<'leaf'> = [[box(0, 0, sound.width, sound.length)]]
    const size = scarfedSize(sound, cut)
    if (size.width < 5) continue
    made++
    const piece = scarfedPiece(leaf, region, cut)
    const label = `${n}: ${JSON.stringify({ sound, cut })}`
    if (!piece) {
      wrong.push(`${label} not made`)
      continue
    }
    const outline: Region<'window'> = [piece.outline]
    const left = cut.runs === 'right' ? sound.width - size.width : 0
    const expected: Region<'window'> = [[box(left, 0, left + size.width, size.length) as never]]
    const outside = regionLess(expected, outline).reduce((sum, polygon) => sum + polygonArea(polygon), 0)
    if (outside > 0.003 * size.length) wrong.push(`${label} lacks ${outside} mm² of its rectangle`)
    const strip = widestRectangle(regionEdges(outline), size.length - 0.002)
    const width = strip ? strip.box.max.x - strip.box.min.x : 0
    if (Math.abs(width - size.width) > 0.02) wrong.push(`${label} is ${width} wide, not ${size.width}`)
    if (strip && strip.bound > size.width + 0.03) wrong.push(`${label} is bounded by ${strip.bound} only`)

    const halves = piece.parts.map((part) => transformRegion(part.leafToPiece, [part.outline]))
    const joined = clipperArea('union', toGridPolygons(halves[0]!), toGridPolygons(halves[1]!)) / STEP
    const trued =
      cut.loss > 0 ? clipperArea('intersection', toGridPolygons(region), toGridPolygons(band(cut))) / STEP : 0
    const area = sound.width * sound.length - trued
    // snapping may move every edge by a grid step: the perimeters of both halves times the grid
    if (Math.abs(joined - area) > 4 * sound.length * GRID) wrong.push(`${label} has ${joined} mm², not ${area}`)
    if (Math.abs(polygonArea(piece.outline) - joined) > 0.01 * alongCut(cut.slope) * sound.length)
      wrong.push(`${label} outline and halves differ`)
    if (piece.parts.some(({ leafToPiece }) => determinant(leafToPiece) !== 1)) wrong.push(`${label} turned`)
    if (piece.seams.length !== 1) wrong.push(`${label} has ${piece.seams.length} seams`)
    const seam = piece.seams[0] ? edgeLength(piece.seams[0]) : 0
    if (Math.abs(seam - expectedSeam(sound, cut)) > 0.05) wrong.push(`${label} has a seam of ${seam}`)
  }
  expect(wrong.slice(0, 5)).toEqual([])
  expect(made).toBeGreaterThan(0.8 * CASES)
})

/** What is trued off: a strip along the marked line, longer than the leaf. */
function band({ through, slope, loss, runs }: SlantedCut): Region<'leaf'> {
  const across = loss * alongCut(slope)
  const at = (y: number, by: number) =>
    point<'leaf'>(through.x + (runs === 'right' ? 1 : -1) * slope * (y - through.y) + by, y)
  return [[[at(-500, -across), at(-500, across), at(6000, across), at(6000, -across)]]]
}

/** By hand: both faces cross the whole width, which the step narrows; 1/slope of length to each millimetre of width. */
function expectedSeam(sound: { width: number }, cut: SlantedCut): number {
  const step = cut.slope * cut.gain + 2 * cut.loss * alongCut(cut.slope)
  return ((sound.width - step) / cut.slope) * alongCut(cut.slope)
}
