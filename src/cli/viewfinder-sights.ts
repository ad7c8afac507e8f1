import { greyOf } from '../core/figure/align/grey'
import { withinOutline } from '../core/figure/align/within-outline'
import { DEMO_FLITCH, DEMO_LOG } from '../core/figure/demo-flitch'
import { findLandmarks } from '../core/figure/landmarks/find-landmarks'
import { leafPixels } from '../core/figure/log/leaf-pixels'
import { makeLog, type Log } from '../core/figure/log/log'
import type { Flitch } from '../core/leaves/flitch'
import { flitchesOf, type LaidFace } from '../core/fit/lay-face'
import { plainName } from './file-names'
import { landmarkLooks, type LandmarkLook, type Sight, type Sights } from '../core/templates/viewfinder'

/** Pixels a millimetre. */
const SCALE = 1

/** Whether viewfinders of a part are asked for by name: landmarks take a second a leaf, so they are not found otherwise. */
export function wantsViewfinders(only: readonly string[], part: string, parts: readonly string[]): boolean {
  const words = only.map(plainName)
  const named = words.filter((word) => parts.includes(word))
  return words.some((word) => word.startsWith('viewfinder')) && (named.length === 0 || named.includes(part))
}

/**
 * What the viewfinders of a face show. Only the demonstration's simulated log can be painted here: of photographs, which
 * are not decoded without a browser, the cards have their middles and no landmarks.
 */
export function viewfinderSights(face: LaidFace): Sights {
  const isPainted = ({ id, leaves }: Flitch) => id === DEMO_FLITCH && !leaves.some(({ picture }) => picture)
  const painted = flitchesOf(face).find(isPainted)
  if (!painted) return new Map()
  const log = makeLog(DEMO_LOG)
  const looks = landmarkLooks(face).filter(({ flitch }) => flitch === painted.id)
  return new Map(looks.map((look) => [look.cell, sightOf(log, look)]))
}

function sightOf(log: Log, { leaf, box, window, outline, knots }: LandmarkLook): Sight {
  const wood = greyOf(leafPixels(log, leaf, { pxPerMm: SCALE, box }), SCALE, box.min)
  return { landmarks: findLandmarks(withinOutline(wood, outline), window, knots), picture: null }
}
