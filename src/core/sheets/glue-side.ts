import { point } from '../geometry/point'
import { compose, reflection, type Transform } from '../geometry/transform'

/**
 * The same face seen from the glue side: turned over like a page about the upright line at `x` of the sheet, so that left
 * and right change places. The one function that makes such a view; nothing else on paper is mirrored.
 */
export const fromGlueSide = (panelToSheet: Transform<'panel', 'sheet'>, x: number): Transform<'panel', 'sheet'> =>
  compose(reflection(point<'sheet'>(x, 0), point<'sheet'>(x, 1)), panelToSheet)
