import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

async function openParts(page: Page): Promise<void> {
  await page.goto('/')
  await page.getByRole('button', { name: /^Parts/ }).click()
  await expect(names(page)).toHaveCount(10)
}

const names = (page: Page) => page.locator('li > .row > .name strong')
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

test('letters for a width give a sentence and change nothing', async ({ page }) => {
  await openParts(page)
  const width = page.getByLabel('Finished width, across the grain')
  await expect(width).toHaveValue('372 mm')
  await type(page, 'Finished width, across the grain', 'abc')
  await expect(page.getByText('“abc” is not a length')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Door, far left 372 × 560 mm' })).toBeVisible()
  await expect(undo(page)).toBeDisabled()
  await width.press('Escape')
  await expect(width).toHaveValue('372 mm')
})

test('a part is added, changed, copied, moved and removed, and all of it is undone', async ({ page }) => {
  await openParts(page)
  await type(page, 'Name', 'Drawer front')
  await type(page, 'Width, across the grain', '300')
  await type(page, 'Length, along the grain', '14 in')
  await page.getByRole('button', { name: 'Add the part' }).click()
  await expect(names(page)).toHaveCount(11)
  await expect(page.getByRole('button', { name: /^Drawer front 300 × 356 mm/ })).toBeFocused()

  await type(page, 'Face beyond the core, left side', '9')
  await page.getByRole('button', { name: 'Make a copy' }).click()
  await expect(names(page)).toHaveCount(12)
  await expect(page.getByLabel('Face beyond the core, left side')).toHaveValue('9 mm')
  await expect(page.getByLabel('Name of the part')).toHaveValue('Drawer front, copy')

  const shown = () => names(page).allTextContents()
  await page.getByRole('button', { name: 'Move up' }).click()
  await expect.poll(async () => (await shown()).slice(8, 10)).toEqual(['Drawer front, copy', 'Drawer front'])
  await page.getByRole('button', { name: 'Remove', exact: true }).click()
  await expect(names(page)).toHaveCount(11)

  while (await undo(page).isEnabled()) await undo(page).click()
  await expect(names(page)).toHaveCount(10)
  expect((await shown())[0]).toBe('Door, far left')
})

test('a seam too long for the shop is told, until the figure is changed back', { tag: '@mouse' }, async ({ page }) => {
  await openParts(page)
  await page.getByText('What the shop holds to').click()
  await type(page, 'Longest edge trued in one go', '400')
  await page.getByRole('button', { name: /^Face/ }).click()
  await expect(page.getByText(/this shop trues 400 mm in one go/).first()).toBeVisible()
  await undo(page).click()
  await expect(page.getByText(/this shop trues 400 mm in one go/)).toHaveCount(0)
})

test('a core that leaves nothing of the panel is refused by the field', async ({ page }) => {
  await openParts(page)
  await type(page, 'Core beyond the finished size, all edges', '-200')
  await expect(page.getByText(/core leaves -?−?28 mm of the panel/).first()).toBeVisible()
  await expect(page.getByLabel('Core beyond the finished size, all edges')).toHaveValue('0 mm')
  await type(page, 'Core beyond the finished size, all edges', '12')
  await expect(page.getByLabel('Core beyond the finished size, right side')).toHaveValue('12 mm')
})

test('another way of jointing brings its allowance', async ({ page }) => {
  await openParts(page)
  await expect(page.getByLabel('Jointing allowance')).toHaveValue('3 mm')
  await page.getByLabel('Way of jointing').selectOption('shot in pairs')
  await expect(page.getByLabel('Jointing allowance')).toHaveValue('1.5 mm')
})

test('each part says how it stands and leads to its face', async ({ page }) => {
  await openParts(page)
  await expect(page.getByRole('button', { name: 'Top: centre seam on the centre. Go to its face' })).toBeVisible()
  await type(page, 'Finished width, across the grain', '3000')
  await expect(page.getByRole('button', { name: 'Door, far left: does not fit these leaves' })).toBeVisible()
  await page.getByRole('button', { name: 'End, left: ' }).click()
  await expect(page.getByLabel('Part shown')).toHaveValue('end-left')
})

test('show faces first is a view that keeps the order of the job', async ({ page }) => {
  await openParts(page)
  await page.getByLabel('How much it is seen').selectOption('hidden')
  await expect(names(page).first()).toHaveText('Door, left')
  await page.getByText('as written down').click()
  await expect(names(page).first()).toHaveText('Door, far left')
})

test('nothing needs scrolling sideways', async ({ page }) => {
  await openParts(page)
  const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(await sideways()).toBeLessThanOrEqual(0)
  await page.getByLabel('Drawn', { exact: true }).selectOption('lying')
  expect(await sideways()).toBeLessThanOrEqual(0)
})
