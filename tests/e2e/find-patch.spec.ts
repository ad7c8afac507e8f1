import { expect, test } from '@playwright/test'

test('a patch is found: the leaf, the spot on it, and the nearest leaf with the same figure', async ({ page }) => {
  await page.goto('/')
  const section = page.locator('details', { has: page.getByRole('heading', { name: 'Where is the patch?' }) })
  await section.locator('summary').click()
  await expect(section.getByText(/^This is leaf \d+, (turned over|number up)\. With the number up/)).toBeVisible()
  const first = await section.getByText(/^This is leaf/).innerText()
  // mirrored in the seam: the same spot on the other leaf of the pair
  const left = section.getByLabel('From the left edge')
  await left.fill('279')
  await left.press('Enter')
  await expect(section.getByText(/^This is leaf/)).not.toHaveText(first)
  const second = await section.getByText(/^This is leaf/).innerText()
  const distances = (text: string) => [...text.matchAll(/(\d+) mm/g)].map(([, mm]) => Number(mm))
  const [a, b] = [distances(first), distances(second)]
  expect(a).toHaveLength(3)
  // drift and wild edges may differ by a little from leaf to leaf
  a.forEach((mm, i) => expect(Math.abs(mm - b[i]!)).toBeLessThan(25))
  await expect(section.getByText(/^(Leaf \d+.*|The nearest free one.*)has the same figure free/).first()).toBeVisible()
  await left.fill('400')
  await left.press('Enter')
  await expect(section.getByText(/“400” is more than 372 mm/)).toBeVisible()
})
