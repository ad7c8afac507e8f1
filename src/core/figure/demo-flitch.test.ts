/**
 * Rules kept here:
 * [L-demo-1] The demonstration flitch is exactly what its log gives: outlines and defects are not made up beside it.
 * [L-demo-2] It has 24 leaves of one length, each with a wild outline of 60 to 150 points that is 300 to 342 mm wide.
 * [L-demo-3] The knot shows in leaves 9 to 14 only, the end split in leaves 5 to 7 only.
 */
import { describe, expect, it } from 'vitest'
import { boxAround, boxHeight } from '../geometry/box'
import { ringEdges, signedArea, type Ring } from '../geometry/polygon'
import { DEMO_LOG, demoFlitch } from './demo-flitch'
import { leafDefects } from './log/leaf-defects'
import { leafOutline } from './log/leaf-outline'
import { makeLog } from './log/log'

/** The text of `demo-leaves.ts`. After a change to the log: `npx vitest run src/core/figure/demo-flitch.test.ts -u`. */
function demoLeavesText(): string {
  const log = makeLog(DEMO_LOG)
  const numbers = Array.from({ length: DEMO_LOG.leaves }, (_, i) => i + 1)
  const outlines = numbers.map(
    (leaf) =>
      `  [${leafOutline(log, leaf)
        .flatMap(({ x, y }) => [x, y])
        .join(', ')}],`,
  )
  const defects = numbers
    .map((leaf) => ({ leaf, found: leafDefects(log, leaf) }))
    .filter(({ found }) => found.length > 0)
    .map(({ leaf, found }) => `  ${leaf}: ${JSON.stringify(found)},`)
  return [
    "import type { Defect } from '../leaves/leaf'",
    '',
    '/** Taken from the demonstration log, not written by hand: x, y, x, y … clockwise, leaf by leaf. */',
    '// prettier-ignore',
    'export const DEMO_OUTLINES: readonly (readonly number[])[] = [',
    ...outlines,
    ']',
    '',
    '/** Taken from the demonstration log: what lies in the leaves, by leaf number. */',
    '// prettier-ignore',
    'export const DEMO_DEFECTS: Readonly<Record<number, readonly Defect[]>> = {',
    ...defects,
    '}',
    '',
  ].join('\n')
}

/** Across a leaf at a height, by straight lines between the points of its outline. */
function widthAt(ring: Ring<'leaf'>, y: number): number {
  const xs = ringEdges(ring).flatMap(({ a, b }) =>
    a.y > y !== b.y > y ? [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)] : [],
  )
  return Math.max(...xs) - Math.min(...xs)
}

describe('the demonstration flitch', () => {
  it('[L-demo-1] is what its log gives', async () => {
    await expect(demoLeavesText()).toMatchFileSnapshot('./demo-leaves.ts')
  })

  it('[L-demo-2] has 24 wide leaves of one length', () => {
    expect(demoFlitch().leaves.map(({ number }) => number)).toEqual(Array.from({ length: 24 }, (_, i) => i + 1))
    for (const { outline } of demoFlitch().leaves) {
      const box = boxAround(outline!)
      expect(outline!.length).toBeGreaterThanOrEqual(60)
      expect(outline!.length).toBeLessThanOrEqual(150)
      expect(signedArea(outline!)).toBeGreaterThan(0)
      expect(boxHeight(box)).toBe(2400)
      for (let y = 5; y < 2400; y += 57) {
        expect(widthAt(outline!, y)).toBeGreaterThan(300)
        expect(widthAt(outline!, y)).toBeLessThan(342)
      }
      expect(box.min.x).toBeGreaterThanOrEqual(0)
    }
  })

  it.each([
    { kind: 'knot', leaves: [9, 10, 11, 12, 13, 14] },
    { kind: 'split', leaves: [5, 6, 7] },
  ])('[L-demo-3] shows a $kind in leaves $leaves only', ({ kind, leaves }) => {
    const shown = demoFlitch().leaves.filter(({ defects }) => defects.some((defect) => defect.kind === kind))
    expect(shown.map(({ number }) => number)).toEqual(leaves)
  })
})
