/**
 * [M3] A path stands off the edge by half of what the tool takes away: round a piece outside it, round an opening inside.
 * [M4] A template for a guide bush is smaller than the piece, or its opening larger, by (bush − cutter) / 2; for a
 *   bearing or a knife it is equal.
 */
import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import { boxAround } from '../geometry/box'
import { signedArea } from '../geometry/polygon'
import { toolOffset, toolPath, type CuttingTool } from './cutting-tool'

const piece = [point<'window'>(0, 0), point<'window'>(100, 0), point<'window'>(100, 400), point<'window'>(0, 400)]

const cases: readonly { readonly tool: CuttingTool; readonly by: number }[] = [
  { tool: { kind: 'on the line' }, by: 0 },
  { tool: { kind: 'beam', width: 0.2, keeps: 'piece' }, by: 0.1 },
  { tool: { kind: 'beam', width: 6, keeps: 'opening' }, by: -3 },
  { tool: { kind: 'guide bush', bush: 17, cutter: 6, keeps: 'piece' }, by: -5.5 },
  { tool: { kind: 'guide bush', bush: 17, cutter: 6, keeps: 'opening' }, by: 5.5 },
]

describe('what a tool takes away', () => {
  it.each(cases)('[M3] [M4] $tool.kind: $by mm', ({ tool, by }) => {
    expect(toolOffset(tool)).toBeCloseTo(by, 12)
    const path = boxAround(toolPath(piece, tool)!)
    const corners = [path.min.x, path.min.y, path.max.x, path.max.y]
    corners.forEach((value, i) => expect(value).toBeCloseTo([-by, -by, 100 + by, 400 + by][i]!, 9))
  })

  it('[M3] what the beam leaves is the piece, at a sharp corner too', () => {
    // a wedge of 30 degrees: its path runs far past the apex
    const wedge = [point<'window'>(0, 0), point<'window'>(80, 300), point<'window'>(-80, 300)]
    const path = toolPath(wedge, { kind: 'beam', width: 0.4, keeps: 'piece' })!
    expect(path).toHaveLength(3)
    const half = Math.atan(80 / 300)
    expect(Math.min(...path.map(({ y }) => y))).toBeCloseTo(-0.2 / Math.sin(half), 9)
    expect(signedArea(path)).toBeGreaterThan(signedArea(wedge))
  })

  it('[M3] a tool larger than the piece leaves nothing', () => {
    expect(toolPath(piece, { kind: 'beam', width: 120, keeps: 'opening' })).toBeNull()
  })
})
