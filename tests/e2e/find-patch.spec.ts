import { expect } from '@playwright/test'
import { test } from './plain-grain'

test('a patch is found: pointed at or typed, the leaf, the offcut and the nearest leaf with the same figure', async ({
  page,
  isMobile,
}) => {
  await page.goto('/')
  const section = page.locator('details', { has: page.getByRole('heading', { name: 'Where is the patch?' }) })
  const board = page.getByRole('img', { name: /^Face of Door, far left/ })
  const point = async (across: number, down: number) => {
    await board.scrollIntoViewIfNeeded()
    const { width, height } = (await board.boundingBox())!
    const position = { x: width * across, y: height * down }
    await (isMobile ? board.tap({ position }) : board.click({ position }))
  }
  await section.locator('summary').click()
  // before anything is asked a cell is picked, not a spot
  await expect(section.getByText(/^This is leaf/)).toHaveCount(0)
  await point(0.46, 0.45)
  await expect(section.getByText(/^This is leaf \d+, (turned over|number up)\. With the number up/)).toBeVisible()
  const left = section.getByLabel('From the left edge')
  const pointed = Number((await left.inputValue()).replace(' mm', ''))
  expect(pointed).toBeGreaterThan(0)
  expect(pointed).toBeLessThan(186)
  await expect(section.getByText(/^Offcut \d+[a-z]+ of the same leaf: \d+ mm towards/)).toBeVisible()
  const first = await section.getByText(/^This is leaf/).innerText()
  // mirrored in the seam: the same spot on the other leaf of the pair
  await left.fill(String(372 - pointed))
  await left.press('Enter')
  await expect(section.getByText(/^This is leaf/)).not.toHaveText(first)
  const second = await section.getByText(/^This is leaf/).innerText()
  const distances = (text: string) => [...text.matchAll(/(\d+) mm/g)].map(([, mm]) => Number(mm))
  const [a, b] = [distances(first), distances(second)]
  expect(a).toHaveLength(3)
  // drift and wild edges may differ by a little from leaf to leaf
  a.forEach((mm, i) => expect(Math.abs(mm - b[i]!)).toBeLessThan(25))
  await expect(section.getByText(/^(Leaf \d+.*|The nearest free one.*)has the same figure free/).first()).toBeVisible()
  await left.fill('400')
  await left.press('Enter')
  await expect(section.getByText(/“400” is more than 372 mm/)).toBeVisible()
  // beside the panel nothing is asked; with the section closed a cell is picked again
  await section.getByRole('button', { name: 'Take the mark off' }).click()
  await point(0.02, 0.45)
  await expect(section.getByText(/^This is leaf/)).toHaveCount(0)
})

test('as finished: the face trimmed and bare, its leaves shining in turn', { tag: '@mouse' }, async ({ page }) => {
  await page.goto('/')
  const canvases = page.getByRole('img', { name: /^Face of Door, far left/ }).locator('canvas')
  const look = page.getByRole('button', { name: 'As finished' })
  await look.click()
  await expect(look).toHaveAttribute('aria-pressed', 'true')
  await expect(page.getByText(/^A simulation/)).toBeVisible()
  /** How light the left and the right leaf are, a little beside the seam. */
  const light = () =>
    canvases.first().evaluate((canvas: HTMLCanvasElement) => {
      const ctx = canvas.getContext('2d')!
      return [0.46, 0.54].map((share) => {
        const { data } = ctx.getImageData(canvas.width * share - 10, canvas.height * 0.35, 20, canvas.height * 0.3)
        return data.reduce((sum, value, i) => sum + (i % 4 === 3 ? 0 : value), 0) / (data.length * 0.75)
      })
    })
  const apart = async () => {
    const [left, right] = await light()
    return Math.round(left! - right!)
  }
  const shine = page.getByLabel('Shine of turned leaves')
  await shine.fill('0')
  await expect.poll(apart).toBeLessThan(12)
  await shine.fill('1')
  await expect.poll(apart).toBeGreaterThan(40)
  await page.getByLabel('Light from').selectOption('the bottom')
  await expect.poll(apart).toBeLessThan(-15)
  await page.getByRole('button', { name: 'Undo' }).isDisabled()
  await look.click()
  await expect(page.getByText(/^A simulation/)).toHaveCount(0)
})
