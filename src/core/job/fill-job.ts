import type { Ring } from '../geometry/polygon'
import type { Flitch } from '../leaves/flitch'
import type { Defect, Leaf } from '../leaves/leaf'
import { USUAL_BORDER, USUAL_STRING, type Border } from '../patterns/border'
import type { Recipe } from '../patterns/recipe'
import { ok, refused, type Result } from '../result'
import { USUAL_SHOP, type Shop } from '../shop'
import type { FlitchInFile, LeafInFile } from './flitch-shape'
import type { Job, Pair, Part } from './job'
import type { JobInFile } from './job-shape'
import { withOwnUnnamed } from './part-flitches'
import type { BorderInFile, PairInFile, PartInFile, RecipeInFile, ShopInFile } from './part-shape'
import { fittedPart } from './fitted-part'
import { fieldsTrouble } from './check-number'
import { LIMITS } from './limits'
import { fillPressing, fillPressRoom } from './fill-pressing'
import { given } from './given'
import { flitchInWords, inPlace, partInWords } from './place-words'
import type { JobTrouble } from './trouble'
import {
  blankLeaf,
  firstLeafOf,
  rectangle,
  USUAL_ALLOWANCE,
  usualFlitch,
  usualPair,
  usualPart,
  usualRecipe,
} from './usual'

/** The job that a file stands for, with the usual value for everything that it leaves out. */
export function fillJob(file: JobInFile): Result<Job, JobTrouble> {
  const flitches: Flitch[] = []
  for (const [i, given] of file.flitches.entries()) {
    const flitch = fillFlitch(given, i)
    if (!flitch.ok) return flitch
    flitches.push(flitch.value)
  }
  const parts: Part[] = []
  for (const [i, given] of file.parts.entries()) {
    const part = fillPart(given, i, flitches)
    if (!part.ok) return part
    parts.push(part.value)
  }
  return ok({
    name: file.name ?? '',
    unit: file.unit ?? 'mm',
    shop: fillShop(file.shop ?? {}),
    pressRoom: fillPressRoom(file.pressRoom ?? {}),
    flitches,
    parts,
    pairs: file.pairs.map(fillPair),
  })
}

function fillShop({ clearance, tolerates, ...rest }: ShopInFile): Shop {
  return {
    ...USUAL_SHOP,
    ...given(rest),
    clearance: { ...USUAL_SHOP.clearance, ...given(clearance ?? {}) },
    tolerates: { ...USUAL_SHOP.tolerates, ...given(tolerates ?? {}) },
  }
}

function fillFlitch(file: FlitchInFile, nth: number): Result<Flitch, JobTrouble> {
  const { id = `flitch-${nth + 1}`, name = `Flitch ${nth + 1}`, size, outline, leaves, differing, ...rest } = file
  const owner = flitchInWords(nth, file.name)
  const common = outlineOf(size, outline, owner)
  if (!common.ok) return common
  const numbers = typeof leaves === 'number' ? Array.from({ length: leaves }, (_, i) => i + 1) : leaves
  const filled = fillLeaves(numbers, differing, owner, id)
  if (!filled.ok) return filled
  return ok({ ...usualFlitch(id, name, common.value, filled.value), ...given(rest) })
}

function outlineOf(
  size: readonly [number, number] | undefined,
  outline: Ring<'leaf'> | undefined,
  owner: string,
): Result<Ring<'leaf'>, JobTrouble> {
  if (size && outline) {
    return refused({ trouble: 'wrong kind', place: owner, wanted: 'given a size or an outline', found: 'both' })
  }
  if (outline) return ok(outline)
  if (!size) return refused({ trouble: 'missing', place: inPlace([owner], ['size or outline']) })
  const [width, length] = size
  const wrong = fieldsTrouble({ width, length }, { width: LIMITS.width, length: LIMITS.length }, [owner], ['size'])
  return wrong ? refused(wrong) : ok(rectangle(width, length))
}

function fillLeaves(
  numbers: readonly number[],
  differing: readonly LeafInFile[],
  owner: string,
  flitch: string,
): Result<readonly Leaf[], JobTrouble> {
  const leaves = new Map(numbers.map((number) => [number, blankLeaf(number)]))
  const place = inPlace([owner], ['differing'])
  const told = new Set<number>()
  for (const leaf of differing) {
    if (told.has(leaf.number)) return refused({ trouble: 'repeated leaf', place, leaf: leaf.number })
    if (!leaves.has(leaf.number)) return refused({ trouble: 'no such leaf', place, leaf: leaf.number })
    told.add(leaf.number)
    const defects = leaf.defects.map((defect, i): Defect => ({
      ...defect,
      id: defect.id ?? `${flitch}-${leaf.number}-${i + 1}`,
    }))
    leaves.set(leaf.number, { ...leaf, outline: leaf.outline ?? null, picture: leaf.picture ?? null, defects })
  }
  // by the list, not by the map, which would lose a number that is listed twice
  return ok(numbers.map((number) => leaves.get(number)!))
}

function fillPart(file: PartInFile, nth: number, flitches: readonly Flitch[]): Result<Part, JobTrouble> {
  const {
    id = `part-${nth + 1}`,
    name = `Part ${nth + 1}`,
    width,
    length,
    flitch: named,
    recipe,
    border,
    pressing,
    ...rest
  } = file
  const place = inPlace([partInWords(nth, file.name)], ['flitch'])
  if (named === undefined && flitches.length !== 1) return refused({ trouble: 'missing', place })
  const flitch = named === undefined ? flitches[0] : flitches.find((f) => f.id === named)
  if (!flitch) return refused({ trouble: 'no such flitch', place, flitch: named ?? '' })
  const filled: Part = {
    ...usualPart(id, name, width, length, flitch),
    allowance: USUAL_ALLOWANCE[file.jointing ?? 'packet'],
    ...given(rest),
    asCut: given(file.asCut),
    pressing: fillPressing(pressing ?? {}, flitch, recipe?.pattern ?? 'strips'),
    recipe: fillRecipe(recipe ?? { pattern: 'strips' }, firstLeafOf(flitch)),
    border: border && fillBorder(border),
  }
  return ok(fittedPart(withOwnUnnamed(filled), 'width'))
}

const fillPair = (file: PairInFile): Pair => ({ ...usualPair(file.first, file.second), ...given(file) })

// each branch of the union has the same fields in the file as in the recipe
const fillRecipe = (file: RecipeInFile, firstLeaf: number): Recipe =>
  ({ ...usualRecipe(file.pattern, firstLeaf), ...given(file) }) as Recipe

const fillBorder = ({ string, ...file }: BorderInFile): Border => ({
  ...USUAL_BORDER,
  ...given(file),
  string: string ? { ...USUAL_STRING, ...given(string) } : null,
})
