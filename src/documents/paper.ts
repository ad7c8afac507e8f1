import { ok, refused, type Result } from '../core/result'

/** A paper, upright: width across the short side. A roll is as long as it is pulled: its height is null. */
export interface Paper {
  readonly id: string
  readonly name: string
  /** mm. */
  readonly width: number
  readonly height: number | null
}

const INCH = 25.4

/** The longest side of a page that can be told in a PDF without scaling it: 14,400 points of 1/72 in. */
export const LARGEST_PAGE = 5080

/** Less than this is no sheet to draw on. */
export const SMALLEST_PAPER = 100

/**
 * The A sizes of ISO 216: A0 has 1 m² and sides as 1 to √2; each next one is the one before halved across its
 * long side, rounded down to whole millimetres.
 */
export function isoPaper(step: number): Paper & { readonly height: number } {
  let width = Math.round(1000 / 2 ** 0.25)
  let height = Math.round(1000 * 2 ** 0.25)
  for (let i = 0; i < step; i++) [width, height] = [Math.floor(height / 2), width]
  return { id: `a${step}`, name: `A${step}`, width, height }
}

const inches = (id: string, name: string, width: number, height: number): Paper => ({
  id,
  name,
  width: width * INCH,
  height: height * INCH,
})

export const PAPERS: readonly Paper[] = [
  isoPaper(4),
  isoPaper(3),
  isoPaper(2),
  isoPaper(1),
  isoPaper(0),
  inches('letter', 'Letter', 8.5, 11),
  inches('legal', 'Legal', 8.5, 14),
  inches('tabloid', 'Tabloid', 11, 17),
  inches('arch-c', 'Arch C', 18, 24),
  inches('arch-d', 'Arch D', 24, 36),
  inches('arch-e', 'Arch E', 36, 48),
  { id: 'roll-610', name: 'Roll 610 mm', width: 610, height: null },
  { id: 'roll-914', name: 'Roll 914 mm', width: 914, height: null },
]

/** The paper of that id, or null. */
export const paperOf = (id: string): Paper | null => PAPERS.find((paper) => paper.id === id) ?? null

export type PaperRefusal = {
  readonly reason: 'paper size'
  readonly length: number
  readonly least: number
  readonly most: number
}

/** A paper of the maker's own; its sides may be given in either order. */
export function customPaper(width: number, height: number): Result<Paper, PaperRefusal> {
  const wrong = [width, height].find((length) => !(length >= SMALLEST_PAPER && length <= LARGEST_PAGE))
  if (wrong !== undefined)
    return refused({ reason: 'paper size', length: wrong, least: SMALLEST_PAPER, most: LARGEST_PAGE })
  return ok({ id: 'custom', name: 'Custom', width: Math.min(width, height), height: Math.max(width, height) })
}

/**
 * The page to be printed for a drawing that needs `room` besides itself across and along: the paper, or as much
 * of a roll as the drawing takes with its shorter side across, if that goes on in one piece, up to what a page
 * may be long.
 */
export function pageOn(
  paper: Paper,
  drawing: { readonly width: number; readonly height: number },
  room: number,
): { readonly width: number; readonly height: number } {
  if (paper.height !== null) return { width: paper.width, height: paper.height }
  const sides = [drawing.width + room, drawing.height + room]
  const [short, long] = [Math.min(...sides), Math.max(...sides)]
  // what goes on neither way in one strip runs in strips along its longer side, which needs the fewest
  const along = long <= paper.width ? short : long
  return { width: paper.width, height: Math.min(Math.max(along, SMALLEST_PAPER), LARGEST_PAGE) }
}
