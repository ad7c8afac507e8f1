import { GRAM_PER_LB, lbPerThousandFromGrams, MILLILITRE_PER_FL_OZ } from './measures'
import { GLUE_WORDS, type GlueInUse } from './glues'
import type { Layer, Pressing } from './pressing'

/** What goes into one pressing of one part. */
export interface GlueNeed {
  /** Places of the glue lines of this pressing: 0 lies behind the first layer. */
  readonly lines: readonly number[]
  /** Glue lines x area, m². */
  readonly area: number
  readonly grams: number
  readonly millilitres: number
  readonly fluidOunces: number
  readonly pounds: number
  /** g/m² and lb/1000 ft² on one glue line; what both faces get together where both are coated. */
  readonly spread: number
  readonly lbPerThousand: number
  /** The mix by weight; null where there is none or the data sheet must say it. */
  readonly mix: { readonly first: number; readonly second: number } | null
}

/** Left in the pot and on the roller, as a share: common practice. */
export const USUAL_LOSS = 0.1

/** The glue lines that this pressing makes: one between any two sheets, less those made before. */
export function glueLines({ layers, gluedBefore }: Pick<Pressing, 'layers' | 'gluedBefore'>): number[] {
  const sheets = layers.filter(({ kind }) => kind !== 'glue line')
  return sheets
    .slice(1)
    .map((_, line) => line)
    .filter((line) => !gluedBefore.includes(line))
}

/**
 * Glue for one part: the sum over its glue lines of area x spread, and what is lost on top. A spread on both faces is
 * the sum of both. `area` is that of the core as pressed, in mm².
 */
export function glueNeed(lines: readonly number[], area: number, glue: GlueInUse, loss = USUAL_LOSS): GlueNeed {
  const whole = (lines.length * area) / 1e6
  const grams = whole * glue.spread.value * (1 + loss)
  const millilitres = grams / glue.density.value
  return {
    lines,
    area: whole,
    grams,
    millilitres,
    fluidOunces: millilitres / MILLILITRE_PER_FL_OZ,
    pounds: grams / GRAM_PER_LB,
    spread: glue.spread.value,
    lbPerThousand: lbPerThousandFromGrams(glue.spread.value),
    mix:
      glue.ratio === null ? null : { first: grams / (1 + glue.ratio), second: (grams * glue.ratio) / (1 + glue.ratio) },
  }
}

/** The amount in a sentence: rounded up to 5 g and 5 ml, as a pot is filled. */
export function amountSentence(need: GlueNeed, glue: GlueInUse): string {
  const count = need.lines.length
  const lines = count === 1 ? 'one glue line' : `${count} glue lines`
  const up = (value: number): number => Math.ceil(value / 5 - 1e-9) * 5
  const names = glue.figures.ratio ?? UNNAMED_MIX
  const parts = need.mix
    ? ` Mix ${up(need.mix.first)} g of ${names.of} with ${up(need.mix.second)} g of ${names.to}.`
    : ''
  const unknown = !need.mix && glue.name === 'epoxy' ? ' Mix it by the ratio on its sheet, by weight.' : ''
  return (
    `For ${lines}: ${up(need.grams)} g, ${up(need.millilitres)} ml or ${need.fluidOunces.toFixed(1)} US fl oz of ${GLUE_WORDS[glue.name]}, ` +
    `at ${Math.round(need.spread)} g/m² (${Math.round(need.lbPerThousand)} lb/1000 ft²).${parts}${unknown}`
  )
}

const UNNAMED_MIX = { of: 'resin', to: 'hardener' }

/** Moisture that the glue brings into a leaf, as points of %: half its water goes into the leaf (common practice). */
export function waterIntoLeaf(
  spread: number,
  waterShare: number,
  leaf: Pick<Layer, 'thickness'>,
  density: number,
): number {
  const leafGrams = leaf.thickness * density
  return ((spread * waterShare) / 2 / leafGrams) * 100
}

/** Where the glue goes, which depends on what is in it. */
export function coatingSentence(glue: GlueInUse): string {
  if (glue.name === 'hide') return 'Hide glue goes on the core and on both sides of the leaf.'
  if (glue.name === 'epoxy') return 'Epoxy may go on both faces of the joint: it brings no water.'
  if (glue.name === 'contact cement') return 'Contact cement goes on both faces and must dry before they touch.'
  if (glue.name === 'polyurethane')
    return 'Glue on the core; damp the other face with a wrung-out cloth, since it cures by moisture.'
  return 'Glue on the core, one even film, never on the raw show leaf: its water would curl the leaf at once.'
}

export const BOTH_AT_ONCE = 'Glue face and back in one pressing, with the same glue and as much on each.'
