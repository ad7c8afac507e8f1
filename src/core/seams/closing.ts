/**
 * Closing a sunburst: what it does to the last joint that every wedge is wrong by the same angle, and what truing the two
 * halves takes off.
 *
 * Input: `count` wedges, each wrong by `error` radians (full is positive), seen at `radius`. Output: mm. The halves turn
 * about the centre, so the lengths are chords and sines, exact for a wrong sum of up to half a turn. Failure: an odd
 * count has no joint straight across; its `truing` is null.
 */
export interface Closing {
  /** Between the first edge and the last, once the others are joined. */
  readonly state: 'closes' | 'overlaps' | 'gapes'
  /** How wide it opens, or overlaps, at the radius. */
  readonly opening: number
  /**
   * What comes off each half edge at the radius to make both halves straight: on an overlap the edge loses it at the rim
   * and nothing at the centre; on a gap at the centre, where the whole strip is lost, and the centre with it.
   */
  readonly truing: number | null
}

/**
 * What wedges that are all cut full leave to plane off along the last seam of each half: the sum of what its wedges are
 * full. null for an odd count, which has no halves.
 */
export interface LeftToPlane {
  /** By how much a half is wider than straight; radians. */
  readonly over: number
  /** What comes off at the radius: of each half edge if both are planed alike, and in all. */
  readonly each: number
  readonly inAll: number
}

export function leftToPlane({ count, radius }: Sunburst, full: number): LeftToPlane | null {
  if (count % 2 !== 0) return null
  const over = (count / 2) * full
  return { over, each: radius * Math.sin(over / 2), inAll: radius * Math.sin(over) }
}

/** By how much wedges are commonly cut full, so that the halves can be trued without losing the centre; degrees. */
export const CUT_FULL_DEGREES = { least: 0.05, most: 0.1 } as const

export interface Sunburst {
  readonly count: number
  readonly radius: number
}

export function closing({ count, radius }: Sunburst, error: number): Closing {
  const wrong = Math.abs(count * error)
  return {
    state: wrong < 1e-9 ? 'closes' : error > 0 ? 'overlaps' : 'gapes',
    opening: 2 * radius * Math.sin(wrong / 2),
    truing: count % 2 === 0 ? radius * Math.sin(wrong / 4) : null,
  }
}
