/** The usual cautions, each for the step at which it applies. Practice of the trade; no substitute for training. */
export const CUTTING_CAUTIONS: readonly string[] = [
  'Every leaf is cut numbered side up, this way up; leaves are turned only when they are laid. Chalk leaf, piece and arrow in the overhang before the cut. Dry-lay before the next run is cut.',
  'Knife: many light passes, a high or guarded rule, the holding hand off the line: the blade can climb the rule. Saw: thin stock between boards, guard on, no gap under the fence. Dust: extraction and a mask. The maker’s data sheet and local rules come first.',
]

export const REPAIR_CAUTIONS: readonly string[] = [
  'Splits are taped while the leaf is whole, before the knife can make them run. Patches are let in and tears laid down before the leaves are taped to each other.',
  'Knife: cut away from the hand that holds, many light passes. Glue: small amounts, gloves, fresh air. Iron or hot plate: keep it off bare skin and never leave it face down. The maker’s data sheet and local rules come first.',
]

/** The same in few words, for a card in the hand. */
export const CARD_CAUTIONS: readonly string[] = [
  'Knife: a high or guarded rule, many light passes, the holding hand off the line. Saw: thin stock between boards, guard on, no gap under the fence. Dust: extraction and a mask.',
  'The data sheet and local rules come first.',
]
