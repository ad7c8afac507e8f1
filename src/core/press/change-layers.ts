import type { Layer, Pressing } from './pressing'

/**
 * Layers added, taken away and moved. Glue lines made before are counted between the sheets, so they go along with the
 * sheets on both sides; a line between two sheets that are no neighbours any more was not made before.
 */
export function withLayer(pressing: Pressing, at: number, layer: Layer): Pressing {
  const place = Math.min(Math.max(at, 0), pressing.layers.length)
  return relaid(pressing, pressing.layers.toSpliced(place, 0, layer))
}

export const withoutLayer = (pressing: Pressing, nth: number): Pressing =>
  relaid(pressing, pressing.layers.toSpliced(nth, 1))

export function withLayerMoved(pressing: Pressing, nth: number, to: number): Pressing {
  const layer = pressing.layers[nth]
  const place = Math.min(Math.max(to, 0), pressing.layers.length - 1)
  if (!layer || place === nth) return pressing
  return relaid(pressing, pressing.layers.toSpliced(nth, 1).toSpliced(place, 0, layer))
}

/** Places tell layers apart: one and the same leaf may lie in front and behind. */
function relaid(pressing: Pressing, layers: readonly Layer[]): Pressing {
  const before = sheetsOf(pressing.layers)
  const after = sheetsOf(layers)
  const front = commonStart(before, after)
  const behind = commonEnd(before, after, front)
  const kept = pressing.gluedBefore.flatMap((line) => {
    if (line + 1 < front) return [line]
    if (line >= before.length - behind) return [line + after.length - before.length]
    return []
  })
  return { ...pressing, layers, gluedBefore: kept }
}

const sheetsOf = (layers: readonly Layer[]): readonly Layer[] => layers.filter(({ kind }) => kind !== 'glue line')

function commonStart(a: readonly Layer[], b: readonly Layer[]): number {
  const differs = a.findIndex((layer, i) => layer !== b[i])
  return differs === -1 ? Math.min(a.length, b.length) : differs
}

function commonEnd(a: readonly Layer[], b: readonly Layer[], front: number): number {
  const most = Math.min(a.length, b.length) - front
  for (let n = 0; n < most; n++) if (a[a.length - 1 - n] !== b[b.length - 1 - n]) return n
  return Math.max(0, most)
}
