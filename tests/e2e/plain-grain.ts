import { test as base } from '@playwright/test'

/**
 * The app as it is without its painter of wood: leaves are drawn with plain grain. Painting two dozen leaves anew for
 * every test would take most of the time; start.spec.ts looks at the painted ones.
 */
export const test = base.extend({
  page: async ({ page }, use) => {
    await page.route('**/log-worker*', (route) => route.abort())
    await use(page)
  },
})
