import { readFileSync } from 'node:fs'
import { expect, type Download, type Page } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { test } from './plain-grain'

const bytesOf = async (download: Download): Promise<Buffer> => readFileSync(await download.path())

async function saved(page: Page, button: RegExp): Promise<Buffer> {
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  return bytesOf(await waiting)
}

async function wordsOf(pdf: Buffer): Promise<string> {
  const file = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
  const first = await (await file.getPage(1)).getTextContent()
  await file.destroy()
  return first.items.map((item) => ('str' in item ? item.str : '')).join(' ')
}

async function type(page: Page, label: string, words: string): Promise<void> {
  await page.getByLabel(label).fill(words)
  await page.getByLabel(label).press('Enter')
}

test('a printer that prints short is measured, and every later sheet is drawn larger by what it lacks', async ({
  page,
}) => {
  await page.goto('/')
  await page.getByRole('button', { name: /^Cutting/ }).click()
  await page.getByText('Is the printer true?').click()
  expect(await wordsOf(await saved(page, /^Save the bars to measure, A4/))).toContain('150 mm across')
  await type(page, 'Name of the printer', 'Shop laser')
  await type(page, 'Bar across, drawn 150 mm', '100')
  await page.getByRole('button', { name: 'Remember Shop laser' }).click()
  await expect(page.getByText('The bar across can’t measure 100 mm: 120 mm to 187.5 mm')).toBeVisible()
  await type(page, 'Bar across, drawn 150 mm', '145.5')
  await page.getByRole('button', { name: 'Remember Shop laser' }).click()
  await expect(page.getByText(/145.5 mm for 150 mm across/)).toBeVisible()
  await expect(page.getByLabel('Printer', { exact: true })).toHaveValue('Shop laser')
  expect(await wordsOf(await saved(page, /^Save the PDF/))).toContain('Corrected +3.1 % × +0.0 %')

  await page.reload()
  await page.getByRole('button', { name: /^Cutting/ }).click()
  await expect(page.getByLabel('Printer', { exact: true })).toHaveValue('Shop laser')
  await page.getByText('Is the printer true?').click()
  await page.getByRole('button', { name: 'Forget Shop laser' }).click()
  await expect(page.getByLabel('Printer', { exact: true })).toHaveValue('')
})

test('viewfinders, and templates for a router, on a paper of one’s own', { tag: '@mouse' }, async ({ page }) => {
  await page.goto('/')
  await page.getByRole('button', { name: /^Cutting/ }).click()
  await page.getByLabel('Paper', { exact: true }).selectOption('Own size')
  await type(page, 'Short side', '600')
  await type(page, 'Long side', '900')
  await expect(page.getByRole('button', { name: /^Save the PDF: \d+ pages?, Own paper/ })).toBeVisible()

  await page.getByLabel('Viewfinders', { exact: true }).selectOption('printed too')
  const finders = page.getByRole('region', { name: 'To the leaves' })
  await expect(finders.getByRole('img', { name: /^Page Viewfinder 1/ })).toHaveCount(2, { timeout: 20_000 })
  await expect(finders.getByText('crown, to far end')).toHaveCount(2)
  await page.getByLabel('Viewfinders', { exact: true }).selectOption('not printed')
  await expect(finders).toHaveCount(0)

  await page.getByText('Templates for a machine').click()
  await page.getByLabel('Cut by').selectOption('a router in a guide bush')
  await expect(page.getByText('The line is 5.5 mm inside the edge of the rough piece.')).toBeVisible()
  expect((await saved(page, /^Save DXF/)).toString()).toContain('LWPOLYLINE')
  await type(page, 'Cutter', '20')
  await expect(page.getByText('The bush must be wider than the cutter.')).toBeVisible()
  await page.getByLabel('Cut by').selectOption('a beam or a cutter led by a machine')
  await expect(page.getByText('The line is 0.1 mm outside the edge of the rough piece.')).toBeVisible()
  expect((await saved(page, /^Save SVG/)).toString()).toContain('<g id="cut">')
})
