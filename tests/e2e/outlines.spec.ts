import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })
const shape = (page: Page) => page.getByLabel('Outline of the panel')

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="360mm" height="520mm" viewBox="0 0 360 520">
  <circle cx="40" cy="40" r="10"/><path d="M0 0h360v520h-200v-300h-160z"/></svg>`

test('a panel gets an arch, becomes a circle, takes its outline from a file, and all of it is undone', async ({
  page,
}) => {
  await page.goto('/')
  await page.getByRole('button', { name: /^Parts/ }).click()
  await expect(shape(page)).toHaveValue('rectangle')

  await shape(page).selectOption('arch top')
  const rise = page.getByLabel('Rise of the arch')
  await rise.fill('400')
  await rise.press('Enter')
  await expect(page.getByText(/rise is 400 mm; 186 mm is the most/).first()).toBeVisible()
  await rise.fill('90')
  await rise.press('Enter')
  await expect(page.getByRole('img', { name: 'The panel, an arch top, within the sheet as taped' })).toBeVisible()

  await shape(page).selectOption('circle')
  await expect(page.getByRole('button', { name: /^Door, far left 372 × 372 mm/ })).toBeVisible()

  const file = page.getByLabel('From an SVG or DXF file')
  await file.setInputFiles({ name: 'letters.svg', mimeType: 'image/svg+xml', buffer: Buffer.from('letters') })
  await expect(page.getByText(/letters\.svg can’t be read as an SVG file/)).toBeVisible()
  await file.setInputFiles({ name: 'door.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(SVG) })
  await expect(
    page.getByText('Taken from door.svg, in millimetres, as the file states. It has 2 closed shapes'),
  ).toBeVisible()
  await expect(shape(page)).toHaveValue('drawn')
  await expect(page.getByRole('button', { name: /^Door, far left 360 × 520 mm/ })).toBeVisible()

  const corners = page.getByLabel('Corners')
  await expect(corners).toHaveValue(/^−180; −260\n/)
  await corners.fill('0; 0\n300; 0\n0; 300\n300; 300')
  await corners.blur()
  await expect(page.getByText(/crosses or touches itself/).first()).toBeVisible()
  await corners.fill('0; 0\n300; 0; 0.3\n300; 400\n0; 400')
  await corners.blur()
  await expect(page.getByRole('button', { name: /^Door, far left 360 × 400 mm/ })).toBeVisible()

  while (await undo(page).isEnabled()) await undo(page).click()
  await expect(shape(page)).toHaveValue('rectangle')
  await expect(page.getByRole('button', { name: /^Door, far left 372 × 560 mm/ })).toBeVisible()
})
