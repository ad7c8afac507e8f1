import { makeLog, type Log, type LogOptions } from './log/log'

/** The demonstration flitch's log: flat-cut walnut with its heart off the middle, one knot and one end split. */
export const DEMO_LOG: LogOptions = {
  seed: 4177,
  species: 'walnut',
  slicing: { cut: 'flat', firstDepth: 107 },
  leaves: 24,
  thickness: 0.6,
  trunk: {
    length: 2400,
    radius: 190,
    heart: { x: 24, y: -4 },
    lean: { x: 0.004, y: -0.006 },
    wander: 7,
    taper: 0.032,
    barkTaper: 5,
    bulge: 2,
  },
  knots: [{ across: -62, along: 1710, firstLeaf: 9, lastLeaf: 14, radius: 14, step: { across: 0.5, along: -1.6 } }],
  splits: [{ end: 'far', across: 48, firstLeaf: 5, lastLeaf: 7, length: 120 }],
}

export const demoLog = (): Log => makeLog(DEMO_LOG)
