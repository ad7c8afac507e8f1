import { expect, test } from '@playwright/test'

test('the figure is brought together at a seam and at all of them, and put back', async ({ page }) => {
  await page.goto('/')
  await page.getByText('Line up the figure').click()
  const section = page.locator('details', { hasText: 'Line up the figure' })
  await section.getByRole('button', { name: /^Look at seam/ }).click()
  // the first pair shows the two faces of one knife cut: nothing is to be slid
  await expect(section.getByText(/^Seam . is lined up: alike to (0\.9|1\.0)/)).toBeVisible({ timeout: 20_000 })

  await page.getByRole('textbox', { name: 'Number of leaves' }).fill('4')
  await page.getByRole('textbox', { name: 'Number of leaves' }).press('Enter')
  await section.getByRole('button', { name: 'Look at all seams' }).click()
  await expect(section.getByText(/^Seam A: alike to .* when leaf \d+ is slid/)).toBeVisible({ timeout: 20_000 })
  await section.getByRole('button', { name: /^Line up all, outwards from seam B/ }).click()
  const undo = page.getByRole('button', { name: /^Undo/ })
  await expect(undo).toHaveAttribute('title', /all seams lined up/)

  await section.getByRole('button', { name: 'Look at all seams' }).click()
  await expect(section.getByText(/^Seam A( is lined up|: alike|: no slide)/)).toBeVisible({ timeout: 20_000 })
  await undo.click()
  await expect(undo).not.toHaveAttribute('title', /lined up/)
})
