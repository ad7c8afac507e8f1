import { derive, type DerivedPart } from '../../src/core/derive'
import type { Finding, FindingCode } from '../../src/core/finding'
import { withoutMemory } from '../../src/core/fit/answers'
import type { Edges } from '../../src/core/geometry/box'
import { present } from '../../src/core/invariant'
import type { Job, Part } from '../../src/core/job/job'
import { blankLeaf, rectangle, usualFlitch, usualPart } from '../../src/core/job/usual'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Leaf } from '../../src/core/leaves/leaf'
import { USUAL_BOX } from '../../src/core/patterns/box'
import { USUAL_DIAMOND } from '../../src/core/patterns/diamond'
import { USUAL_END_MATCH } from '../../src/core/patterns/end-match'
import { USUAL_FOUR_WAY } from '../../src/core/patterns/four-way'
import { USUAL_HERRINGBONE } from '../../src/core/patterns/herringbone'
import { USUAL_PARQUET } from '../../src/core/patterns/parquet'
import { USUAL_PLANKS } from '../../src/core/patterns/planks'
import { USUAL_RADIAL } from '../../src/core/patterns/radial'
import type {
  BoxRecipe,
  DiamondRecipe,
  EndMatchRecipe,
  FourWayRecipe,
  HerringboneRecipe,
  ParquetRecipe,
  PlanksRecipe,
  RadialRecipe,
  StripRecipe,
} from '../../src/core/patterns/recipe'
import { USUAL_STRIPS } from '../../src/core/patterns/strips'
import { USUAL_ROOM } from '../../src/core/press/usual-pressing'
import { USUAL_SHOP, type Shop } from '../../src/core/shop'

/** One number for all four edges. */
export const allEdges = (by: number): Edges => ({ top: by, right: by, bottom: by, left: by })

/** Leaves 1, 2, 3 … of which nothing else is known. */
export const plainLeaves = (count: number): readonly Leaf[] => Array.from({ length: count }, (_, i) => blankLeaf(i + 1))

/** 24 leaves of 215 x 2400 mm, sound to their edges, knife-cut 0.6 mm thick, leaf 1 on top, the upper faces numbered. */
export const flitchOf = (over: Partial<Flitch> = {}): Flitch => ({
  ...usualFlitch('flitch', 'Walnut', rectangle(215, 2400), plainLeaves(24)),
  ...over,
})

/** A door of 600 x 720 mm with 10 mm of overhang all round. */
export const partOf = (over: Partial<Part> = {}): Part => ({
  ...usualPart('part', 'Door', 600, 720, flitchOf()),
  overhang: allEdges(10),
  recipe: { ...USUAL_STRIPS, equal: 'before trimming' },
  ...over,
})

export const strips = (over: Partial<StripRecipe> = {}): StripRecipe => ({
  ...USUAL_STRIPS,
  equal: 'before trimming',
  ...over,
})
export const fourWay = (over: Partial<FourWayRecipe> = {}): FourWayRecipe => ({
  ...USUAL_FOUR_WAY,
  count: 4,
  equal: 'before trimming',
  ...over,
})
export const endMatch = (over: Partial<EndMatchRecipe> = {}): EndMatchRecipe => ({ ...USUAL_END_MATCH, ...over })
export const diamond = (over: Partial<DiamondRecipe> = {}): DiamondRecipe => ({ ...USUAL_DIAMOND, ...over })
export const boxed = (over: Partial<BoxRecipe> = {}): BoxRecipe => ({ ...USUAL_BOX, ...over })
export const herringbone = (over: Partial<HerringboneRecipe> = {}): HerringboneRecipe => ({
  ...USUAL_HERRINGBONE,
  ...over,
})
export const parquet = (over: Partial<ParquetRecipe> = {}): ParquetRecipe => ({ ...USUAL_PARQUET, ...over })
export const planks = (over: Partial<PlanksRecipe> = {}): PlanksRecipe => ({ ...USUAL_PLANKS, ...over })
export const radial = (over: Partial<RadialRecipe> = {}): RadialRecipe => ({ ...USUAL_RADIAL, count: 12, ...over })

export const jobOf = (parts: readonly Part[], flitch: Flitch, shop: Shop = USUAL_SHOP): Job => ({
  name: 'Job',
  unit: 'mm',
  shop,
  pressRoom: USUAL_ROOM,
  flitches: [flitch],
  parts,
  pairs: [],
})

/** The one part of a job, derived. */
export const faceOf = (part: Part, flitch: Flitch = flitchOf(), shop: Shop = USUAL_SHOP): DerivedPart =>
  present(derive(jobOf([part], flitch, shop), withoutMemory).parts[0], 'no part derived')

export const codesOf = ({ findings }: DerivedPart): readonly FindingCode[] => findings.map(({ code }) => code)

export const findingsOf = ({ findings }: DerivedPart, code: FindingCode): readonly Finding[] =>
  findings.filter((finding) => finding.code === code)
