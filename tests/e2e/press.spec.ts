import { readFileSync } from 'node:fs'
import { expect, type Page } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { test } from './plain-grain'

const press = (page: Page) => page.getByRole('navigation').getByRole('button', { name: /^Press/ })
const fold = (page: Page, title: string) =>
  page.locator('summary').filter({ has: page.getByRole('heading', { name: title, exact: true }) })

async function type(page: Page, label: string, words: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).fill(words)
  await page.getByLabel(label, { exact: true }).press('Enter')
}

async function atPress(page: Page): Promise<void> {
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
  await press(page).click()
}

/** How far the panel bows in the driest season over its width, in half millimetres as it is told. */
async function driestBow(page: Page): Promise<number> {
  const told = await page.getByRole('img', { name: /^Over the width/ }).getAttribute('aria-label')
  const words = /driest season about (\d*)(½?) mm at most, hollow on the show face/.exec(told ?? '')
  expect(words, told ?? '').not.toBeNull()
  return 2 * Number(words![1]) + (words![2] ? 1 : 0)
}

test('a build-up, its backer taken away, another season, and all of it undone', { tag: '@mouse' }, async ({ page }) => {
  await atPress(page)
  const curve = page.getByRole('img', { name: /^Over the width/ })
  await expect(page.getByText('The panel is balanced: from both sides the same.')).toBeVisible()
  await expect(curve).toHaveAccessibleName(/driest season flat; dampest season flat/)
  await expect(press(page)).toContainText('10 parts, all in order')

  // a board in inches, and a part of an inch of veneer on both sides
  await fold(page, 'Layers').click()
  await type(page, 'Layer 2, thickness', '3/4 in')
  await page.getByLabel('Layer 1, nominal thickness').selectOption('1/28 in, 0.91 mm')
  await expect(page.getByText('The face is 0.91 mm and the backer 0.6 mm', { exact: false }).first()).toBeVisible()
  await page.getByLabel('Layer 3, nominal thickness').selectOption('1/28 in, 0.91 mm')
  await expect(page.getByText('The layers add up to 20.86 mm.').first()).toBeVisible()

  await page.getByRole('group', { name: 'Layer 3' }).getByRole('button', { name: 'Take away' }).click()
  await expect(page.getByText(/^There is nothing on the back: glue on a backer like the face, 0.91 mm/)).toBeVisible()
  await expect(press(page)).toContainText('1 of 10 parts to mend')
  const usual = await driestBow(page)
  expect(usual).toBeGreaterThanOrEqual(1)

  await fold(page, 'The year').click()
  await type(page, 'Humidity in the driest season', '2000')
  await expect(page.getByText('“2000” is more than 98 %, the most it can be.')).toBeVisible()
  await type(page, 'Humidity in the driest season', '12')
  expect(await driestBow(page)).toBeGreaterThan(usual)
  await page.getByRole('button', { name: 'Put the same on the back' }).click()
  await expect(curve).toHaveAccessibleName(/driest season flat; dampest season flat/)

  // each decision is a step of its own
  await page.getByRole('button', { name: /^Undo/ }).click()
  await page.getByRole('button', { name: /^Undo/ }).click()
  expect(await driestBow(page)).toBe(usual)
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(page.getByText('The panel is balanced: from both sides the same.')).toBeVisible()
})

test('a cold shop, a small bag, an edge lipped first, and the press sheet', { tag: '@mouse' }, async ({ page }) => {
  await atPress(page)
  const mind = page.getByRole('list', { name: 'What to mind' })
  await type(page, 'Temperature of the core', '59 °F')
  await expect(mind).toContainText('The cores are at 15 °C (59 °F), and plastic resin needs 21 °C (70 °F)')
  await expect(page.getByLabel('Temperature of the core')).toHaveValue('15 °C')
  await fold(page, 'Glue').click()
  await page.getByRole('radio', { name: /^PVA glue/ }).check()
  await expect(page.getByLabel('Glue', { exact: true })).toHaveValue('PVA')
  await expect(page.getByText(/^For 2 glue lines: \d+ g, \d+ ml or [\d.]+ US fl oz of PVA/)).toBeVisible()
  // what its maker says goes before the general figure
  await fold(page, 'From the glue’s own data sheet').click()
  await type(page, 'Least temperature', '18')
  await expect(mind).toContainText('PVA needs 18 °C')

  await fold(page, 'Pressing').click()
  await type(page, 'Platen, width', '300')
  await type(page, 'Platen, length', '400')
  await expect(mind).toContainText(/The core is \d+ mm too large for the platen/)
  await page.getByLabel('Way of pressing').selectOption('leaf by leaf with the hammer')
  await expect(page.getByText(/^1. Leaf on strip \d from the left/)).toBeVisible()
  await expect(page.getByText(/too large for the platen/)).toHaveCount(0)
  await page.getByLabel('Way of pressing').selectOption('in the vacuum bag')

  await fold(page, 'Edges').click()
  const board = page.getByText(/^Cut the board/)
  await page.getByLabel('Left side, edge').selectOption('bare')
  const before = await board.textContent()
  await page.getByLabel('Left side, edge').selectOption('lipped, then faced over')
  await type(page, 'Left side, thickness', '10')
  await expect(board).not.toHaveText(before ?? '')
  const width = (words: string | null) => Number(/board ([\d.]+) mm/.exec(words ?? '')![1])
  // the board makes room for the lipping
  expect(width(before) - width(await board.textContent())).toBeCloseTo(10, 1)
  await page.getByRole('button', { name: /^Undo/ }).click()
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(board).toHaveText(before ?? '')

  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: /^Save the press sheet/ }).click()
  const file = await getDocument({
    data: new Uint8Array(readFileSync(await (await waiting).path())),
    verbosity: 0,
  }).promise
  const words = (await (await file.getPage(1)).getTextContent()).items
    .map((item) => ('str' in item ? item.str : ''))
    .join(' ')
  await file.destroy()
  expect(words).toContain('Door, far left')
  expect(words).toContain('black walnut')
  expect(words).toContain('Draw centre lines on all four edges of the core')
  expect(words).toContain('with PVA')
})
