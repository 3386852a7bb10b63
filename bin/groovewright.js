#!/usr/bin/env node
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'

const bundle = fileURLToPath(new URL('../dist/groovewright.cjs', import.meta.url))
if (existsSync(bundle)) {
  createRequire(import.meta.url)(bundle).main(process)
} else {
  process.stderr.write('groovewright: the program is not built yet: run "npm ci" or "npm run build"\n')
  process.exitCode = 2
}
