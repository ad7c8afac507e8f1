import { ofFlitch } from '../leaves/flitch-words'
import type { DefectKind } from '../leaves/leaf'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { LeafSpot } from '../seams/find-patch'
import type { Mending, Repair, Spared } from './repairs'

const KIND: Readonly<Record<DefectKind, string>> = {
  knot: 'Knot',
  hole: 'Hole',
  split: 'Split',
  stain: 'Stain',
  sapwood: 'Sapwood',
  tear: 'Tear',
}

/** What is there: `Split, open at the far end, 102 mm long, slanted`. */
export function repairHead({ defect, mending }: Repair, unit: LengthUnit): string {
  if (mending.mend !== 'tape') return KIND[defect.kind]
  const opens = mending.opens === 'inside' ? 'inside the leaf' : `open at the ${mending.opens}`
  return `${KIND.split}, ${opens}, ${showLength(mending.length, unit, 'place')} long, ${mending.through} through the leaf`
}

/** Where its middle lies: from the numbered end, and from the left edge with the number up. */
export function spotWords(spot: LeafSpot | null, unit: LengthUnit): string {
  if (!spot) return 'beside the leaf'
  const say = (length: number) => showLength(length, unit, 'place')
  return `${say(spot.fromNumberedEnd)} from the numbered end, ${say(spot.fromLeft)} from the left edge`
}

/** What is done about it, in one or two sentences. */
export function mendingWords(mending: Mending, unit: LengthUnit): string {
  switch (mending.mend) {
    case 'tape':
      return `${tapeWords(mending)} ${mending.side === 'show side' ? STAYS_ON : COMES_OFF}`
    case 'lay down':
      return 'Lay the torn fibres back with a little glue, under paper and a weight. Try it dry first.'
    case 'back':
      return `It may stay in this face. Put gummed tape over it on the ${mending.face} (show side), so that no glue comes through.`
    case 'patch': {
      const [width, length] = [mending.width, mending.length].map((size) => showLength(size, unit, 'place'))
      return `Let in a patch with its grain along the leaf’s, pointed at both ends: ${width} wide and at least ${length} long.`
    }
  }
}

const STAYS_ON = 'Gummed tape stays on through the press.'
const COMES_OFF = 'All of it comes off before pressing.'

function tapeWords({ through, side, face }: Extract<Mending, { mend: 'tape' }>): string {
  const where = `the ${face} (${side})`
  if (through === 'slanted')
    return `Lay the edges flush and tape across the split on ${where}, without tension: pulled tight, a slanted break rides over itself.`
  return `Pull it together with tape across it on ${where}, then tape along it.`
}

/** A defect that need not be mended. */
export const sparedWords = ({ leaf, ofFlitch: of, defect, spot }: Spared, unit: LengthUnit): string =>
  `Leaf ${leaf}${ofFlitch(of)}: ${KIND[defect.kind].toLowerCase()}, ${spotWords(spot, unit)}`
