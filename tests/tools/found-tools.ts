import { findBrowser, findPageRenderer, thisMachine } from './find-tool.mjs'
import fs from 'node:fs'

/** The programs found before the tests began, or found now where a test is run by itself. */
function noted(): { chromium?: string; pdftoppm?: string } {
  return fs.existsSync('.tools.json') ? (JSON.parse(fs.readFileSync('.tools.json', 'utf8')) as object) : {}
}

/** Path of the Chromium that browser tests drive. */
export const chromiumPath = async (): Promise<string> => {
  const { chromium } = noted()
  return chromium && thisMachine.canRun(chromium) ? chromium : findBrowser(thisMachine)
}

/** Path of pdftoppm, which renders the pages of a PDF to pictures. */
export const pdftoppmPath = (): string => {
  const { pdftoppm } = noted()
  return pdftoppm && thisMachine.canRun(pdftoppm) ? pdftoppm : findPageRenderer(thisMachine)
}
