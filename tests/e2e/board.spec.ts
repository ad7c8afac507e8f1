/** The boards under a real pointer: on a page of their own, with the demonstration job. */
import { expect, test, type Page } from '@playwright/test'
import { serveBoard } from './harness/board-server.ts'

let served: Awaited<ReturnType<typeof serveBoard>>
test.beforeAll(async () => void (served = await serveBoard()))
test.afterAll(() => served.stop())

interface Told {
  readonly by?: { readonly x: number; readonly y: number }
  readonly phase?: string
  readonly swap?: readonly string[]
  readonly select?: { readonly kind: string } | null
  readonly outline?: readonly unknown[]
  readonly defect?: { readonly kind: string; readonly shape: { readonly shape: string; readonly radius?: number } }
  readonly say?: string
}

async function open(page: Page, query: string): Promise<{ width: number; height: number }> {
  await page.goto(`${served.address}?${query}`)
  await page.waitForFunction(() => 'ready' in window, null, { timeout: 60_000 })
  const board = await page.locator('#board').boundingBox()
  return { width: board!.width, height: board!.height }
}

const told = (page: Page): Promise<Told[]> => page.evaluate(() => (window as unknown as { told: Told[] }).told)

async function drag(page: Page, from: [number, number], to: [number, number]): Promise<void> {
  await page.mouse.move(...from)
  await page.mouse.down()
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2)
  await page.mouse.move(...to)
}

test('wood pulled down in a face lets the window go towards the numbered end, and Escape takes it back', async ({
  page,
}) => {
  const { width, height } = await open(page, 'board=face&part=door-1')
  const at: [number, number] = [width / 2 - 40, height / 2 + 30]
  await drag(page, at, [at[0], at[1] + 30])
  await page.mouse.up()
  const end = (await told(page)).at(-1)!
  expect(end.phase).toBe('end')
  expect(end.by!.y).toBeLessThan(-10)
  expect(Math.abs(end.by!.x)).toBeLessThan(1e-9)

  await drag(page, at, [at[0] + 25, at[1]])
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect((await told(page)).at(-1)).toEqual({ by: { x: 0, y: 0 }, phase: 'cancel' })
})

test('a board says what it shows, and a click selects', async ({ page }) => {
  const { width, height } = await open(page, 'board=face&part=door-1')
  await expect(page.getByRole('img', { name: /Face of Door, far left, 372 mm by 560 mm, 1 seam/ })).toBeVisible()
  await page.mouse.click(width / 2 - 50, height / 2 + 30)
  expect((await told(page)).at(-1)!.select).toMatchObject({ kind: 'cell' })
  await page.mouse.click(3, height - 3)
  expect((await told(page)).at(-1)!.select).toBeNull()
})

test('the window pulled on its leaf goes where it is pulled', async ({ page }) => {
  const { width, height } = await open(page, 'board=leaf&part=door-1')
  const scale = (width - 78) / 2400
  const at: [number, number] = [62 + 640 * scale, height / 2]
  await drag(page, at, [at[0] + 40, at[1]])
  await page.mouse.up()
  const end = (await told(page)).at(-1)!
  expect(end.phase).toBe('end')
  expect(end.by!.y).toBeCloseTo(40 / scale, 0)
  expect(Math.abs(end.by!.x)).toBeLessThan(1e-9)
})

test('an outline is walked and changed with the keyboard alone', async ({ page }) => {
  await open(page, 'board=outline&leaf=11')
  await page.locator('#board').focus()
  await page.keyboard.press('Tab')
  expect((await told(page)).at(-1)!.say).toMatch(/^Point 1 of \d+/)
  const before = Number(/of (\d+)/.exec((await told(page)).at(-1)!.say!)![1])
  await page.keyboard.press('ArrowRight')
  const moved = (await told(page)).filter(({ outline }) => outline).at(-1)!
  expect(moved.phase).toBe('end')
  await page.keyboard.press('Insert')
  expect((await told(page)).filter(({ outline }) => outline).at(-1)!.outline).toHaveLength(before + 1)
  await page.keyboard.press('Delete')
  expect((await told(page)).filter(({ outline }) => outline).at(-1)!.outline).toHaveLength(before)
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Shift+Tab')
  await expect(page.locator('#board')).not.toBeFocused()
})

test('a spot is drawn from its middle outwards', async ({ page }) => {
  const { width, height } = await open(page, 'board=outline&leaf=1&tool=spot')
  await drag(page, [width / 2, height / 2], [width / 2 + 20, height / 2])
  await page.mouse.up()
  const { defect } = (await told(page)).at(-1)!
  expect(defect).toMatchObject({ kind: 'knot', shape: { shape: 'spot' } })
  expect(defect!.shape.radius).toBeCloseTo((20 / (width - 90)) * 2400, 0)
})
