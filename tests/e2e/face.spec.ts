import { expect, type Page } from '@playwright/test'
import { keptJob } from './kept-job'
import { test } from './plain-grain'

const windowStart = async (page: Page): Promise<number> => {
  const text = await page.getByRole('button', { name: /^Window/ }).innerText()
  return Number(/([\d]+) mm/.exec(text)![1])
}

test.beforeEach(async ({ page }) => {
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
})

test('the first screen is a face with its centre seam on the centre', async ({ page }) => {
  await expect(page.getByText('Seam A lies on the panel’s centre, 186 mm from both edges.')).toBeVisible()
  await expect(page.getByRole('img', { name: /Face of Door, far left, 372 mm by 560 mm, 1 seam/ })).toBeVisible()
})

test('the window is moved with the keyboard, finely and far, and every step can be undone', async ({ page }) => {
  const window = page.getByRole('button', { name: /^Window/ })
  const before = await windowStart(page)
  await window.focus()
  await window.press('ArrowRight')
  expect(await windowStart(page)).toBe(before + 1)
  await window.press('Shift+ArrowRight')
  expect(await windowStart(page)).toBe(before + 11)
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  expect(await windowStart(page)).toBe(before)
  await page.keyboard.press('Control+y')
  expect(await windowStart(page)).toBe(before + 1)
})

test('the window is dragged on the leaf and sticks at the border of its room', async ({ page, hasTouch }) => {
  const before = await windowStart(page)
  const leaf = page.getByRole('img', { name: /^Leaf 3 with the window/ })
  await leaf.scrollIntoViewIfNeeded()
  const box = (await leaf.boundingBox())!
  const label = (await leaf.getAttribute('aria-label'))!
  const place = Number(/(\d+) mm from the numbered end/.exec(label)![1])
  // the leaf is 2400 long and fills the width between its number and the end
  await drag(page, hasTouch, windowMiddle(box, place), 40)
  const after = await windowStart(page)
  expect(after).toBeGreaterThan(before + 40)
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: /^Undo/ }).click()
  expect(await windowStart(page)).toBe(before)
})

test(
  'a border is laid, widened, moved on its own leaf, taken away and brought back, and cut from another flitch',
  { tag: '@mouse' },
  async ({ page }) => {
    await page.getByText('Border', { exact: true }).click()
    await page.getByRole('button', { name: 'Lay a border round this face' }).click()
    await expect(page.getByText('10 pieces from leaf 5.')).toBeVisible()
    const width = page.getByLabel('Width of the border')
    await width.fill('200')
    await width.press('Enter')
    await expect(page.getByText(/takes 200 mm off every edge.*leaves no whole field inside/)).toBeVisible()
    await width.fill('75')
    await width.press('Enter')
    await expect(page.getByText('75 mm', { exact: true })).toBeVisible()
    const field = await windowStart(page)
    await page.getByText('border', { exact: true }).click()
    const before = await windowStart(page)
    expect(before).not.toBe(field)
    await page.getByRole('button', { name: /^Window/ }).press('Shift+ArrowLeft')
    expect(await windowStart(page)).toBe(before - 10)
    const leaf = page.getByRole('img', { name: /^Leaf 5 with the window of .*, its border/ })
    const place = Number(/(\d+) mm from the numbered end/.exec((await leaf.getAttribute('aria-label'))!)![1])
    await drag(page, false, windowMiddle((await leaf.boundingBox())!, place), 40)
    expect(await windowStart(page)).toBeGreaterThan(before + 30)
    await page.getByText('field', { exact: true }).click()
    expect(await windowStart(page)).toBe(field)
    await page.getByRole('button', { name: 'Take the border away' }).click()
    await expect(page.getByRole('button', { name: 'Lay a border round this face' })).toBeVisible()
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(width).toHaveValue('75 mm')
    // the same border from a flitch of its own, whose leaves are numbered from 1 too
    await page.getByRole('button', { name: /^Flitch/ }).click()
    await page.getByRole('button', { name: 'Add a flitch' }).click()
    await page.getByLabel('Name', { exact: true }).fill('Maple')
    await page.getByLabel('Leaves', { exact: true }).fill('6 leaves, 900 x 300')
    await page.getByRole('button', { name: 'Make the flitch' }).click()
    await page.getByRole('button', { name: /^Face/ }).click()
    await page.getByText('Border', { exact: true }).click()
    await page.getByLabel('Flitch of the border').selectOption('“Maple”')
    await expect(page.getByText('10 pieces from leaves 1 and 2 of “Maple”.')).toBeVisible()
    await page.getByText('border', { exact: true }).click()
    await expect(page.getByRole('img', { name: /^Leaf 1 of “Maple” with the window of .*, its border/ })).toBeVisible()
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(page.getByText('10 pieces from leaf 5.')).toBeVisible()
  },
)

/** The window's middle on the leaf board: the board draws the leaf at the largest scale that fits. */
function windowMiddle(box: { x: number; y: number; width: number; height: number }, place: number) {
  const left = box.x + box.width * 0.1
  const right = box.x + box.width * 0.965
  return { x: left + ((right - left) * place) / 2400, y: box.y + box.height / 2 }
}

async function drag(page: Page, touch: boolean, from: { x: number; y: number }, by: number): Promise<void> {
  if (!touch) {
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    for (let i = 1; i <= 8; i++) await page.mouse.move(from.x + (by * i) / 8, from.y)
    await page.mouse.up()
    return
  }
  const cdp = await page.context().newCDPSession(page)
  const touchAt = (x: number) => [{ x, y: from.y, id: 1 }]
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: touchAt(from.x) })
  for (let i = 1; i <= 8; i++)
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: touchAt(from.x + (by * i) / 8) })
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
}

test('the recipe is a sentence whose values are fields', async ({ page }) => {
  await page.getByRole('textbox', { name: 'Number of leaves' }).fill('3')
  await page.getByRole('textbox', { name: 'Number of leaves' }).press('Enter')
  await expect(
    page.getByText('3 leaves put a leaf on the centre, not a seam. Take 4 or 2 for a seam on the centre.'),
  ).toBeVisible()
  await page.getByRole('button', { name: 'Take 4 leaves' }).click()
  await expect(page.getByText('Seam B lies on the panel’s centre, 186 mm from both edges.')).toBeVisible()
  await page.getByLabel('Match').selectOption('slip')
  await expect(page.getByText('The figure repeats at all 3 seams, as a slip match does.')).toBeVisible()
  await page.getByLabel('Arrangement').selectOption('four-way')
  await expect(page.getByText('The seams cross on the panel’s centre.')).toBeVisible()
  await page.getByLabel('Arrangement').selectOption('radial')
  await expect(page.getByRole('img', { name: /Face of Door/ })).toBeVisible()
})

test('a length that is none is refused with a sentence and changes nothing', async ({ page }) => {
  const over = page.getByLabel('Overhang at the sides')
  await over.fill('abc')
  await over.press('Enter')
  await expect(page.getByText(/Overhang at the sides: “abc” is not a length/)).toBeVisible()
  await over.press('Escape')
  await expect(over).toHaveValue('6 mm')
  await over.fill('1/2 in')
  await over.press('Enter')
  await expect(over).toHaveValue('12.5 mm')
})

test('leaves are swapped, and come back to the run', async ({ page }) => {
  await page.getByLabel('Leaf in L1').selectOption('9')
  await expect(page.getByText(/Leaf 9 follows leaf 3|Leaf 3 follows leaf|Leaf 9/).first()).toBeVisible()
  expect((await keptJob(page)).parts[0]!.chosen).toEqual({ L1: 9 })
  await page.getByRole('button', { name: 'Back to the run’s own order' }).first().click()
  await expect(page.getByRole('button', { name: 'Back to the run’s own order' })).toHaveCount(0)

  // another door follows this one across a gap
  const pair = page.locator('details', { has: page.getByRole('heading', { name: 'Pair', exact: true }) })
  await pair.locator('summary').click()
  await pair.getByLabel('Part that follows this one').selectOption('Door, left')
  await pair.getByRole('button', { name: 'Pair them' }).click()
  await expect(page.getByText(/Across the gap to “Door, left” the figure mirrors; .* 15 mm is lost/)).toBeVisible()
  await expect(page.getByRole('img', { name: /Door, left hangs at the right, across a gap of 3 mm/ })).toBeVisible()
  await pair.getByLabel('How the two meet').selectOption('from the same leaves')
  await expect(page.getByText(/the figure runs on from the same leaves, but jumps 12 mm/)).toBeVisible()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByText(/Across the gap to “Door, left” the figure mirrors/)).toBeVisible()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByText(/Across the gap/)).toHaveCount(0)
})

test('a face that cannot be says what is missing and what would mend it', async ({ page }) => {
  await page.getByLabel('Arrangement').selectOption('balance')
  const count = page.getByRole('textbox', { name: 'Number of leaves' })
  await count.fill('1')
  await count.press('Enter')
  await expect(page.getByText(/There is no place where all pieces lie in sound wood/)).toBeVisible()
  await expect(page.getByText(/Leaf 3 is [\d.]+ mm too narrow at its (left|right) edge/).first()).toBeVisible()
  await page.getByRole('button', { name: 'What would make it fit?' }).click()
  await page.getByRole('group', { name: 'Ways to make it fit' }).getByRole('button').first().click()
  await expect(page.getByText(/There is no place where all pieces lie in sound wood/)).toHaveCount(0)
})

test('everything is there again after reloading', async ({ page }) => {
  await page.getByRole('textbox', { name: 'Number of leaves' }).fill('4')
  await page.getByRole('textbox', { name: 'Number of leaves' }).press('Enter')
  await expect.poll(async () => (await keptJob(page)).parts.length).toBeGreaterThan(0)
  await page.reload()
  await expect(page.getByRole('textbox', { name: 'Number of leaves' })).toHaveValue('4')
})
