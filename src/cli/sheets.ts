import fs from 'node:fs'
import { jobFileSentence, unpackJob } from '../store/job-file'
import { readArguments } from './arguments'
import { writeSheets } from './write-sheets'

/** Writes the sheets of a job without a browser. 0 when all was written, 2 with a sentence on stderr when it was not. */
export async function main(given: readonly string[]): Promise<number> {
  const wanted = readArguments(given)
  if (!wanted.ok) return stopped(wanted.reason)
  const { jobFile, folder, paper } = wanted.value
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(fs.readFileSync(jobFile))
  } catch {
    return stopped(`The job file “${jobFile}” can’t be read: there is none, or it may not be opened.`)
  }
  const unpacked = unpackJob(bytes)
  if (!unpacked.ok) return stopped(`“${jobFile}” was not opened. ${jobFileSentence(unpacked.reason)}`)
  try {
    const written = await writeSheets(unpacked.value.job, folder, paper)
    if (!written.ok) return stopped(written.reason)
    console.log(`${written.value} files written to ${folder}`)
    return 0
  } catch (error) {
    return stopped(`The folder “${folder}” can’t be written: ${error instanceof Error ? error.message : String(error)}`)
  }
}

function stopped(sentence: string): number {
  console.error(sentence)
  return 2
}

if (!process.env['VITEST']) process.exitCode = await main(process.argv.slice(2))
