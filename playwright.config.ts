import { defineConfig } from '@playwright/test'
import { chromiumPath } from './tests/tools/found-tools.ts'

const port = process.env.E2E_PORT || '4319'

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '**/*.spec.ts',
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  // no test is timed: on a machine that does much else a search beside the page takes its while
  timeout: 90_000,
  workers: 2,
  reporter: 'line',
  expect: {
    // the usual tolerance lets a leaf of another colour pass
    toHaveScreenshot: { threshold: 0.02, maxDiffPixels: 40, animations: 'disabled' },
  },
  webServer: {
    command: 'node tests/tools/serve.mjs',
    env: { PORT: port },
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    locale: 'en-GB',
    timezoneId: 'UTC',
    // keeping one costs a fifth of the time; ask for it where a test fails: --trace retain-on-failure
    trace: 'off',
    launchOptions: {
      executablePath: await chromiumPath(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--disable-background-networking',
        '--no-first-run',
        '--disable-component-update',
        '--disable-sync',
        '--font-render-hinting=none',
      ],
    },
  },
  projects: [
    { name: 'desktop', grepInvert: /@touch/, use: { viewport: { width: 1280, height: 800 } } },
    {
      name: 'phone',
      grepInvert: /@mouse/,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
})
