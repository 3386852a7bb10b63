import type { Diagnostic, Origin } from '../diagnostics/diagnostic.ts'
import { readSource } from '../source/read-source.ts'
import type { SourceFile } from '../source/source.ts'
import { type Included, isAttempt, notAttempt } from './included.ts'

/**
 * Reads a file for the compiler; `from` is the file that names it, null for the entry. The core itself touches no file.
 */
export type Load = (
  path: string,
  from: string | null,
) =>
  | { readonly ok: true; readonly file: string; readonly bytes: Uint8Array | string }
  | { readonly ok: false; readonly message: string; readonly hint: string }

export type Files = {
  readonly sources: Map<string, SourceFile>
  /** A file as data, or undefined if none of it can be read; the reason has then been reported. */
  readonly open: (path: string, askedAt: (Origin & { readonly as: Included }) | null) => SourceFile | undefined
}

export const openFiles = (load: Load, report: (problem: Diagnostic) => void): Files => {
  const sources = new Map<string, SourceFile>()
  const open: Files['open'] = (path, askedAt) => {
    const loaded = load(path, askedAt?.file ?? null)
    if (!loaded.ok) {
      const origin = askedAt ?? { file: path, path: [] }
      report({ code: 'unreadable', severity: 'error', origin, message: loaded.message, hint: loaded.hint })
      return undefined
    }
    const source = readSource(loaded.bytes, loaded.file)
    if (askedAt !== null && !isAttempt(source, askedAt.as)) {
      const { file, path: at } = askedAt
      report({
        code: 'not-that-file',
        severity: 'error',
        origin: { file, path: at },
        ...notAttempt(source.file, askedAt.as),
      })
      return undefined
    }
    sources.set(source.file, source)
    for (const problem of source.diagnostics) report(problem)
    return source.data === undefined ? undefined : source
  }
  return { sources, open }
}
