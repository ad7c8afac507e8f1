import { decimalText } from '../units/show-length'
import { MM_PER, type LengthUnit } from '../units/unit'
import { practice } from './provenance'

/** How much of a leaf may come off when it is cleaned up: no more than a third, and never more than this. */
export const SANDING = { share: practice(1 / 3), most: practice(0.2), sawnMost: practice(0.6), sawnFrom: 1.5 } as const

export interface SandingBudget {
  /** All that may come off, mm. */
  readonly most: number
  /** Left of the leaf then. */
  readonly left: number
  /** The share of each pass. */
  readonly passes: readonly { readonly pass: string; readonly off: number }[]
}

const PASSES: readonly { readonly pass: string; readonly share: number }[] = [
  { pass: 'damp and scrape the tape', share: 0.15 },
  { pass: 'card scraper', share: 0.35 },
  { pass: '150 grit', share: 0.3 },
  { pass: '220 grit', share: 0.2 },
]

/** What may come off a leaf of this thickness, mm. */
export function sandingBudget(thickness: number): SandingBudget {
  const cap = thickness >= SANDING.sawnFrom ? SANDING.sawnMost.value : SANDING.most.value
  const most = Math.min(thickness * SANDING.share.value, cap)
  return { most, left: thickness - most, passes: PASSES.map(({ pass, share }) => ({ pass, off: share * most })) }
}

/** The budget in a sentence; hundredths of a mm or thousandths of an inch, since a leaf has no more. */
export function sandingSentence(thickness: number, unit: LengthUnit): string {
  const { most, left } = sandingBudget(thickness)
  const say = (length: number): string =>
    unit === 'mm' ? `${decimalText(length, 2)} mm` : `${(length / MM_PER.in).toFixed(3)} in`
  return `Of ${say(thickness)} no more than ${say(most)} may come off, scraping and sanding together: ${say(left)} stay. Pencil the surface over, stop when the pencil is gone, and keep off the edges.`
}
