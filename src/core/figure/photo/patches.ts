/** What hangs together in a picture of two colours. */
export interface Patches {
  /** The patch that each pixel belongs to. */
  readonly of: Int32Array
  readonly count: number
  /** Pixels, and the box (inclusive), by patch. */
  readonly area: Int32Array
  readonly left: Int32Array
  readonly right: Int32Array
  readonly top: Int32Array
  readonly bottom: Int32Array
  /** A pixel on the left border of each patch. */
  readonly leftmost: Int32Array
}

/** The patches of equal colour, joined along edges. `of` is where the patch of each pixel comes to stand. */
export function findPatches(
  colours: Uint8Array,
  width: number,
  height: number,
  of: Int32Array = new Int32Array(width * height),
): Patches {
  const parents = joinedLabels(colours, width, height, of)
  const names = new Int32Array(parents.length).fill(-1)
  let count = 0
  for (let i = 0; i < of.length; i++) {
    const root = rootOf(parents, of[i]!)
    if (names[root] === -1) names[root] = count++
    of[i] = names[root]!
  }
  return measured(of, count, width)
}

/** Gives each pixel a label, and says which labels are of one patch. */
function joinedLabels(colours: Uint8Array, width: number, height: number, of: Int32Array): number[] {
  const parents: number[] = []
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = y * width + x
      const left = x > 0 && colours[at - 1] === colours[at] ? of[at - 1]! : -1
      const up = y > 0 && colours[at - width] === colours[at] ? of[at - width]! : -1
      if (left === -1 && up === -1) {
        of[at] = parents.length
        parents.push(parents.length)
        continue
      }
      of[at] = left === -1 ? up : left
      if (left === -1 || up === -1 || left === up) continue
      const a = rootOf(parents, left)
      const b = rootOf(parents, up)
      if (a !== b) parents[Math.max(a, b)] = Math.min(a, b)
    }
  return parents
}

function rootOf(parents: number[], label: number): number {
  let root = label
  while (parents[root] !== root) root = parents[root]!
  for (let at = label; at !== root;) {
    const next = parents[at]!
    parents[at] = root
    at = next
  }
  return root
}

function measured(of: Int32Array, count: number, width: number): Patches {
  const filled = (value: number) => new Int32Array(count).fill(value)
  const [area, left, right, top, bottom] = [filled(0), filled(width), filled(-1), filled(-1), filled(-1)]
  const leftmost = filled(-1)
  for (let from = 0, y = 0; from < of.length; from += width, y++)
    for (let x = 0; x < width; x++) {
      const patch = of[from + x]!
      area[patch]!++
      if (x < left[patch]!) {
        left[patch] = x
        leftmost[patch] = from + x
      }
      if (x > right[patch]!) right[patch] = x
      if (top[patch] === -1) top[patch] = y
      bottom[patch] = y
    }
  return { of, count, area, left, right, top, bottom, leftmost }
}
