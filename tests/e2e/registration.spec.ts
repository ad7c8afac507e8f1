import { expect } from '@playwright/test'
import { test } from './plain-grain'

test('how the leaves lie: by register lines, by their pictures, each one undo', { tag: '@mouse' }, async ({ page }) => {
  await page.goto('/')
  await page.getByRole('button', { name: /^Flitch/ }).click()
  const undo = page.getByRole('button', { name: /^Undo/ })
  // four leaves are enough to compare
  await page.getByText('More leaves, or others in their place').click()
  const count = page.getByLabel('Number of leaves')
  await count.fill('4')
  await count.press('Enter')

  const section = page.locator('details', { hasText: 'How the leaves lie to each other' }).last()
  await section.locator('summary').click()
  await expect(section.getByText(/^No leaf has drift/)).toBeVisible()
  const marks = section.getByLabel('Marks')
  const take = section.getByRole('button', { name: 'Take the drift from these marks' })
  await marks.fill('2; 240')
  await take.click()
  await expect(section.getByRole('alert')).toContainText('leaf 1, the first of the flitch, has no line')
  const slant = section.getByLabel('Slant of the line on the edge')
  await slant.fill('30')
  await slant.press('Enter')
  await marks.fill('1; 240\n2; 250\n3; 290; 40\n4; 270')
  await take.click()
  const third = section.getByLabel('Drift of leaf 3 along')
  await expect(third).toHaveValue('30 mm')
  await expect(section.getByText('1 leaf has drift, 30 mm along and 0 mm across at most.')).toBeVisible()

  // leaf 3 does not really lie there: its picture and its wild edges say so
  await section.getByRole('button', { name: 'Compare the pictures' }).click()
  await section.getByRole('button', { name: 'Stop' }).click()
  await section.getByRole('button', { name: 'Compare the pictures' }).click()
  await expect(section.getByText(/^The figure wanders by 1\d/)).toBeVisible({ timeout: 30_000 })
  await expect(section.getByText(/^found .*; alike to 0\.9/)).toHaveCount(3)
  await section.getByRole('button', { name: /^Take this as the drift of 4 leaves/ }).click()
  await expect(third).toHaveValue(/^(−?[0-2](\.\d)?) mm/)
  await expect(undo).toHaveAttribute('title', /drift of 4 leaves from the pictures/)
  await undo.click()
  await expect(third).toHaveValue('30 mm')
  await undo.click()
  await expect(third).toHaveValue('0 mm')
})
