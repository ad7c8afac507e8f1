import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { present } from '../invariant'
import { DEMO_DEFECTS, DEMO_OUTLINES } from './demo-leaves'
import type { LogOptions } from './log/log'

/** The name by which the demonstration flitch is known in a job. */
export const DEMO_FLITCH = 'demo-walnut'

/** The demonstration flitch's log: flat-cut walnut with its heart off the middle, one knot and one end split. */
export const DEMO_LOG: LogOptions = {
  seed: 4177,
  species: 'walnut',
  slicing: { cut: 'flat', firstDepth: 107.5 },
  leaves: 24,
  thickness: 0.6,
  trunk: {
    length: 2400,
    radius: 188,
    heart: { x: 24, y: -4 },
    lean: { x: 0.004, y: -0.006 },
    wander: 7,
    taper: 0.032,
    barkTaper: 3,
    bulge: 2,
  },
  knots: [{ across: -62, along: 1710, firstLeaf: 9, lastLeaf: 14, radius: 14, step: { across: 0.5, along: -1.6 } }],
  splits: [{ end: 'far', across: 48, firstLeaf: 5, lastLeaf: 7, length: 120 }],
}

/**
 * The demonstration flitch: 24 leaves of walnut, 2400 mm long and about 300 mm wide inside their sapwood. Its outlines
 * and defects were taken from `DEMO_LOG` beforehand, so that it is there at once; the leaves share one frame, so that
 * no leaf has drift.
 */
export function demoFlitch(): Flitch {
  return {
    id: DEMO_FLITCH,
    name: 'Walnut, 24 leaves',
    species: 'walnut (Juglans nigra)',
    cut: 'flat',
    figure: 'straight',
    upEnd: 'numbered',
    thickness: DEMO_LOG.thickness,
    lossBetween: 0,
    leafOneAt: 'top',
    numberedFace: 'upper',
    // leaf 1 was cut first, from outside: the face it shows is the one away from the knife
    numberedFaceIs: 'tight',
    outline: outline(present(DEMO_OUTLINES[0], 'the demonstration flitch has no leaf')),
    leaves: DEMO_OUTLINES.map((flat, i) => demoLeaf(i + 1, flat)),
    missing: [],
    sideMargin: 3,
    endMargin: 15,
  }
}

const demoLeaf = (number: number, flat: readonly number[]): Leaf => ({
  number,
  outline: outline(flat),
  defects: DEMO_DEFECTS[number] ?? [],
  state: 'in use',
  drift: point(0, 0),
  note: '',
  picture: null,
  cuts: [],
})

/** A ring out of x, y, x, y … */
function outline(flat: readonly number[]): Ring<'leaf'> {
  return Array.from({ length: flat.length / 2 }, (_, i) => point<'leaf'>(flat[2 * i]!, flat[2 * i + 1]!))
}
