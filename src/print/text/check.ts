import { oneLine } from '../../diagnostics/escaped.ts'
import {
  type CheckedFeature,
  type CheckReport,
  type Compared,
  countOf,
  countsAsGood,
  type Paint,
  type Verdict,
} from '../check-report.ts'

/** One line per job, and how many there are of each verdict. */
export const printCheck = (report: CheckReport, paint: Paint): string => {
  const { jobs, skipped } = report
  const lines = jobs.map(
    ({ file, verdict, features, against }) =>
      `${oneLine(file)}: ${paint[verdict](WORDS[verdict])}${detail(verdict, features)}${kept(against)}`,
  )
  const counts = (['good', 'may not hold', 'refused', 'unreadable'] as const)
    .map((verdict) => [verdict, countOf(report, verdict)] as const)
    .filter(([verdict, n]) => n > 0 || verdict === 'good')
    .map(([verdict, n]) => `${n} ${WORDS[verdict]}`)
  const others = jobs.filter((each) => !countsAsGood(each)).length
  const notKept = others === 0 ? [] : [`${others} good but not as kept`]
  const ignored = skipped.length > 0 ? [`${skipped.length} skipped`] : []
  const summary = `${jobs.length} ${jobs.length === 1 ? 'job' : 'jobs'}: ${[...counts, ...notKept, ...ignored].join(', ')}`
  return `${[...lines, summary].join('\n')}\n`
}

const WORDS: Readonly<Record<Verdict, string>> = {
  good: 'good',
  'may not hold': 'may miss tolerance',
  refused: 'refused',
  unreadable: 'unreadable',
}

/** Nothing for a sheet that is the same; otherwise the lines of the difference, below the job and indented. */
const kept = (against: Compared | null): string => {
  if (against === null || against.outcome === 'same') return ''
  const head = against.outcome === 'different' ? '; not the sheet that is kept (kept -> planned today):' : ';'
  return [head, ...against.lines.map((line) => `    ${oneLine(line)}`)].join('\n')
}

const detail = (verdict: Verdict, features: readonly CheckedFeature[]): string => {
  switch (verdict) {
    case 'good':
      // What another tool opens up is no feature of the drawing.
      return `, ${counted(features.filter(({ kind }) => kind !== 'roughing').length)}`
    case 'unreadable':
      return ''
    case 'refused':
      return `: ${features.flatMap(({ name, refusal }) => (refusal === null ? [] : [`${name}: ${refusal.reason}`])).join('; ')}`
    case 'may not hold':
      return `: ${features
        .filter(({ mayNotHold }) => mayNotHold.length > 0)
        .map(({ name, mayNotHold }) => `${name} (${mayNotHold.map(({ label }) => label).join(', ')})`)
        .join('; ')}`
  }
}

const counted = (features: number): string => `${features} ${features === 1 ? 'feature' : 'features'}`
