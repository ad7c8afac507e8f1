import { describe, expect, it } from 'vitest'
import { findBrowser, findPageRenderer } from './find-tool.mjs'

/** A machine with these programs, on which a command may bring further ones; it notes the commands run. */
function machine({
  programs = [],
  env = {},
  rootOnDebian = false,
  brings = {},
}: {
  programs?: string[]
  env?: Record<string, string>
  rootOnDebian?: boolean
  brings?: Record<string, string>
}) {
  const present = new Set(programs)
  const ran: string[] = []
  const run = (command: string, args: string[]) => {
    const line = [command.replace(/.*\//, ''), ...args].join(' ')
    ran.push(line)
    const wanted = Object.entries(brings).find(([part]) => line.includes(part))
    if (wanted) present.add(wanted[1])
    else if (!line.endsWith('update')) throw new Error('no network')
  }
  return {
    env: { PATH: '/opt/bin:/usr/bin', ...env },
    canRun: (file: string) => present.has(file),
    isRootOnDebian: () => rootOnDebian,
    run,
    playwrightBrowser: () => Promise.resolve('/home/cache/chrome'),
    say: () => {},
    ran,
  }
}

describe('the browser for the tests', () => {
  it.each([
    [
      'the one named',
      { programs: ['/my/chrome', '/usr/bin/chromium'], env: { CHROMIUM_PATH: '/my/chrome' } },
      '/my/chrome',
    ],
    ["the system's", { programs: ['/usr/bin/chromium', '/home/cache/chrome'] }, '/usr/bin/chromium'],
    ['Google Chrome', { programs: ['/opt/bin/google-chrome'] }, '/opt/bin/google-chrome'],
    ["Playwright's own", { programs: ['/home/cache/chrome'], rootOnDebian: true }, '/home/cache/chrome'],
  ])('is %s, and nothing is installed', async (_what, given, expected) => {
    const here = machine(given)
    expect(await findBrowser(here)).toBe(expected)
    expect(here.ran).toEqual([])
  })

  it('is installed by apt as root on Debian', async () => {
    const here = machine({ rootOnDebian: true, brings: { 'install -y': '/usr/bin/chromium' } })
    expect(await findBrowser(here)).toBe('/usr/bin/chromium')
    expect(here.ran).toEqual(['apt-get update', 'apt-get install -y --no-install-recommends chromium'])
  })

  it.each([true, false])('is installed by Playwright where apt cannot (root on Debian: %s)', async (rootOnDebian) => {
    const here = machine({ rootOnDebian, brings: { 'cli.js install chromium': '/home/cache/chrome' } })
    expect(await findBrowser(here)).toBe('/home/cache/chrome')
    expect(here.ran.filter((line) => line.startsWith('apt-get'))).toHaveLength(rootOnDebian ? 2 : 0)
  })

  it('is asked for where nothing helps', async () => {
    await expect(findBrowser(machine({}))).rejects.toThrow(/Install Chromium or Google Chrome, or set CHROMIUM_PATH/)
  })

  it('is not replaced when the one named is missing', async () => {
    const here = machine({ programs: ['/usr/bin/chromium'], env: { CHROMIUM_PATH: '/gone' } })
    await expect(findBrowser(here)).rejects.toThrow(/CHROMIUM_PATH is \/gone/)
  })
})

describe('the page renderer for the tests', () => {
  it('is the system one', () => {
    expect(findPageRenderer(machine({ programs: ['/usr/bin/pdftoppm'] }))).toBe('/usr/bin/pdftoppm')
  })

  it('is installed by apt as root on Debian', () => {
    const here = machine({ rootOnDebian: true, brings: { 'poppler-utils': '/usr/bin/pdftoppm' } })
    expect(findPageRenderer(here)).toBe('/usr/bin/pdftoppm')
  })

  it('is asked for where nothing helps', () => {
    expect(() => findPageRenderer(machine({ rootOnDebian: true }))).toThrow(/poppler-utils on Debian/)
    expect(() => findPageRenderer(machine({ env: { PDFTOPPM_PATH: '/gone' } }))).toThrow(/PDFTOPPM_PATH is \/gone/)
  })
})
