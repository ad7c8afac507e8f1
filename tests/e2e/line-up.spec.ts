import { expect, test } from '@playwright/test'

test(
  'a leaf that was shifted is slid back until the figure meets, and it is all undone',
  { tag: '@mouse' },
  async ({ page }) => {
    await page.goto('/')
    const undo = page.getByRole('button', { name: /^Undo/ })
    const section = page.locator('details', { has: page.getByRole('heading', { name: 'Line up the figure' }) })
    await section.locator('summary').click()
    // the first pair shows the two faces of one knife cut: nothing is to be slid
    await section.getByRole('button', { name: /^Look at seam/ }).click()
    await expect(section.getByText(/^Seam A is lined up: alike to (0\.9|1\.0)/)).toBeVisible({ timeout: 20_000 })

    const shift = page.getByLabel('Shift of R1 along its leaf')
    await shift.fill('6')
    await shift.press('Enter')
    await section.getByRole('button', { name: /^Look at seam/ }).click()
    await expect(section.getByText(/^Seam A: alike to .* when leaf \d+ is slid 6 mm/)).toBeVisible({ timeout: 20_000 })
    await section.getByRole('button', { name: /^Slide leaf \d+ (up|down) by 6 mm/ }).click()
    await expect(shift).toHaveValue('0 mm')
    await expect(undo).toHaveAttribute('title', /seam A lined up/)
    await undo.click()
    await expect(shift).toHaveValue('6 mm')
    await undo.click()
    await expect(shift).toHaveValue('0 mm')

    // the same pictures say which faces are most symmetric and liveliest; it can be stopped
    await page.locator('summary', { hasText: 'Faces to pick from' }).click()
    const look = page.getByRole('button', { name: 'Look for faces' })
    await look.click()
    await page.getByRole('button', { name: 'Stop' }).click()
    await look.click()
    await expect(page.getByRole('progressbar')).toBeVisible()
    await expect(page.getByRole('button', { name: /Most symmetric/ })).toBeVisible({ timeout: 60_000 })
    await expect(page.getByRole('button', { name: /Liveliest/ })).toBeVisible()
  },
)
