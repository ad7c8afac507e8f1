import { expect, it } from 'vitest'
import { demoFlitch } from '../../core/figure/demo-flitch'
import { leafOutline } from '../../core/leaves/bundle'
import { ringEdges } from '../../core/geometry/polygon'
import { point } from '../../core/geometry/point'
import type { BoardColours } from '../board-types'
import { outlineScene } from './outline-scene'

const flitch = demoFlitch()
const first = flitch.leaves[0]!
const outline = leafOutline(flitch, first)
const unsure = ringEdges(outline).slice(2, 5)
const options = { unit: 'mm', colours: {} as BoardColours, tool: 'outline', drawnKind: 'knot', unsure } as const

it('[I11] what was unsure stays dashed until a point of it is moved', () => {
  expect(outlineScene(flitch, first.number, options)?.unsure).toEqual(unsure)
  const moved = outline.with(3, point(outline[3]!.x - 1, outline[3]!.y))
  const changed = { ...flitch, leaves: [{ ...first, outline: moved }, ...flitch.leaves.slice(1)] }
  expect(outlineScene(changed, first.number, options)?.unsure).toEqual([unsure[2]])
})
