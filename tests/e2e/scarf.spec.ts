import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

const menu = async (page: Page, action: string) => {
  await page.locator('summary', { hasText: 'Job' }).click()
  await page.getByRole('button', { name: action }).click()
}

/** Opens a job of one door on ten leaves of 1000, the third of which has lost its end. */
async function openShort(page: Page, leafLength: number): Promise<void> {
  const job = {
    format: 'leafturn job',
    version: 1,
    name: 'Door with a broken leaf',
    flitches: [
      {
        species: 'American walnut (Juglans nigra)',
        leaves: 10,
        size: [300, 1000],
        differing: [
          {
            number: 3,
            outline: [
              [0, 0],
              [300, 0],
              [300, leafLength],
              [0, leafLength],
            ],
          },
        ],
      },
    ],
    parts: [
      {
        name: 'Door',
        width: 900,
        length: 880,
        recipe: { pattern: 'strips', arrangement: 'centre balance', count: 4, firstLeaf: 1 },
      },
    ],
  }
  const chosen = page.waitForEvent('filechooser')
  await menu(page, 'Open a file…')
  const buffer = Buffer.from(JSON.stringify(job))
  await (await chosen).setFiles({ name: 'short.leafturn', mimeType: 'application/octet-stream', buffer })
  await page.getByRole('button', { name: /^Face/ }).first().click()
  await expect(page.getByText(/Leaf 3 is .* short/).first()).toBeVisible()
}

const ask = (page: Page) => page.getByRole('button', { name: 'What would make it fit?' })
const ways = (page: Page) => page.getByRole('group', { name: 'Ways to make it fit' })
const looking = (page: Page) => page.getByRole('progressbar')
const wrong = (page: Page) => page.locator('.told li.wrong')

test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined })
  })
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
})

test('a leaf 60 mm too short becomes whole by a scarf, in one step that can be undone', async ({ page }) => {
  await openShort(page, 840)
  await ask(page).click()
  await expect(page.getByText(/Leaf 3 governs the run. Without it the others could move 100 mm along/)).toBeVisible()
  await ways(page)
    .getByRole('button', { name: /^Scarf the leaf of/ })
    .click()
  await expect(wrong(page)).toHaveCount(0)
  await expect(page.getByText(/Leaf 3 is scarfed: the figure steps [\d.]+ mm across/)).toBeVisible()
  const work = page.getByRole('region', { name: 'Leaf 3: made longer by a scarf' })
  await expect(work).toContainText(/mark a straight line from .* 1 in \d+\.\d to the grain/)
  await expect(work).toContainText(/slide the far half \d+ mm along the cut/)
  await expect(work.getByRole('img', { name: /Leaf 3, numbered side up, with the lines to cut on/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Window/ })).toBeVisible()
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(work).toHaveCount(0)
  await expect(page.getByText(/Leaf 3 is .* short/).first()).toBeVisible()
})

test('a face that cannot be made says why, and each way that is offered works', { tag: '@mouse' }, async ({ page }) => {
  await openShort(page, 895)
  await ask(page).click()
  await expect(ways(page)).toBeVisible()
  await expect(looking(page)).toHaveCount(0)
  const names = await ways(page).getByRole('button').allInnerTexts()
  const order = [/less over at the/, /^Use leaf/, /^Start at leaf/, /^Scarf/]
  const ranks = names.map((name) => order.findIndex((words) => words.test(name.trim())))
  expect(ranks).toEqual([...ranks].sort((p, q) => p - q))
  expect(new Set(ranks)).toEqual(new Set([0, 1, 2, 3]))
  for (const name of names) {
    // what was found for the job as it was is still there after the undo
    await ways(page).getByRole('button', { name: name.trim(), exact: true }).click()
    await expect(wrong(page), name).toHaveCount(0)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(ways(page)).toBeVisible()
  }
})

test('where no scarf helps, the most is said', { tag: '@mouse' }, async ({ page }) => {
  await openShort(page, 500)
  await ask(page).click()
  await expect(looking(page)).toHaveCount(0)
  await expect(page.getByText(/No scarf found (gives .* the widest is|makes the leaves)/)).toBeVisible()
})

test(
  'faces to pick from are laid beside the page, and one is taken with the keyboard',
  { tag: '@mouse' },
  async ({ page }) => {
    await openShort(page, 895)
    await page.locator('summary', { hasText: 'Faces to pick from' }).click()
    await page.getByRole('button', { name: 'Look for faces' }).click()
    const most = page.getByRole('button', { name: /Most room to move/ })
    await expect(most).toBeVisible()
    await expect(looking(page)).toHaveCount(0)
    await expect(page.getByText(/Largest strip along the grain of each leaf/)).toBeVisible()
    // these leaves have no pictures
    await expect(page.getByText('Most symmetric')).toHaveCount(0)
    await most.focus()
    await page.keyboard.press('Enter')
    await expect(wrong(page)).toHaveCount(0)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(page.getByText(/Leaf 3 is .* short/).first()).toBeVisible()
  },
)
