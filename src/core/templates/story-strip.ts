/**
 * What stands on a story strip: every line of a straight face that is set out by rule, along one axis of the panel.
 *
 * Input: a face with its seams. Output: for an axis across which some seam runs square, or which all patterns have (the
 * width), the lines in order, measured from the taped sheet's left or upper edge. A face with any seam that lies aslant
 * has no strip; of a border only the straight edges of the field stand on it, not its corners and segments. Tolerance: lines nearer than 0.01 mm are one.
 */
import type { LaidFace } from '../fit/lay-face'
import { isBandJoint } from '../patterns/pattern'
import type { SeamReport } from '../seams/seam-report'

export type StripLine = 'sheet' | 'core' | 'trim' | 'centre' | 'seam'

export interface StripMark {
  /** From the strip's beginning. */
  readonly at: number
  /** What lies there, such as core and trim in one. */
  readonly lines: readonly StripLine[]
  /** Of the seams that lie there. */
  readonly letters: readonly string[]
}

export interface StoryStrip {
  readonly axis: 'across' | 'along'
  readonly length: number
  readonly marks: readonly StripMark[]
}

const ONE = 0.01

/** The strips of a face: across it, and along it where it has seams across the grain. None where a seam lies aslant. */
export function storyStrips(face: LaidFace & { readonly seams: readonly SeamReport[] }): readonly StoryStrip[] {
  const square = face.seams
    .map((seam) => ({ seam, axis: axisOf(seam) }))
    .filter(({ seam, axis }) => !isBandJoint(seam.kind) || (seam.kind === 'border' && axis !== null))
  if (square.length === 0 || square.some(({ axis }) => axis === null)) return []
  return (['across', 'along'] as const)
    .filter((axis) => square.some((one) => one.axis === axis))
    .map((axis) =>
      stripAlong(
        face,
        axis,
        square.filter((one) => one.axis === axis).map(({ seam }) => seam),
      ),
    )
}

/** The axis on which a seam is one place; null for one that lies aslant. */
function axisOf({ edge: { a, b }, line }: SeamReport): StoryStrip['axis'] | null {
  if (line.length > 2) return null
  if (Math.abs(a.x - b.x) < ONE) return 'across'
  return Math.abs(a.y - b.y) < ONE ? 'along' : null
}

function stripAlong({ sizes }: LaidFace, axis: StoryStrip['axis'], seams: readonly SeamReport[]): StoryStrip {
  const on = axis === 'across' ? 'x' : 'y'
  const from = sizes.sheet.min[on]
  const single = (at: number, line: StripLine, letters: readonly string[] = []): StripMark => ({
    at: at - from,
    lines: [line],
    letters,
  })
  const all = [
    ...(['min', 'max'] as const).flatMap((end) => [
      single(sizes.sheet[end][on], 'sheet'),
      single(sizes.core[end][on], 'core'),
      single(sizes.finished[end][on], 'trim'),
    ]),
    single(0, 'centre'),
    ...seams.map(({ letter, edge }) => single(edge.a[on], 'seam', [letter])),
  ]
    // where a lipping is put on afterwards the sheet may end inside the finished edge
    .filter(({ at }) => at >= -ONE && at <= sizes.sheet.max[on] - from + ONE)
    .sort((p, q) => p.at - q.at)
  return { axis, length: sizes.sheet.max[on] - from, marks: merged(all) }
}

function merged(marks: readonly StripMark[]): readonly StripMark[] {
  const kept: StripMark[] = []
  for (const mark of marks) {
    const last = kept.at(-1)
    if (last && mark.at - last.at < ONE) {
      kept[kept.length - 1] = {
        at: last.at,
        lines: [...new Set([...last.lines, ...mark.lines])],
        letters: [...new Set([...last.letters, ...mark.letters])],
      }
    } else kept.push(mark)
  }
  return kept
}
