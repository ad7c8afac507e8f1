import type { GlueName } from './pressing'

/** Mending a blister, by what the glue does under heat: practice of makers, nobody's rule. */
const BLISTERS: Readonly<Record<GlueName, string>> = {
  PVA: 'Warm the blister through paper with a dry iron till the glue softens, then hold it under a cold block for ten minutes. If it has no glue under it, slit it along the grain and work some in.',
  'plastic resin, powder':
    'Heat won’t soften this glue: slit the blister along the grain with a fine knife, work fresh glue in, and clamp a block on it with film between.',
  'plastic resin, liquid':
    'Heat won’t soften this glue: slit the blister along the grain with a fine knife, work fresh glue in, and clamp a block on it with film between.',
  epoxy:
    'Slit the blister along the grain, work a little epoxy in, and clamp a block on it with film between. Don’t iron: warm epoxy softens and stains the leaf round it.',
  polyurethane:
    'Slit the blister along the grain, breathe on the core, work a little glue in and clamp a block on it with film between; scrape off the foam.',
  hide: 'Damp the blister, warm it with an iron through paper and press it down with the hammer. If it is starved, slit it along the grain and work thin hot glue in.',
  'contact cement': 'Warm it and roll it down; it may lift again, since this glue never hardens.',
}

export const blisterSentence = (glue: GlueName): string => BLISTERS[glue]

/** How to find them: before any finish. */
export const FIND_BLISTERS = 'Tap the face all over with a fingernail while it is bare: a blister sounds hollow.'

export const OPEN_SEAM =
  'An open seam: wait till the panel has dried, then glue in a sliver from the same leaf, cut with its grain along the seam. Keep the offcuts of every face till the piece has left the shop.'

/** Before the first cut. */
export const FLATTENING: readonly string[] = [
  'Flatten wavy leaves first: wet them with softener or thin size, lay them between absorbent paper and film-free boards under weight, change the paper after an hour and then daily.',
  'Then dry them between fresh paper to the shop’s moisture before any edge is jointed: an edge jointed damp opens when it dries.',
]

/** What to look for and how to mend it, once the panel is out. */
export const afterwardsSentences = (glue: GlueName): string[] => [FIND_BLISTERS, blisterSentence(glue), OPEN_SEAM]
