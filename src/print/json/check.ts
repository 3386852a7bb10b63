import { type CheckReport, countOf, countsAsGood } from '../check-report.ts'

/** The same as data. */
export const printCheckJson = (report: CheckReport): string => {
  const { jobs, skipped } = report
  const data = {
    format: 'groovewright.check/1',
    jobs: jobs.map(({ file, verdict, features, problems, against }) => ({
      file,
      verdict,
      features: features.map(({ mayNotHold, refusal, ...feature }) => ({
        ...feature,
        mayNotHold: mayNotHold.map(({ id }) => id),
        refusal,
      })),
      problems,
      ...(against === null ? {} : { against: { outcome: against.outcome, differences: against.lines } }),
    })),
    skipped,
    summary: {
      jobs: jobs.length,
      good: countOf(report, 'good'),
      ...(jobs.every(({ against }) => against === null)
        ? {}
        : { goodButNotAsKept: jobs.filter((each) => !countsAsGood(each)).length }),
      mayNotHold: countOf(report, 'may not hold'),
      refused: countOf(report, 'refused'),
      unreadable: countOf(report, 'unreadable'),
      skipped: skipped.length,
    },
  }
  return `${JSON.stringify(data, null, 2)}\n`
}
