#!/usr/bin/env node
const { existsSync } = require('node:fs')
const { join } = require('node:path')

// A script of CommonJS (package.json beside it says so): the loader of modules alone would take a tenth of the time to start.
const bundle = join(__dirname, '..', 'dist', 'groovewright.cjs')
if (existsSync(bundle)) {
  require(bundle).main(process)
} else {
  process.stderr.write('groovewright: the program is not built yet: run "npm ci" or "npm run build"\n')
  process.exitCode = 2
}
