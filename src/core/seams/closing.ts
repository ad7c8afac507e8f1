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

/** Wedges are cut full by this much, so that the halves can be trued without losing the centre; degrees. */
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
