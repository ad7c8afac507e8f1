import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

async function openFlitch(page: Page): Promise<void> {
  await page.goto('/')
  await page.getByRole('button', { name: /^Flitch/ }).click()
  await expect(page.getByLabel('Name of the flitch')).toHaveValue('Walnut, 24 leaves')
}

async function makeFlitch(page: Page, name: string, leaves: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a flitch' }).click()
  await page.getByLabel('Name', { exact: true }).fill(name)
  await page.getByLabel('Leaves', { exact: true }).fill(leaves)
  await page.getByRole('button', { name: 'Make the flitch' }).click()
}

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })
const rows = (page: Page) => page.getByRole('button', { name: /^Leaf \d+, open$/ })

/** Types into a field of lengths and leaves it. */
async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

test('a flitch of 24 leaves is made from one line, and undone in one step', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '24 leaves, 2440 x 200')
  await expect(page.getByLabel('Name of the flitch')).toHaveValue('Ash')
  await expect(rows(page)).toHaveCount(24)
  const last = page.getByRole('row').filter({ has: page.getByRole('button', { name: 'Leaf 24, open' }) })
  await expect(last).toContainText('2440')
  await expect(last).toContainText('200')
  await undo(page).click()
  await expect(page.getByLabel('Name of the flitch')).toHaveValue('Walnut, 24 leaves')
  await expect(page.getByRole('group', { name: 'Flitches of this job' })).toHaveCount(0)
})

test('a job of one’s own begins with leaves, by the keyboard alone', async ({ page }) => {
  await openFlitch(page)
  await page.getByText('Job', { exact: true }).click()
  await page.getByRole('button', { name: 'New job with my own leaves' }).click()
  await expect(page.getByRole('heading', { name: 'Begin with your own leaves' })).toBeVisible()
  await expect(page.getByLabel('Name', { exact: true })).toBeFocused()
  await page.keyboard.type('Pear')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  await page.keyboard.type('12 leaves, 1200 x 150 from 5')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: '12 leaves (mm)' })).toBeFocused()
  await expect(rows(page).first()).toHaveText('5')
  await undo(page).click()
  await expect(page.getByRole('heading', { name: 'Begin with your own leaves' })).toBeVisible()
})

test('a pasted table says which line is wrong, keeps the text, and is taken once mended', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '1\t2440\t200\n2\t2440\tabc\n3\t2440\t198')
  const box = page.getByLabel('Leaves', { exact: true })
  await expect(page.getByRole('alert')).toHaveText(/^Line 2, width: “abc” is not a length\./)
  await expect(box).toHaveValue('1\t2440\t200\n2\t2440\tabc\n3\t2440\t198')
  await box.fill('1\t2440\t200\n2\t2440\t200\tstained\n3\t2440\t198')
  await page.getByRole('button', { name: 'Make the flitch' }).click()
  await expect(rows(page)).toHaveCount(3)
  await expect(page.getByText('stained')).toBeVisible()
  await expect(page.getByText('All leaves but 1 have')).toBeVisible()
})

test('a crossed outline is refused with the reason, and the leaf stays as it was', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '4 leaves, 2440 x 200')
  await page.getByRole('button', { name: 'Leaf 2, open' }).click()
  await expect(page.getByRole('heading', { name: 'Leaf 2', exact: true })).toBeFocused()
  await page.getByText('4 points of the outline of leaf 2').click()
  await type(page, 'Point 1, across', '300')
  await expect(page.getByText(/crosses or touches itself at/).first()).toBeVisible()
  await expect(page.getByLabel('Point 1, across')).toHaveValue('0 mm')
  await expect(page.getByText('This leaf has the common outline.')).toBeVisible()

  await type(page, 'Point 1, across', '25')
  await expect(page.getByText('This leaf has an outline of its own.')).toBeVisible()
  await expect(page.getByText(/crosses or touches itself at/)).toHaveCount(0)
  await page.getByRole('button', { name: 'Add a point after point 1' }).click()
  await expect(page.getByText('5 points of the outline of leaf 2')).toBeVisible()
  await page.getByRole('button', { name: 'Give it the common outline' }).click()
  await expect(page.getByText('4 points of the outline of leaf 2')).toBeVisible()
})

test('sorting is a view: the sequence comes back with one button', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '2440\t200\n2440\t230\n2500\t180')
  const order = () => rows(page).evaluateAll((buttons) => buttons.map((button) => button.textContent?.trim()))
  await page.getByLabel('Order in which the leaves are shown').selectOption('widest first')
  await expect.poll(order).toEqual(['2', '1', '3'])
  await page.getByRole('button', { name: 'Back to the sequence' }).click()
  await expect.poll(order).toEqual(['1', '2', '3'])
})

test('a defect is put in its place by numbers and copied to the neighbours along their drift', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '4 leaves, 2440 x 200')
  await page.getByRole('button', { name: 'Leaf 3, open' }).click()
  await type(page, 'Drift along', '12')
  await page.getByRole('button', { name: 'Leaf 2 before' }).click()
  await page.getByRole('button', { name: 'Add a spot' }).click()
  await type(page, 'New defect, across from the left', '80')
  await type(page, 'New defect, along from the numbered end', '600')
  await type(page, 'New defect, radius', '15')
  await page.getByRole('button', { name: 'Add it to leaf 2' }).click()
  await expect(page.getByLabel('Defect 1, radius')).toHaveValue('15 mm')
  await page.getByRole('button', { name: 'Copy to the neighbouring leaves' }).click()
  await page.getByRole('button', { name: 'Copy to leaves 1 and 3' }).click()
  await page.getByRole('button', { name: 'Leaf 3 after' }).click()
  await expect(page.getByLabel('Defect 1, along from the numbered end')).toHaveValue('612 mm')
  await page.getByRole('button', { name: 'Remove', exact: true }).click()
  await expect(page.getByText('None known.')).toBeVisible()
  await undo(page).click()
  await expect(page.getByLabel('Defect 1, radius')).toHaveValue('15 mm')
})

test('leaves are put in place of others, and missing ones stand in the list', async ({ page }) => {
  await openFlitch(page)
  await makeFlitch(page, 'Ash', '4 leaves, 2440 x 200')
  await page.getByRole('button', { name: 'Leaf 2, open' }).click()
  await type(page, 'Leaves missing after this one', '2')
  await page.getByRole('button', { name: 'All leaves' }).click()
  await expect(page.getByRole('button', { name: 'Leaf 2, open' })).toBeFocused()
  await expect(page.getByText('2 leaves missing here')).toBeVisible()
  await page.getByText('More leaves, or others in their place').click()
  await page.getByLabel('Leaves', { exact: true }).fill('6 leaves, 2000 x 180')
  await page.getByRole('button', { name: 'Put them in place of these' }).click()
  await expect(rows(page)).toHaveCount(6)
  await expect(page.getByText('2 leaves missing here')).toBeVisible()
  await undo(page).click()
  await expect(rows(page)).toHaveCount(4)
})

test('a flitch that is in use is not removed, and the reason is said', async ({ page }) => {
  await openFlitch(page)
  await page.getByRole('button', { name: 'Remove this one' }).click()
  await expect(page.getByRole('alert')).toContainText('is used by “Door, far left”')
  await expect(rows(page)).toHaveCount(24)
})

test('nothing needs scrolling sideways', async ({ page }) => {
  await openFlitch(page)
  const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(await sideways()).toBeLessThanOrEqual(0)
  await page.getByRole('button', { name: 'Leaf 9, open' }).click()
  await page.getByRole('button', { name: 'Add an area' }).click()
  expect(await sideways()).toBeLessThanOrEqual(0)
})
