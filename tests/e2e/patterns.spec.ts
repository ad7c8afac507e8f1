import { expect, type Page } from '@playwright/test'
import { test } from './plain-grain'

// a trace would copy all the pictures at every step
test.use({ trace: 'off' })

/** What the recipe says: every field of its sentence with its value. */
const recipeOf = (page: Page): Promise<Record<string, string>> =>
  page
    .locator('.sentence')
    .evaluate((sentence) =>
      Object.fromEntries(
        [...sentence.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')].map((field) => [
          field.labels![0]!.textContent!,
          field instanceof HTMLSelectElement ? field.selectedOptions[0]!.text : field.value,
        ]),
      ),
    )

/** How the leaves are moved, and the rows of the tables of seams and pieces: how the face is laid. */
const laidOf = (page: Page): Promise<readonly string[]> =>
  page
    .locator('p.moves, table tbody tr')
    .evaluateAll((rows) => rows.map((row) => row.textContent!.replace(/\s+/g, ' ').trim()))

/** Said of every pattern alike, and tried with one of them. */
const COMMON = [/^Overhang/, /^Jointing/, /^Way of jointing/, /^First leaf/, /^Arrangement/, /^Match/]

const PATTERNS: readonly { name: string; fields: readonly string[]; seams: number }[] = [
  { name: 'slip', fields: ['Number of leaves', 'Equal widths', 'Side up'], seams: 1 },
  { name: 'reverse slip', fields: ['Number of leaves', 'Equal widths', 'Side up'], seams: 1 },
  { name: 'slip-centre-book', fields: ['Number of leaves', 'Equal widths', 'Spine', 'Laid'], seams: 3 },
  { name: 'four-way', fields: ['Number of leaves', 'Numbered ends', 'Equal widths', 'Spine', 'Laid'], seams: 2 },
  {
    name: 'end match',
    fields: ['Number of leaves', 'Rows', 'Order of the run', 'Numbered ends', 'Equal widths', 'Spine', 'Laid'],
    seams: 2,
  },
  {
    name: 'radial',
    fields: [
      'Number of leaves',
      'Each wedge from',
      'Numbered ends',
      'Angle of the first seam',
      'Order of the leaves',
      'Spine',
      'Laid',
    ],
    seams: 6,
  },
  { name: 'diamond', fields: ['Each piece from', 'Slant of the grain', 'Numbered ends', 'Side up'], seams: 2 },
  { name: 'reverse diamond', fields: ['Each piece from', 'Slant of the grain', 'Numbered ends', 'Side up'], seams: 2 },
  { name: 'box', fields: ['Each piece from', 'Side up'], seams: 5 },
  { name: 'reverse box', fields: ['Each piece from', 'Numbered ends', 'Side up'], seams: 5 },
  {
    name: 'herringbone',
    fields: [
      'Number of leaves',
      'Columns',
      'Width of the strips',
      'Angle of the strips',
      'Points',
      'Numbered ends',
      'Side up',
    ],
    seams: 1,
  },
  { name: 'parquet', fields: ['Number of leaves', 'Columns', 'Rows', 'Upper left block', 'Side up'], seams: 1 },
  {
    name: 'basket',
    fields: ['Number of leaves', 'Columns', 'Rows', 'Strips in a block', 'Upper left block', 'Side up'],
    seams: 1,
  },
  {
    name: 'random',
    fields: [
      'Number of leaves',
      'Widths',
      'Unevenness in percent',
      'Draw',
      'Order of the leaves',
      'Numbered ends',
      'Side up',
    ],
    seams: 1,
  },
  {
    name: 'planked',
    fields: ['Number of leaves', 'Draw', 'Order of the leaves', 'Numbered ends', 'Side up'],
    seams: 1,
  },
  { name: 'book', fields: ['Number of leaves', 'Equal widths', 'Spine', 'Laid'], seams: 1 },
]

test('each pattern is chosen by its picture, each of its decisions changed, and all of it undone @mouse', async ({
  page,
}) => {
  test.setTimeout(120_000)
  // small boards are painted sooner
  await page.setViewportSize({ width: 640, height: 420 })
  await openPlainJob(page)
  const first = { recipe: await recipeOf(page), laid: await laidOf(page) }
  await page.locator('summary', { hasText: 'Patterns' }).click()
  for (const { name, fields, seams } of PATTERNS) {
    const before = await laidOf(page)
    const card = page.getByRole('radio', { name, exact: true })
    await card.check()
    await expect(card).toBeChecked()
    // the sentence of the sheets says how its leaves are moved, and the picture's card the same
    const moves = await page.locator('p.moves').innerText()
    expect(moves).toContain(
      (await page.locator(`#${await card.getAttribute('aria-describedby')}`).innerText()).slice(0, 40),
    )
    const chosen = { recipe: await recipeOf(page), laid: await laidOf(page) }
    expect(chosen.laid, name).not.toEqual(before)
    expect(chosen.laid.length, name).toBeGreaterThan(seams)
    expect(Object.keys(chosen.recipe), name).toEqual(expect.arrayContaining([...fields]))
    const own = Object.keys(chosen.recipe).filter((key) => !COMMON.some((common) => common.test(key)))
    // a number of leaves gives way to the fewest where it no longer goes with the columns or rows, and widths that are
    // typed have no draw: they are changed last; of wedges from booked pairs the wedges are counted
    const last = ['Number of leaves', 'Widths', 'Each wedge from', 'Each piece from']
    own.sort((a, b) => last.indexOf(a) - last.indexOf(b))
    for (const label of own) await change(page, label)
    await expect
      .poll(async () => {
        const now = await recipeOf(page)
        return own.filter((label) => now[label] === chosen.recipe[label])
      }, name)
      .toEqual([])
    if (name === 'radial') await expect(page.locator('p.moves')).toContainText('Two leaves are booked and joined first')
    for (const _ of own) await page.keyboard.press('Control+z')
    await expect.poll(() => recipeOf(page), `${name} undone`).toEqual(chosen.recipe)
    expect(await laidOf(page), name).toEqual(chosen.laid)
  }
  for (let i = 0; i < PATTERNS.length; i++) await page.keyboard.press('Control+z')
  expect(await recipeOf(page)).toEqual(first.recipe)
  expect(await laidOf(page)).toEqual(first.laid)
})

/** A door on 24 plain leaves: what is laid is found at once, so that many decisions can be tried. */
async function openPlainJob(page: Page): Promise<void> {
  await page.addInitScript(() =>
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined }),
  )
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'What to know' })).toBeVisible()
  const chosen = page.waitForEvent('filechooser')
  await page.locator('summary', { hasText: 'Job' }).click()
  await page.getByRole('button', { name: 'Open a file…' }).click()
  const job = {
    format: 'leafturn job',
    version: 1,
    flitches: [{ leaves: 24, size: [300, 2400] }],
    parts: [{ name: 'Plain door', width: 400, length: 300 }],
  }
  await (
    await chosen
  ).setFiles({
    name: 'plain.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(job)),
  })
  await page.getByRole('button', { name: /^Face/ }).first().click()
  await expect(page.locator('.sentence', { hasText: 'Plain door' })).toBeVisible()
}

/** Takes another choice, or a number one step on, and leaves the field. */
async function change(page: Page, label: string): Promise<void> {
  const field = page.locator('.sentence').getByLabel(label, { exact: true })
  if (await field.evaluate((element) => element instanceof HTMLSelectElement)) {
    const [at, count] = await field.evaluate((list: HTMLSelectElement) => [list.selectedIndex, list.options.length])
    await field.selectOption({ index: (at + 1) % count })
    await field.blur()
    return
  }
  await field.focus()
  await field.press('ArrowUp')
  await field.press('Enter')
  await field.blur()
}
