import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { printDiagnostics } from '../diagnostics/frame.ts'
import type { SourceFile } from '../source/source.ts'
import { paintFor } from './color.ts'
import type { Io } from './io.ts'

/** Problems with their lines, as they are shown on standard error. */
export const framed = (
  diagnostics: readonly Diagnostic[],
  sources: ReadonlyMap<string, SourceFile>,
  color: boolean | undefined,
  io: Io,
): string => {
  const paint = paintFor(color, io.env, io.stderr)
  return printDiagnostics(diagnostics, sources).replace(
    /: (error|warning): /g,
    (_, severity: string) => `: ${severity === 'error' ? paint.red(severity) : paint.yellow(severity)}: `,
  )
}
