import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

const goTo = (page: Page, station: string) =>
  page
    .getByRole('navigation')
    .getByRole('button', { name: new RegExp(`^${station}`) })
    .click()

/** Drags the window along the leaf by so many mm, as far as the board lets it go. */
async function dragWindow(page: Page, leaf: number, mm: number): Promise<void> {
  const board = page.getByRole('img', { name: new RegExp(`^Leaf ${leaf} with the window`) })
  await board.scrollIntoViewIfNeeded()
  const box = (await board.boundingBox())!
  const place = Number(/(\d+) mm from the numbered end/.exec((await board.getAttribute('aria-label'))!)![1])
  // the leaf is 2400 long and is drawn between its number and the end of the board
  const [left, right] = [box.x + box.width * 0.1, box.x + box.width * 0.965]
  const perMm = (right - left) / 2400
  const [x, y] = [left + place * perMm, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let i = 1; i <= 6; i++) await page.mouse.move(x + (mm * perMm * i) / 6, y)
  await page.mouse.up()
}

test('a split is dragged out of the show area and its repair disappears', { tag: '@mouse' }, async ({ page }) => {
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
  await goTo(page, 'Cutting')
  await page.getByLabel('Part', { exact: true }).selectOption('door-2')
  const repairs = page.getByRole('list', { name: 'Repairs in working order' })
  const waste = page.getByRole('list', { name: 'Defects that fall in the waste' })
  await expect(waste.getByText(/^Leaf 5: split/)).toBeVisible()
  await expect(repairs).toHaveCount(0)

  await goTo(page, 'Face')
  await dragWindow(page, 5, 1420)
  await goTo(page, 'Cutting')
  await expect(repairs.getByText(/Split, open at the far end, 102 mm long, square/)).toBeVisible()
  // leaf 5 is turned over, leaf 6 lies number up: their show sides are different faces
  await expect(repairs.getByRole('listitem').filter({ hasText: 'Leaf 5' })).toContainText('the other face (show side)')
  await expect(repairs.getByRole('listitem').filter({ hasText: 'Leaf 6' })).toContainText(
    'the numbered face (show side)',
  )

  await goTo(page, 'Face')
  await dragWindow(page, 5, -900)
  await goTo(page, 'Cutting')
  await expect(repairs).toHaveCount(0)
  await expect(waste.getByText(/^Leaf 5: split/)).toBeVisible()
})

test('a cut marked done can’t be moved, until the tick is taken off', { tag: '@mouse' }, async ({ page }) => {
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
  await goTo(page, 'Cutting')
  const leaf = page.getByRole('checkbox', { name: /^Leaf 3, R1: / })
  await expect(page.getByText('Leaf 3, R1: safe')).toBeVisible()
  await leaf.check()
  await expect(page.getByText('Leaf 3, R1: done')).toBeVisible()

  await goTo(page, 'Face')
  const board = page.getByRole('img', { name: /^Leaf 3 with the window/ })
  const before = await board.getAttribute('aria-label')
  await dragWindow(page, 3, 200)
  await expect(
    page.getByText(/Leaf 3 is cut for R1 of “Door, far left”, and this needs [\d.]+ mm of wood beyond/),
  ).toBeVisible()
  expect(await board.getAttribute('aria-label')).toBe(before)
  // what does not touch the piece goes on
  await page.getByLabel('Leaf in L1').selectOption('15')
  await expect(page.getByLabel('Leaf in L1')).toHaveValue('15')
  await page.getByLabel('Leaf in R1').selectOption('16')
  await expect(page.getByText(/this would take another leaf there/)).toBeVisible()
  await page.getByRole('button', { name: /^Undo/ }).click()

  await goTo(page, 'Cutting')
  const other = page.getByRole('checkbox', { name: /^Leaf 4, L1: / })
  const finished = page.getByRole('checkbox', { name: /^Panel finished/ })
  await expect(finished).toBeDisabled()
  await other.check()
  await finished.check()
  await expect(page.getByRole('navigation').getByText(/ready to cut, 1 finished$/)).toBeVisible()
  await expect(other).toBeDisabled()
  await page.locator('summary', { hasText: 'What is left of these leaves' }).click()
  // both leaves give the lamp table a wedge, which is not finished: what is left of them is stock yet
  await expect(page.getByRole('list', { name: 'Offcuts worth keeping' })).toBeVisible()
  await finished.uncheck()
  await other.uncheck()
  await leaf.uncheck()
  await expect(page.getByText('Leaf 3, R1: safe')).toBeVisible()
  await goTo(page, 'Face')
  await dragWindow(page, 3, 200)
  expect(await board.getAttribute('aria-label')).not.toBe(before)
})
