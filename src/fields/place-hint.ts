/** A box on the screen, in px from the window's upper left corner. */
interface ScreenBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

type ScreenSize = Pick<ScreenBox, 'width' | 'height'>

const MARGIN = 8

/**
 * Where a hint stands: under its word, or above it where there is no room, and never over the window's
 * sides. It touches the word, so that the pointer can go from one to the other.
 */
export function placeHint(word: ScreenBox, hint: ScreenSize, window: ScreenSize): { left: number; top: number } {
  const under = word.top + word.height
  const above = word.top - hint.height
  const fitsUnder = under + hint.height <= window.height - MARGIN
  const rightmost = window.width - MARGIN - hint.width
  return {
    left: Math.max(MARGIN, Math.min(word.left, rightmost)),
    top: fitsUnder || above < MARGIN ? under : above,
  }
}
