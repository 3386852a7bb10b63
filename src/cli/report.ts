import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { printDiagnostics } from '../diagnostics/frame.ts'
import type { FeaturePlan, Plan } from '../sheet/plan.ts'
import type { SourceFile } from '../source/source.ts'
import { paintFor } from './color.ts'
import type { Io } from './io.ts'

/** A feature that cannot be cut as asked, as a problem with a place in the job. */
export const refusalProblem = ({
  name,
  code,
  reason,
  remedy,
  origin,
}: FeaturePlan & { status: 'refused' }): Diagnostic => ({
  code,
  severity: 'error',
  origin,
  message: `cannot be cut as asked: ${name}: ${reason}`,
  hint: remedy,
})

/** What the sheet warns of, as problems with a place; what is said of the whole plan alone has none. */
export const warningProblems = ({ warnings, features }: Plan): Diagnostic[] =>
  warnings.flatMap(({ feature, code, say, origin, remedy }) =>
    origin === undefined
      ? []
      : [
          {
            code,
            severity: 'warning',
            origin,
            message: `${feature === null ? '' : `${features[feature]!.name}: `}${bare(say, remedy)}`,
            ...(remedy === undefined ? {} : { hint: remedy }),
          },
        ],
  )

/** The warning without its remedy, which is told on a line of its own. */
const bare = (say: string, remedy: string | undefined): string => {
  const alone = remedy !== undefined && say.endsWith(`${remedy}.`) ? say.slice(0, -remedy.length - 1) : say
  return alone.replace(/[:;] $|\.$/, '')
}

/** All problems on standard error, with their lines; colored only there where it is a terminal. */
export const reportDiagnostics = async (
  diagnostics: readonly Diagnostic[],
  sources: ReadonlyMap<string, SourceFile>,
  color: boolean | undefined,
  io: Io,
): Promise<void> => {
  const text = printDiagnostics(diagnostics, sources)
  if (text === '') return
  const paint = await paintFor(color, io.env, io.stderr)
  io.stderr.write(
    text.replace(
      /: (error|warning): /g,
      (_, severity: string) => `: ${severity === 'error' ? paint.red(severity) : paint.yellow(severity)}: `,
    ),
  )
}
