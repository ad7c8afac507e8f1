/** [I7] [I8] Photographs become leaves with pictures, outlines and defects; all of it is undone step by step. */
import { expect, type Page } from '@playwright/test'
import { composePhoto, photoSet, TUNING_TABLES } from '../photographs/compose'
import { emptyPng, pngOf } from '../photographs/png'
import { test } from './plain-grain'

/** Long enough for a seam that one slide can be told of; maple, whose figure hardly wanders from leaf to leaf. */
const [plain] = photoSet(TUNING_TABLES, 500, 1).map((options) => ({
  ...options,
  species: 'maple' as const,
  width: 840,
  height: 400,
  leafLength: 760,
  noise: 1,
  blocks: 0,
}))
if (!plain) throw new Error('a set of one photograph has one')

async function typeLength(page: Page, label: string, mm: number): Promise<void> {
  const field = page.getByLabel(label, { exact: true })
  await field.fill(String(mm))
  await field.press('Enter')
}

const card = (page: Page, leaf: number) =>
  page.getByRole('article', { name: `Photograph of leaf ${leaf}`, exact: true })
const take = (page: Page, leaf: number) => card(page, leaf).getByRole('button', { name: 'Take picture and outline' })

test('photographs become leaves, and all is undone', { tag: '@mouse' }, async ({ page }) => {
  test.setTimeout(180_000)
  const shots = [1, 2, 3].map((leaf) => composePhoto({ ...plain, leaf }))
  const bare = composePhoto({ ...plain, leaf: 4, withMarks: false })
  const first = shots[0]!
  const file = (name: string, buffer: Buffer, mimeType = 'image/png') => ({ name, mimeType, buffer })

  await page.goto('/')
  await page.getByRole('button', { name: /^Flitch/ }).click()
  await page.getByRole('button', { name: 'Add a flitch' }).click()
  await page.getByLabel('Name', { exact: true }).fill('Our own')
  await page.getByLabel('Leaves', { exact: true }).fill('4 leaves, 700 x 150')
  await page.getByRole('button', { name: 'Make the flitch' }).click()
  await page.getByText('Photographs of the leaves', { exact: true }).click()
  await typeLength(page, 'Between the marks, along the leaf', first.rectangle.along)
  await typeLength(page, 'Between the marks, across it', first.rectangle.across)
  const files = page.getByLabel(/^Photographs, leaf/)

  await test.step('three with ring marks', async () => {
    await files.setInputFiles(shots.map(({ pixels }, i) => file(`leaf ${i + 1}.png`, pngOf(pixels))))
    for (const leaf of [1, 2, 3]) {
      await expect(take(page, leaf)).toBeVisible({ timeout: 60_000 })
      await expect(card(page, leaf)).toContainText('The leaf is 760')
      await take(page, leaf).click()
      await expect(card(page, leaf)).toContainText(`Leaf ${leaf} has its picture`)
    }
  })

  await test.step('one without: its corners are tapped', async () => {
    await files.setInputFiles([file('leaf 4.png', pngOf(bare.pixels))])
    await expect(card(page, 4)).toContainText('No ring marks were found')
    const picture = card(page, 4).getByAltText('The photograph as taken')
    await picture.scrollIntoViewIfNeeded()
    for (const mark of bare.marks.slice(0, 4)) {
      const box = (await picture.boundingBox())!
      await picture.click({
        position: { x: (mark.x / bare.pixels.width) * box.width, y: (mark.y / bare.pixels.height) * box.height },
      })
    }
    await card(page, 4).getByRole('button', { name: 'Use these corners' }).click()
    await expect(take(page, 4)).toBeVisible({ timeout: 60_000 })
    await take(page, 4).click()
    await expect(card(page, 4)).toContainText('Leaf 4 has its picture')
  })

  await test.step('what is no photograph, or too large, is refused with the reason', async () => {
    await files.setInputFiles([
      file('list.jpg', Buffer.from('screws, glue, tape'), 'image/jpeg'),
      file('huge.png', emptyPng(10_000, 8_000)),
    ])
    await expect(card(page, 5)).toContainText('This is not a picture that the browser can open')
    await expect(card(page, 6)).toContainText('80 megapixels (10000 × 8000); 64 is the most')
  })

  await test.step('a knot is marked and a book match laid', async () => {
    await page.getByRole('button', { name: 'Leaf 1, open' }).click()
    await page.getByRole('button', { name: 'Add a spot' }).click()
    await page.getByRole('button', { name: 'Add it to leaf 1' }).click()
    await expect(page.getByText('None known.')).toBeHidden()
    await page.getByRole('button', { name: /^Parts/ }).click()
    const name = page.getByLabel('Name', { exact: true })
    await name.fill('Lid')
    await name.press('Enter')
    await typeLength(page, 'Width, across the grain', 130)
    await typeLength(page, 'Length, along the grain', 640)
    await page.getByRole('button', { name: 'Add the part' }).click()
    await page.getByRole('button', { name: /^Face/ }).click()
    await page.getByLabel('Part shown').selectOption('Lid')
  })

  await test.step('its seam is lined up by the photographs', async () => {
    await expect(page.getByRole('img', { name: /^Face of Lid/ })).toHaveAccessibleName(/2 turned over, 1\.$/)
    const section = page.locator('details', { has: page.getByRole('heading', { name: 'Line up the figure' }) })
    await section.locator('summary').click()
    const shift = page.getByLabel('Shift of R1 along its leaf')
    await shift.fill('6')
    await shift.press('Enter')
    await section.getByRole('button', { name: 'Look at seam B' }).click()
    const found = /^Seam B: alike to 0\.[0-4]\d now, to 0\.[6-9]\d when leaf 2 is slid (5\.5|6|6\.5) mm/
    await expect(section.getByText(found)).toBeVisible({ timeout: 30_000 })
    await section.getByRole('button', { name: /^Slide leaf 2 (up|down) by/ }).click()
    await expect(shift).toHaveValue(/^(-|−)?0(\.[0-5]\d?)? mm$/)
  })

  await test.step('all is undone', async () => {
    const undo = page.getByRole('button', { name: /^Undo/ })
    await expect(undo).toHaveAttribute('title', /seam B lined up/)
    for (let i = 0; i < 12 && (await undo.isEnabled()); i++) await undo.click()
    await expect(undo).toBeDisabled()
    await page.getByRole('button', { name: /^Flitch/ }).click()
    await expect(page.getByLabel('Name of the flitch')).toHaveValue('Walnut, 24 leaves')
  })
})
