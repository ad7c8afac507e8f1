/**
 * What of a ring lies on the inner side of a line.
 *
 * Input: a simple ring running positively, convex or not, with a tag for each edge; a line with the inside clockwise of
 * its direction. Output: the parts that are left, each a ring with its tags, the edges along the line given a tag of
 * their own. Points nearer to the line than half the grid lie on it. Tolerance: floating-point steps; points nearer than
 * half the grid become one. Failure: none; nothing left is an empty list.
 */
import { depthBehind } from '../geometry/convex'
import { between, distance, dot, subtract, type Point, type Space } from '../geometry/point'
import { signedArea, type Edge, type Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'

interface Tagged<S extends Space, T> {
  readonly ring: Ring<S>
  readonly tags: readonly T[]
}

/** A stretch of the ring inside: it comes in over the line at its first point and goes out at its last. */
interface Chain<S extends Space, T> {
  readonly points: Point<S>[]
  /** One less than points: that of the edge along the line is not among them. */
  readonly tags: T[]
}

export function cutOff<S extends Space, T>(
  { ring, tags }: Tagged<S, T>,
  edge: Edge<S>,
  tag: T,
): readonly Tagged<S, T>[] {
  const depths = ring.map((p) => {
    const depth = depthBehind(edge, p)
    return Math.abs(depth) < GRID / 2 ? 0 : depth
  })
  if (depths.every((depth) => depth <= 0)) return []
  if (depths.every((depth) => depth >= 0)) return [{ ring, tags: alongLine(tags, depths, tag) }]
  const chains = chainsInside({ ring, tags }, depths, tag)
  return joined(chains, edge, tag).flatMap((part) => {
    const kept = tidied(part)
    return kept && signedArea(kept.ring) > GRID * GRID ? [kept] : []
  })
}

/** An edge that lies on the line is an edge along it. */
const alongLine = <T>(tags: readonly T[], depths: readonly number[], tag: T): readonly T[] =>
  tags.map((own, i) => (depths[i] === 0 && depths[(i + 1) % depths.length] === 0 ? tag : own))

function chainsInside<S extends Space, T>(
  { ring, tags }: Tagged<S, T>,
  depths: readonly number[],
  tag: T,
): readonly Chain<S, T>[] {
  const owned = alongLine(tags, depths, tag)
  const count = ring.length
  const start = depths.findIndex((depth, i) => depth >= 0 && depths[(i + count - 1) % count]! < 0)
  const chains: Chain<S, T>[] = []
  for (let step = 0; step < count; step++) {
    const i = (start + step) % count
    const [before, after] = [(i + count - 1) % count, (i + 1) % count]
    if (depths[i]! < 0) continue
    if (depths[before]! < 0) {
      const chain: Chain<S, T> = { points: [], tags: [] }
      if (depths[i]! > 0) {
        chain.points.push(crossing(ring[before]!, ring[i]!, depths[before]!, depths[i]!))
        chain.tags.push(owned[before]!)
      }
      chains.push(chain)
    }
    const chain = chains[chains.length - 1]!
    chain.points.push(ring[i]!)
    if (depths[after]! >= 0) chain.tags.push(owned[i]!)
    else if (depths[i]! > 0) {
      chain.tags.push(owned[i]!)
      chain.points.push(crossing(ring[i]!, ring[after]!, depths[i]!, depths[after]!))
    }
  }
  return chains
}

const crossing = <S extends Space>(p: Point<S>, q: Point<S>, here: number, there: number): Point<S> =>
  between(p, q, here / (here - there))

/**
 * Along the line the ends of the chains bound, two by two, what lies inside: a chain that goes out at one of them comes
 * in again at the other.
 */
function joined<S extends Space, T>(chains: readonly Chain<S, T>[], edge: Edge<S>, tag: T): readonly Tagged<S, T>[] {
  const along = subtract(edge.b, edge.a)
  const ends = chains.flatMap((chain, i) => [
    { chain: i, goesOut: false, at: dot(chain.points[0]!, along) },
    { chain: i, goesOut: true, at: dot(chain.points[chain.points.length - 1]!, along) },
  ])
  ends.sort((p, q) => p.at - q.at)
  const next = new Map<number, number>()
  for (let i = 0; i + 1 < ends.length; i += 2) {
    const [p, q] = [ends[i]!, ends[i + 1]!]
    next.set(p.goesOut ? p.chain : q.chain, p.goesOut ? q.chain : p.chain)
  }
  const seen = new Set<number>()
  return chains.flatMap((_, first) => {
    if (seen.has(first)) return []
    const [ring, tags]: [Point<S>[], T[]] = [[], []]
    for (let i: number | undefined = first; i !== undefined && !seen.has(i); i = next.get(i)) {
      seen.add(i)
      ring.push(...chains[i]!.points)
      tags.push(...chains[i]!.tags, tag)
    }
    return [{ ring, tags }]
  })
}

/** Without points that repeat; the edge that had no length goes. */
function tidied<S extends Space, T>({ ring, tags }: Tagged<S, T>): Tagged<S, T> | null {
  const stays = ring.map((p, i) => distance(p, ring[(i + 1) % ring.length]!) > GRID / 2)
  const points = ring.filter((_, i) => stays[i])
  return points.length < 3 ? null : { ring: points, tags: tags.filter((_, i) => stays[i]) }
}
