import { compose, identity, rotation, translation, type Transform } from '../../core/geometry/transform'

type Map = Transform<'panel', 'panel'>

/** What a `transform` attribute does, first thing named last done; an unknown word does nothing. */
export function svgTransform(text: string): Map {
  let all: Map = identity<'panel'>()
  for (const [, name, given] of text.matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const values = given!
      .trim()
      .split(/[\s,]+/)
      .map(Number)
    if (values.every(Number.isFinite)) all = compose(all, single(name!, values))
  }
  return all
}

function single(name: string, [p = 0, q, r, s, t, u]: readonly number[]): Map {
  const plain = identity<'panel'>()
  const turn = (p * Math.PI) / 180
  switch (name) {
    case 'matrix':
      return { ...plain, a: p, b: q ?? 0, c: r ?? 0, d: s ?? 1, e: t ?? 0, f: u ?? 0 }
    case 'translate':
      return translation(p, q ?? 0)
    case 'scale':
      return { ...plain, a: p, d: q ?? p }
    case 'rotate': {
      const [x, y] = [q ?? 0, r ?? 0]
      return compose(translation<'panel'>(x, y), compose(rotation<'panel'>(turn), translation<'panel'>(-x, -y)))
    }
    case 'skewX':
      return { ...plain, c: Math.tan(turn) }
    case 'skewY':
      return { ...plain, b: Math.tan(turn) }
    default:
      return plain
  }
}
