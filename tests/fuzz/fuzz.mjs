// npm run fuzz -- [--minutes 5] [--seed S]: hostile and extreme input from random jobs; prints the cases, what they ended in, and every find.
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'esbuild'

const root = fileURLToPath(new URL('../..', import.meta.url))

const main = async () => {
  const minutes = Number(option('--minutes', '5'))
  const seed = Number(option('--seed', '1'))
  if (!(minutes > 0) || !Number.isInteger(seed)) throw new Error('give --minutes and --seed as numbers')
  const folder = mkdtempSync(join(root, 'node_modules', '.fuzz-'))
  try {
    const outfile = join(folder, 'campaign.mjs')
    await build({
      absWorkingDir: root,
      entryPoints: ['tests/fuzz/campaign.ts'],
      bundle: true,
      platform: 'node',
      format: 'esm',
      packages: 'external',
      outfile,
    })
    const { campaign } = await import(pathToFileURL(outfile).href)
    process.exitCode = (await campaign(minutes * 60, seed)) === 0 ? 0 : 1
  } finally {
    rmSync(folder, { recursive: true })
  }
}

const option = (name, other) => {
  const at = process.argv.indexOf(name)
  return at < 0 ? other : process.argv[at + 1]
}

await main()
