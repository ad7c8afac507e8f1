import { expect, type Locator, type Page } from '@playwright/test'
import { keptJob } from './kept-job'
import { test } from './plain-grain'

/** The section of the door, opened; the door is 372 x 560 mm, its sheet planned 192 mm to both sides of the seam. */
async function openAsCut(page: Page, topLeft = '192 mm'): Promise<Locator> {
  await page.goto('/')
  const section = page.locator('details', { has: page.getByRole('heading', { name: 'As cut' }) })
  await section.locator('summary').click()
  await expect(section.getByLabel('Top end, left of the seam')).toHaveValue(topLeft)
  return section
}

async function type(section: Locator, label: string, length: string): Promise<void> {
  const field = section.getByLabel(label)
  await field.fill(length)
  await field.press('Enter')
}

const row = (section: Locator, edge: string, at: string) =>
  section.getByRole('row').filter({ hasText: new RegExp(`^\\s*${edge}.*${at}`) })

test('a sheet whose seam is 1.5 mm off: it is moved, and half a millimetre is left where an edge asks for it', async ({
  page,
}) => {
  const section = await openAsCut(page)
  for (const end of ['Top', 'Bottom']) {
    await type(section, `${end} end, left of the seam`, '193.5')
    await type(section, `${end} end, right of the seam`, '190.5')
  }
  await expect(section.getByText('centre seam 1.5 mm right of the centre')).toBeVisible()
  await expect(section.getByText('From there move the sheet 1 mm to the left.')).toBeVisible()
  await expect(section.getByText('centre seam 0.5 mm right of the centre, within the 0.5 mm')).toBeVisible()
  await expect(row(section, 'left', 'top')).toContainText('7 mm')
  await expect(row(section, 'right', 'bottom')).toContainText('5 mm')
})

test(
  'a sheet cut wide enough, 1.5 mm off: the seam comes to lie on the centre',
  { tag: '@mouse' },
  async ({ page }) => {
    const section = await openAsCut(page)
    for (const end of ['Top', 'Bottom']) await type(section, `${end} end, left of the seam`, '195')
    await expect(section.getByText('From there move the sheet 1.5 mm to the left.')).toBeVisible()
    await expect(section.getByText('The seam lies on the centre, and every edge stands at least 5 mm')).toBeVisible()
    await expect(row(section, 'left', 'top')).toContainText('9 mm')
    // one step each, and kept with the part
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(section.getByLabel('Bottom end, left of the seam')).toHaveValue('192 mm')
    await expect(section.getByLabel('Top end, left of the seam')).toHaveValue('195 mm')
    await page.getByRole('button', { name: /^Redo/ }).click()
    await expect(section.getByLabel('Bottom end, left of the seam')).toHaveValue('195 mm')
    await expect
      .poll(async () => (await keptJob(page)).parts[0]?.asCut)
      .toEqual({ 'top left': 195, 'bottom left': 195 })
    const again = await openAsCut(page, '195 mm')
    await expect(again.getByText('From there move the sheet 1.5 mm to the left.')).toBeVisible()
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      again.getByRole('button', { name: /Save it for the press: 1 page/ }).click(),
    ])
    expect(file.suggestedFilename()).toBe('Door, far left as cut.pdf')
  },
)

test(
  'a sheet 9 mm off at one end cannot come to the centre: it is turned, and what is left is said',
  { tag: '@mouse' },
  async ({ page }) => {
    const section = await openAsCut(page)
    await type(section, 'Top end, left of the seam', '201')
    await type(section, 'Top end, right of the seam', '183')
    await expect(section.getByText(/Laid by its edges.*9 mm right of the centre at the top/)).toBeVisible()
    await expect(section.getByText(/With the seam on the centre an edge would stand less than 5 mm over/)).toBeVisible()
    await expect(section.getByText(/That leaves.*8 mm right of the centre at the top/)).toBeVisible()
    await expect(section.getByRole('img', { name: /as it lies on the core/ })).toBeVisible()
    await section.getByRole('button', { name: 'Back to the sizes as planned' }).click()
    await expect(section.getByText('Laid by its edges, the sheet has its seam on the centre.')).toBeVisible()
  },
)

test('a sheet that is too narrow: the lack is split and told', { tag: '@mouse' }, async ({ page }) => {
  const section = await openAsCut(page)
  await type(section, 'Bottom end, left of the seam', '188')
  await type(section, 'Bottom end, right of the seam', '189')
  await expect(section.getByText(/too small for 5 mm over the core on both sides/)).toBeVisible()
  await expect(section.getByText('left (short)').first()).toBeVisible()
  await expect(section.getByText('right (short)').first()).toBeVisible()
  await type(section, 'Top end, left of the seam', '19')
  await expect(section.getByText(/“19” is less than 96 mm/)).toBeVisible()
})
