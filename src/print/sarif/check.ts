import { CODES } from '../../diagnostics/codes.ts'
import { type CheckedFeature, type CheckedJob, type CheckReport, type Found, KEPT_CODES } from '../check-report.ts'

/**
 * SARIF 2.1.0 (OASIS standard): one run, one result for each problem, refusal, size that may miss its limits and sheet
 * that is not as it was kept.
 */
export const printCheckSarif = ({ jobs }: CheckReport): string => {
  const results = jobs.flatMap(resultsOf)
  const ids = [...new Set(results.map(({ ruleId }) => ruleId))].sort()
  const rules = ids.map((id) => ({ id, shortDescription: { text: CODES[id] } }))
  const log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'groovewright', rules } },
        columnKind: 'utf16CodeUnits',
        results: results.map((result) => ({ ...result, ruleIndex: ids.indexOf(result.ruleId) })),
      },
    ],
  }
  return `${JSON.stringify(log, null, 2)}\n`
}

const resultsOf = ({ file, found, features, against }: CheckedJob) => [
  ...found.map(resultOf),
  ...features.flatMap((feature) => mayMiss(file, feature)),
  ...notAsKept(file, against),
]

const resultOf = ({ code, severity, file, message, hint, line, column }: Found) => ({
  ruleId: code,
  level: severity,
  message: { text: hint === null ? message : `${message}; ${hint}` },
  locations: [placeIn(file, line === null ? {} : { region: { startLine: line, startColumn: column ?? 1 } })],
})

const mayMiss = (file: string, { name, mayNotHold }: CheckedFeature) =>
  mayNotHold.length === 0
    ? []
    : [
        {
          ruleId: 'may-not-hold' as const,
          level: 'warning' as const,
          message: { text: `${name}: may miss tolerance: ${mayNotHold.map(({ label }) => label).join(', ')}` },
          locations: [placeIn(file, {})],
        },
      ]

const notAsKept = (file: string, against: CheckedJob['against']) =>
  against === null || against.outcome === 'same'
    ? []
    : [
        {
          ruleId: KEPT_CODES[against.outcome],
          level: against.outcome === 'unreadable' ? ('error' as const) : ('warning' as const),
          message: { text: against.lines.join('\n') },
          locations: [placeIn(file, {})],
        },
      ]

const placeIn = (file: string, more: object) => ({
  physicalLocation: { artifactLocation: { uri: uriOf(file) }, ...more },
})

/**
 * Relative to where the program was run; what a URI may not have is encoded, and a half of a pair has no code at all. Two
 * slashes at the head would name a machine.
 */
const uriOf = (file: string): string =>
  file
    .replaceAll('\\', '/')
    .replace(/^\/+/, '/')
    .replace(/\p{Cs}/gu, '\ufffd')
    .split('/')
    .map(encodeURIComponent)
    .join('/')
