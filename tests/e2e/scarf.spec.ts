import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

const menu = async (page: Page, action: string) => {
  await page.locator('summary', { hasText: 'Job' }).click()
  await page.getByRole('button', { name: action }).click()
}

/** Opens a job of one door whose third leaf has lost its end. */
async function openShort(page: Page, leafLength: number): Promise<void> {
  const job = {
    format: 'leafturn job',
    version: 1,
    name: 'Door with a broken leaf',
    flitches: [
      {
        species: 'American walnut (Juglans nigra)',
        leaves: 6,
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
}

test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined })
  })
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
})

test('a leaf about 60 mm too short is told the scarf that makes it whole, and the job stays as it is', async ({
  page,
}) => {
  await openShort(page, 860)
  const section = page.getByRole('region', { name: 'A leaf too short' })
  await section.getByRole('button', { name: 'What would a scarf give?' }).click()
  await expect(section).toContainText(/Leaf 3 cut at a slant and slid gives \d+ mm by [\d.]+ mm/)
  await expect(section).toContainText(/1 in \d+\.\d to the grain/)
  await expect(section).toContainText(/slide the far half \d+ mm along the cut/)
  const text = await section.innerText()
  const [, width] = /gives \d+ mm by ([\d.]+) mm/.exec(text)!
  const [, needed] = /piece needs \d+ mm by (\d+) mm/.exec(text)!
  expect(Number(width)).toBeGreaterThanOrEqual(Number(needed) - 0.5)
  await expect(section.getByRole('img', { name: 'Leaf 3, numbered side up, with the line to cut on' })).toBeVisible()
  await expect(section.getByRole('img', { name: /The halves slid along the cut/ })).toBeVisible()
  await expect(page.getByText(/Leaf 3 is .* short/).first()).toBeVisible()
})

test('a leaf far too short is told the most that a scarf would give', async ({ page }) => {
  await openShort(page, 600)
  const section = page.getByRole('region', { name: 'A leaf too short' })
  await section.getByRole('button', { name: 'What would a scarf give?' }).click()
  await expect(section).toContainText(/No scarf found on leaf 3 gives .* The widest found at that length is [\d.]+ mm/)
})

test('a face that fits says nothing of scarfs', async ({ page }) => {
  await expect(page.getByRole('heading', { name: 'A leaf too short' })).toHaveCount(0)
})
