import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { plain } from '../phrase/words.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import type { SourceFile } from '../source/source.ts'
import type { Units } from '../units/length.ts'
import type { Io } from './io.ts'

/** A feature that cannot be cut as asked, as a problem with a place in the job. */
export const refusalProblem = (
  { name, code, reason, remedy, origin }: FeaturePlan & { status: 'refused' },
  units: Units,
): Diagnostic => ({
  code,
  severity: 'error',
  origin,
  message: `cannot be cut as asked: ${name}: ${plain(reason, units)}`,
  hint: plain(remedy, units),
})

/** The warnings of the sheet, as problems with a place; those about the whole plan only have none. */
export const warningProblems = ({ warnings, features, units }: Plan): Diagnostic[] =>
  warnings.flatMap(({ feature, code, say, wrong, origin, remedy }) =>
    origin === undefined
      ? []
      : [
          {
            code,
            severity: 'warning',
            origin,
            message: `${feature === null ? '' : `${features[feature]!.name}: `}${plain(wrong ?? say, units).replace(/\.$/, '')}`,
            ...(remedy === undefined ? {} : { hint: plain(remedy, units) }),
          },
        ],
  )

/** All problems on standard error, with their lines; colored only if that is a terminal. */
export const reportDiagnostics = async (
  diagnostics: readonly Diagnostic[],
  sources: ReadonlyMap<string, SourceFile>,
  color: boolean | undefined,
  io: Io,
): Promise<void> => {
  if (diagnostics.length === 0) return
  const { framed } = await import('./framed.ts')
  io.stderr.write(framed(diagnostics, sources, color, io))
}
