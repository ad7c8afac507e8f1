import type { OutlineWarning } from '../../core/figure/photo/find-outline'
import type { OutlineRefusal } from '../../core/figure/photo/separate-leaf'
import { showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import type { PhotoTrouble } from '../../workers/photo-worker'

const PLAIN_CLOTH = 'Use a darker, plain cloth: matt green, blue or slate.'

/** Why a photograph was not taken, and what to do. */
export function photoSentence(trouble: PhotoTrouble, unit: LengthUnit): string {
  switch (trouble.trouble) {
    case 'no picture':
      return 'This is not a picture that the browser can open. Photographs as JPEG, PNG or WebP can be taken.'
    case 'too many pixels':
      return `The photograph has ${Math.round((trouble.width * trouble.height) / 1e6)} megapixels (${trouble.width} × ${trouble.height}); 64 is the most. Take it with fewer.`
    case 'too few marks':
      return `${trouble.found === 0 ? 'No ring marks' : `Only ${trouble.found} of 4 ring marks`} were found. Tap the four corners yourself, or take the photograph again with all four cards in it.`
    case 'no dot':
      return 'None of the ring marks has the dot, so the ends can’t be told apart. Tap the corners yourself, or lay the dotted card down.'
    case 'corners in a line':
      return 'These corners don’t make a rectangle seen from above. Tap them in turn, round the leaf.'
    case 'corners against the clock':
      return 'The corners were tapped against the clock: the leaf would come out mirrored. Tap them clockwise, the numbered end’s left one first.'
    case 'ring size':
      return `By the sides you gave the rings would be ${showLength(trouble.measured, unit, 'place')} across; they are printed ${showLength(trouble.expected, unit, 'place')}. Measure the sides again, or print the marks at full size.`
  }
}

/** Why there is no outline, and what to do. */
export function noOutlineSentence(reason: OutlineRefusal): string {
  switch (reason) {
    case 'no leaf':
      return `No leaf stands out from the table. ${PLAIN_CLOTH} Or draw the outline yourself.`
    case 'touches the frame':
      return 'The leaf reaches beyond the marks, or its edge can’t be told from the table. Lay the marks farther out, clear of the leaf all round.'
    case 'too little contrast':
      return `Leaf and table are too alike to find the edge. ${PLAIN_CLOTH} Or draw the outline yourself.`
    case 'wood-coloured table':
      return `The table has the colour of wood. ${PLAIN_CLOTH}`
  }
}

export function warningSentence(warning: OutlineWarning): string {
  switch (warning) {
    case 'low contrast':
      return 'Leaf and table are much alike: look along the whole outline.'
    case 'wood-coloured table':
      return `The table has the colour of wood: look along the whole outline. ${PLAIN_CLOTH}`
    case 'stray patches':
      return 'There is more on the table than the leaf: see that the outline is the leaf’s.'
    case 'unsure stretches':
      return 'Where the outline is dashed the edge could not be told from the table: drag its points there after taking it.'
  }
}
