import { type CheckedFeature, type CheckedJob, type CheckReport, KEPT_CODES } from '../check-report.ts'
import { tag } from '../markup.ts'

/**
 * A job is a suite, each of its features a case. A feature that is refused or may miss a limit is a failure, a job that
 * cannot be read an error, a file that is no job is skipped.
 */
export const printCheckJunit = ({ jobs, skipped }: CheckReport): string => {
  const suites = [...jobs.map(suiteOf), ...skipped.map(skippedSuite)]
  const sum = (count: 'tests' | 'failures' | 'errors'): number =>
    suites.reduce((all, suite) => all + suite.counts[count], 0)
  // What is skipped is counted in each suite: the schema has no place for the sum of it.
  const counts = { tests: sum('tests'), failures: sum('failures'), errors: sum('errors') }
  const all = tag('testsuites', { name: 'groovewright', ...counts }, ...suites.map(({ markup }) => markup))
  return `<?xml version="1.0" encoding="UTF-8"?>\n${all.made}\n`
}

const suiteOf = (job: CheckedJob) => {
  const cases = casesOf(job)
  const count = (sort: Case['sort']): number => cases.filter((one) => one.sort === sort).length
  const counts = { tests: cases.length, failures: count('failure'), errors: count('error'), skipped: 0 }
  return { counts, markup: tag('testsuite', { name: job.file, ...counts }, ...cases.map((one) => caseOf(job, one))) }
}

type Case = {
  readonly name: string
  readonly sort: 'good' | 'failure' | 'error'
  readonly type: string
  readonly say: string
}

const casesOf = ({ features, problems, against }: CheckedJob): Case[] => {
  const read = problems.filter(({ severity }) => severity === 'error').map(unreadable)
  const kept: Case[] =
    against === null
      ? []
      : [
          {
            name: 'as it was kept',
            sort: against.outcome === 'same' ? 'good' : 'failure',
            type: against.outcome === 'same' ? '' : KEPT_CODES[against.outcome],
            say: against.lines.join('\n'),
          },
        ]
  return [...read, ...features.map(featureCase), ...kept]
}

const unreadable = ({ code, message, hint }: CheckedJob['problems'][number]): Case => ({
  name: 'is read',
  sort: 'error',
  type: code,
  say: hint === null ? message : `${message}; ${hint}`,
})

const featureCase = ({ name, refusal, mayNotHold }: CheckedFeature): Case => {
  if (refusal !== null)
    return { name, sort: 'failure', type: refusal.code, say: `${refusal.reason}; ${refusal.remedy}` }
  if (mayNotHold.length === 0) return { name, sort: 'good', type: '', say: '' }
  const sizes = mayNotHold.map(({ label }) => label).join(', ')
  return { name, sort: 'failure', type: 'may-not-hold', say: `may miss tolerance: ${sizes}` }
}

const caseOf = ({ file }: CheckedJob, { name, sort, type, say }: Case) =>
  tag('testcase', { classname: file, name }, ...(sort === 'good' ? [] : [tag(sort, { type, message: say })]))

const skippedSuite = (file: string) => ({
  counts: { tests: 1, failures: 0, errors: 0, skipped: 1 },
  markup: tag(
    'testsuite',
    { name: file, tests: 1, failures: 0, errors: 0, skipped: 1 },
    tag('testcase', { classname: file, name: 'is no job' }, tag('skipped', {})),
  ),
})
