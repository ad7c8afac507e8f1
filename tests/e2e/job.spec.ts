import fs from 'node:fs'
import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

test.beforeEach(async ({ page }) => {
  // files come and go as downloads and uploads: the system's own dialogs can't be steered from here
  await page.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined })
  })
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
})

const menu = async (page: Page, action: string) => {
  await page.locator('summary', { hasText: 'Job' }).click()
  await page.getByRole('button', { name: action }).click()
}

async function openFile(page: Page, name: string, bytes: Buffer): Promise<void> {
  const chosen = page.waitForEvent('filechooser')
  await menu(page, 'Open a file…')
  await (await chosen).setFiles({ name, mimeType: 'application/octet-stream', buffer: bytes })
}

const leavesField = (page: Page) => page.getByRole('textbox', { name: 'Number of leaves' })

test('a job is saved to a file and opened again', async ({ page }) => {
  await leavesField(page).fill('4')
  await leavesField(page).press('Enter')
  const downloading = page.waitForEvent('download')
  await menu(page, 'Save as a file')
  const download = await downloading
  expect(download.suggestedFilename()).toBe('Music-room sideboard.leafturn')
  const bytes = fs.readFileSync(await download.path())

  await menu(page, 'New job with my own leaves')
  await expect(page.getByRole('heading', { name: 'New job' })).toBeVisible()
  await openFile(page, 'mine.leafturn', bytes)
  await page.getByRole('button', { name: /^Face/ }).first().click()
  await expect(leavesField(page)).toHaveValue('4')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(page.getByRole('heading', { name: 'New job' })).toBeVisible()
})

test('a broken file is refused with the reason, and the job stays', async ({ page }) => {
  await openFile(page, 'holiday.leafturn', Buffer.from('no job at all'))
  await expect(page.getByRole('alert')).toContainText('“holiday.leafturn” was not opened')
  await expect(page.getByRole('heading', { name: 'Music-room sideboard' })).toBeVisible()
  await page.getByRole('button', { name: 'Close' }).click()

  const crossed = {
    format: 'leafturn job',
    version: 1,
    flitches: [
      {
        leaves: 2,
        outline: [
          [0, 0],
          [300, 2400],
          [300, 0],
          [0, 2400],
        ],
      },
    ],
  }
  await openFile(page, 'crossed.json', Buffer.from(JSON.stringify(crossed)))
  await expect(page.getByRole('alert')).toContainText(/outline/)
  await expect(page.getByRole('alert')).toContainText(/cross/)
})

test('everything is undone, step by step, and each step says what it was', async ({ page }) => {
  await leavesField(page).fill('4')
  await leavesField(page).press('Enter')
  await page.getByLabel('Match').selectOption('slip')
  const undo = page.getByRole('button', { name: /^Undo/ })
  await expect(undo).toHaveAttribute('title', 'Undo: Door, far left: slip match')
  await undo.click()
  await expect(undo).toHaveAttribute('title', 'Undo: Door, far left: 4 leaves')
  await undo.click()
  await expect(undo).toBeDisabled()
  await expect(leavesField(page)).toHaveValue('2')
})

test('the templates are saved as a PDF', async ({ page }) => {
  await page
    .getByRole('button', { name: /^Cutting/ })
    .first()
    .click()
  await page.getByLabel('Paper').selectOption({ label: 'A3' })
  await expect(page.getByRole('img', { name: 'Page Seam map' })).toBeVisible()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: /^Save the PDF: \d+ pages, A3/ }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('Door, far left, A3.pdf')
  const bytes = fs.readFileSync(await download.path())
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
  expect(bytes.length).toBeGreaterThan(20_000)
})

test('a leaf’s number dragged onto another cell swaps the two @mouse', async ({ page }) => {
  const board = page.getByRole('img', { name: /^Face of Door, far left/ })
  await expect(board).toHaveAttribute('aria-label', /Leaves: 4, 3 turned over/)
  const tag = await whiteTag(page)
  await page.mouse.move(tag.x, tag.y)
  await page.mouse.down()
  // anywhere on the wood of the other half will do
  for (let i = 1; i <= 10; i++) await page.mouse.move(tag.x + 14 * i, tag.y + 6 * i)
  await page.mouse.up()
  await expect(board).toHaveAttribute('aria-label', /Leaves: 3, 4 turned over/)
  await expect(page.getByText(/they lie the other way round in the log/)).toBeVisible()
})

/** The middle of the white tag in the upper half of the face: the only pure white of any size there. */
const whiteTag = (page: Page) =>
  page.evaluate(() => {
    const board = document.querySelector('[role=img][aria-label^="Face of"]')!
    for (const canvas of board.querySelectorAll('canvas')) {
      const { width, height } = canvas
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, Math.floor(height / 2))
      const white: { x: number; y: number }[] = []
      for (let i = 0; i < data.length; i += 4)
        if (data[i]! + data[i + 1]! + data[i + 2]! + data[i + 3]! === 1020)
          white.push({ x: (i / 4) % width, y: Math.floor(i / 4 / width) })
      if (white.length < 200) continue
      const box = canvas.getBoundingClientRect()
      const mean = (axis: 'x' | 'y') => white.reduce((sum, p) => sum + p[axis], 0) / white.length
      return { x: box.x + (mean('x') * box.width) / width, y: box.y + (mean('y') * box.height) / height }
    }
    throw new Error('there is no white tag')
  })
