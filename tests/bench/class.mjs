import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { elapsed, median } from './measure.mjs'
import { BIN, EXAMPLES, ROOT } from './places.mjs'

/** A small set and a large one: what is between them is learners alone, without the start of the program. */
const FEW = 10
const MANY = 60

/** What one learner more costs, handing out and grading with one wrong answer on every sheet, in bare starts of Node. */
export const classes = (pairs) => {
  const folder = mkdtempSync(join(tmpdir(), 'groovewright-bench-'))
  const rows = { 'handing out, a learner': [], 'grading, a learner': [] }
  try {
    for (let pair = -1; pair < Math.max(1, Math.ceil(pairs / 5)); pair++) {
      const bare = median([0, 1, 2].map(() => elapsed(() => launch(['-e', '0']))))
      const [few, many] = [FEW, MANY].map((sheets) => one(folder, sheets))
      if (pair < 0) continue
      rows['handing out, a learner'].push((many.out - few.out) / (MANY - FEW) / bare)
      rows['grading, a learner'].push((many.graded - few.graded) / (MANY - FEW) / bare)
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
  return Object.entries(rows).map(([name, ratios]) => ({ name, value: median(ratios) }))
}

const one = (folder, sheets) => {
  const [exercise, set] = [join(folder, 'exercise.yaml'), join(folder, `set-${sheets}`)]
  rmSync(set, { recursive: true, force: true })
  writeFileSync(
    exercise,
    `title: Bench
teaches: nothing
base: ${JSON.stringify(join(EXAMPLES, '01-press-screw.yaml'))}
sheets: ${sheets}
vary:
  features.0.width: { from: 0.156, to: 0.190, step: 0.001 }
  features.0.depth: { from: 0.060, to: 0.080, step: 0.001 }
hide: [shift, readings]
`,
  )
  const out = elapsed(() => launch([BIN, 'handout', exercise, '--out', set]))
  for (const name of readdirSync(join(set, 'answers'))) {
    const form = join(set, 'answers', name)
    writeFileSync(form, readFileSync(form, 'utf8').replaceAll('value: ""', 'value: 172'))
  }
  return {
    out,
    graded: elapsed(() => launch([BIN, 'grade', join(set, 'manifest.json'), join(set, 'answers'), '--format', 'csv'])),
  }
}

const launch = (args) => {
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' })
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`)
}
