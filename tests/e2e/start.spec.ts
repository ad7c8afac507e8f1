import { expect, test } from '@playwright/test'

test('the app opens, says nothing wrong, and asks no other machine for anything', async ({ page, baseURL }) => {
  const complaints: string[] = []
  const elsewhere: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('requestfailed', (request) => complaints.push(`${request.url()} failed`))
  page.on('request', (request) => {
    const from = new URL(request.url())
    if (!['blob:', 'data:'].includes(from.protocol) && from.origin !== new URL(baseURL ?? '').origin)
      elsewhere.push(request.url())
  })

  await page.goto('/')
  await expect(page).toHaveTitle(/Leafturn/)
  await expect(page.locator('#app')).toContainText(/\S/)
  await page.waitForLoadState('networkidle')
  expect(complaints).toEqual([])
  expect(elsewhere).toEqual([])
})

test('the text is set in the face that ships with the app', async ({ page }) => {
  await page.goto('/')
  await expect(page.locator('#app')).toContainText(/\S/)
  const faces = await page.evaluate(async () => {
    await document.fonts.ready
    return [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family)
  })
  expect(faces.join()).toContain('Source Sans 3')
})

test('the policy lets no script run that is not a file of the app', async ({ page }) => {
  const response = await page.goto('/')
  expect(response?.headers()['content-security-policy']).toContain("script-src 'self' 'wasm-unsafe-eval'")
  const ran = await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.name = "ran"'
    document.body.append(script)
    return window.name
  })
  expect(ran).toBe('')
})
