import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

const STATIONS = ['Flitch', 'Parts', 'Face', 'Cutting', 'Press']

/** The press hides most of itself in folds. */
const openFolds = (page: Page) =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('main details')) fold.setAttribute('open', '')
  })

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in ${colorScheme} colours`, () => {
    test.use({ colorScheme })
    for (const station of STATIONS) {
      test(`${station} can be used by everyone, and does not scroll sideways`, async ({ page }) => {
        await page.goto('/')
        await page
          .getByRole('button', { name: new RegExp(`^${station}`) })
          .first()
          .click()
        await expect(page.locator('main')).toContainText(/\S/)
        if (station === 'Press') await openFolds(page)
        const { violations } = await new AxeBuilder({ page }).analyze()
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
        ).toEqual([])
        const widths = await page.evaluate(() => {
          const main = document.querySelector('main')!
          return {
            page: document.documentElement.scrollWidth,
            main: main.scrollWidth,
            room: main.clientWidth,
            window: innerWidth,
          }
        })
        expect(widths.page).toBeLessThanOrEqual(widths.window)
        expect(widths.main).toBeLessThanOrEqual(widths.room)
      })
    }
  })
}

test('what is pressed is 44 px or more @touch', async ({ page }) => {
  await page.goto('/')
  for (const station of STATIONS) {
    await page
      .getByRole('button', { name: new RegExp(`^${station}`) })
      .first()
      .click()
    if (station === 'Press') await openFolds(page)
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          'button, select, summary, input:not([type=radio]):not([type=checkbox])',
        ),
      ]
        .filter((control) => control.checkVisibility() && control.getBoundingClientRect().width > 1)
        // a word within a sentence is pressed where it stands
        .filter((control) => getComputedStyle(control).display !== 'inline')
        .map((control) => ({ control, box: control.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 43.5)
        .map(
          ({ control, box }) =>
            `${control.textContent?.trim().slice(0, 30) || control.getAttribute('aria-label')} ${Math.round(box.width)} x ${Math.round(box.height)}`,
        ),
    )
    expect(small, station).toEqual([])
  }
})
