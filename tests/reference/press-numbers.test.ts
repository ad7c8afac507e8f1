/** [W12] The page of press numbers says what the program reckons with, each with its source and how it is known. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { numberRows, numbersPage } from '../../src/core/press/numbers'
import { WOODS } from '../../src/core/press/woods'

const page = readFileSync(new URL('../../docs/press-numbers.md', import.meta.url), 'utf8')

describe('docs/press-numbers.md', () => {
  it('[W12] holds the tables of the program, word for word', () => expect(page.endsWith(numbersPage())).toBe(true))

  it('[W12] no number is without source, and none appears twice', () => {
    const rows = numberRows()
    expect(rows.length).toBeGreaterThan(300)
    expect(rows.filter(({ source, value }) => source.trim() === '' || /NaN|undefined/.test(value))).toEqual([])
    expect(new Set(rows.map(({ group, what }) => group + what)).size).toBe(rows.length)
  })

  // rows of the Wood Handbook's tables 4-3 and 13-5 as they were read, a second time and by hand
  it.each([
    { name: 'cherry, black', cells: ['3.7', '7.1', '0.00126', '0.00248'] },
    { name: 'maple, sugar', cells: ['4.8', '9.9', '0.00165', '0.00353'] },
    { name: 'walnut, black', cells: ['5.5', '7.8', '0.0019', '0.00274'] },
    { name: 'sweetgum', cells: ['5.3', '10.2', '0.00183', '0.00365'] },
  ])('[W12] $name', ({ name, cells }) => {
    const wood = WOODS.find((known) => known.name === name)!
    const found = [
      wood.shrinkage.radial,
      wood.shrinkage.tangential,
      wood.coefficient!.radial,
      wood.coefficient!.tangential,
    ]
    expect(found.map(({ value }) => String(value))).toEqual(cells)
  })
})
