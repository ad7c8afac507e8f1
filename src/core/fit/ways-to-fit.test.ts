import { describe, expect, it } from 'vitest'
import { rectangle, usualFlitch, usualPart, blankLeaf } from '../job/usual'
import { USUAL_SHOP } from '../shop'
import { withoutMemory } from './answers'
import { layFace } from './lay-face'
import { waysToFit } from './ways-to-fit'

const leaves = Array.from({ length: 8 }, (_, i) => ({
  ...blankLeaf(i + 1),
  outline: i < 2 ? rectangle(220, 752) : rectangle(220, 900),
}))
const flitch = usualFlitch('f', 'Walnut', rectangle(220, 900), leaves)
const part = usualPart('p', 'Door', 400, 740, flitch)

describe('ways to fit', () => {
  it('[F20] names the least overhang to give up and where a longer run begins', () => {
    expect(layFace(part, flitch, USUAL_SHOP, withoutMemory).play.region).toEqual([])
    expect(waysToFit(part, flitch, USUAL_SHOP, withoutMemory)).toEqual([
      { remedy: 'less overhang', side: 'top', by: 8 },
      { remedy: 'less overhang', side: 'bottom', by: 8 },
      { remedy: 'start at leaf', leaf: 3 },
    ])
  })

  it('[F21] finds the next count when leaves are too narrow for the one asked for', () => {
    const narrow = { ...part, length: 700, recipe: { ...part.recipe, count: 2 } as typeof part.recipe, width: 500 }
    expect(waysToFit(narrow, flitch, USUAL_SHOP, withoutMemory)).toContainEqual({ remedy: 'count', count: 4 })
  })
})
