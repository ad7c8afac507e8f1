import type { Remedy } from '../finding'
import type { Side } from '../geometry/box'
import { regionArea } from '../geometry/polygon'
import type { Part } from '../job/job'
import type { Flitch } from '../leaves/flitch'
import type { LeafCount, Recipe } from '../patterns/recipe'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { layFace } from './lay-face'
import { WINDOW } from './window-group'

/**
 * Least changes that would let a face fit which does not, each tried on the real leaves: less overhang at one edge,
 * another leaf to start with, another count. Cheapest in wood first. Takes as long as laying the face some dozens of
 * times: for when someone asks.
 */
export function waysToFit(part: Part, flitch: Flitch, shop: Shop, answers: Answers): readonly Remedy[] {
  const free: Part = { ...part, positions: withoutWindow(part) }
  const fits = (changed: Part): boolean => {
    const face = layFace(changed, flitch, shop, answers)
    return regionArea(face.play.region) > 0 && face.bare < 0.01 && face.pieces.every(({ leaf }) => leaf !== null)
  }
  return [...lessOverhang(free, fits), ...otherStarts(free, flitch, fits), ...otherCounts(free, fits)]
}

const withoutWindow = ({ positions }: Part): Part['positions'] =>
  Object.fromEntries(Object.entries(positions).filter(([group]) => group !== WINDOW))

const SIDES: readonly Side[] = ['top', 'bottom', 'left', 'right']

/** For each edge the least that must go, to half a millimetre, where what it has is enough. */
function lessOverhang(part: Part, fits: (changed: Part) => boolean): readonly Remedy[] {
  const reduced = (side: Side, by: number): Part => ({
    ...part,
    overhang: { ...part.overhang, [side]: part.overhang[side] - by },
  })
  return SIDES.flatMap((side) => {
    const all = Math.floor(part.overhang[side] * 2)
    if (all < 1 || !fits(reduced(side, all / 2))) return []
    let [fails, works] = [0, all]
    while (works - fails > 1) {
      const middle = Math.floor((fails + works) / 2)
      if (fits(reduced(side, middle / 2))) works = middle
      else fails = middle
    }
    return [{ remedy: 'less overhang', side, by: works / 2 } as const]
  })
}

/** The leaves nearest to the chosen first one from which the run fits, one on each side. */
function otherStarts(part: Part, flitch: Flitch, fits: (changed: Part) => boolean): readonly Remedy[] {
  const inUse = flitch.leaves.filter(({ state }) => state === 'in use').map(({ number }) => number)
  const at = Math.max(0, inUse.indexOf(part.recipe.firstLeaf))
  const starts = (numbers: readonly number[]) =>
    numbers.find((leaf) => fits({ ...part, chosen: {}, recipe: { ...part.recipe, firstLeaf: leaf } as Recipe }))
  const found = [starts(inUse.slice(at + 1)), starts(inUse.slice(0, at).reverse())]
  return found.flatMap((leaf) => (leaf === undefined ? [] : [{ remedy: 'start at leaf', leaf } as const]))
}

const MOST_MORE = 8

/** The next larger count that fits. */
function otherCounts(part: Part, fits: (changed: Part) => boolean): readonly Remedy[] {
  const { recipe } = part
  const now: LeafCount = recipe.count
  if (now === 'fewest') return []
  const more = Array.from({ length: MOST_MORE }, (_, i) => now + i + 1)
  const allowed = more.filter((count) => !needsEven(recipe) || count % 2 === 0)
  const count = allowed.find((n) => fits({ ...part, recipe: { ...recipe, count: n } as Recipe }))
  return count === undefined ? [] : [{ remedy: 'count', count }]
}

const needsEven = (recipe: Recipe): boolean =>
  recipe.pattern !== 'strips' || recipe.arrangement === 'centre balance' || recipe.centreOn === 'seam'
