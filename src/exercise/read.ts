import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { type Files, type Load, openFiles } from '../job/read-files.ts'
import { readShape } from '../job/read-shape.ts'
import type { SourceFile } from '../source/source.ts'
import type { Exercise, Learner, Vary } from './exercise.ts'
import { inlined, problem } from './inline.ts'
import { readLearners } from './learners.ts'
import { exerciseSchema } from './schema.ts'
import { isProblem, type Space, spaceOf } from './space.ts'
import type { Tree } from './tree.ts'

/** One base job: its text as a tree, and what it may become. */
export type Base = { readonly file: string; readonly tree: Tree; readonly space: Space }

/** `exercise` is null if there is any error; every problem of every file is in `diagnostics`. */
export type ReadExercise = {
  readonly exercise: (Exercise & { readonly bases: readonly Base[] }) | null
  readonly diagnostics: readonly Diagnostic[]
  readonly sources: ReadonlyMap<string, SourceFile>
}

export const readExercise = (entry: string, load: Load): ReadExercise => {
  const diagnostics: Diagnostic[] = []
  const files = openFiles(load, (one) => diagnostics.push(one))
  const source = files.open(entry, null)
  const exercise = source === undefined ? null : exerciseFrom(source, files, load, diagnostics)
  const failed = diagnostics.some(({ severity }) => severity === 'error')
  return { exercise: failed ? null : exercise, diagnostics, sources: files.sources }
}

const exerciseFrom = (
  source: SourceFile,
  files: Files,
  load: Load,
  diagnostics: Diagnostic[],
): ReadExercise['exercise'] => {
  const wrong = (path: Diagnostic['origin']['path'], code: Code, message: string, hint: string): null => {
    diagnostics.push({ ...problem(source.file, path, code, message, hint), at: 'key' })
    return null
  }
  if (isJob(source.data))
    return wrong([], 'not-an-exercise', 'this is a job, not an exercise', `name it in one, like base: ${source.file}`)
  const { value, problems } = readShape(exerciseSchema, source, 'inch')
  diagnostics.push(...problems)
  if (problems.length > 0 || value?.base === undefined || value.hide === undefined) return null
  if (value.sheets !== undefined && value.learners !== undefined)
    return wrong(['sheets'], 'said-twice', 'the exercise has sheets and learners', 'keep one of the two')
  if (value.sheets === undefined && value.learners === undefined)
    return wrong([], 'missing-key', 'nobody gets a sheet', 'give sheets: 30, or learners: a list of names')
  const vary = varyOf(value.vary ?? {})
  const learners = learnersOf(value, source, load, diagnostics)
  const bases = [value.base].flat().flatMap((path): Base[] => {
    const base = path === undefined ? undefined : files.open(path, { file: source.file, path: ['base'], as: 'job' })
    const tree = base === undefined ? null : inlined(base, files)
    if (tree === null) return []
    const space = spaceOf(tree, vary)
    if (!isProblem(space)) return [{ file: base!.file, tree, space }]
    wrong(['vary', space.path], 'vary', space.message, space.hint)
    return []
  })
  return {
    title: value.title ?? '',
    teaches: value.teaches ?? '',
    seed: value.seed ?? value.title ?? '',
    bases,
    learners,
    vary,
    hide: value.hide.filter((word) => word !== undefined),
    tolerance: value.tolerance ?? null,
  }
}

const isJob = (data: unknown): boolean => typeof data === 'object' && data !== null && 'features' in data

type Asked = NonNullable<ReturnType<typeof readShape<typeof exerciseSchema>>['value']>

const learnersOf = (value: Asked, source: SourceFile, load: Load, diagnostics: Diagnostic[]): readonly Learner[] => {
  const { learners, sheets } = value
  if (sheets !== undefined) return Array.from({ length: sheets }, () => ({ name: null, own: new Map() }))
  if (typeof learners !== 'string') return (learners ?? []).map((name) => ({ name: name ?? null, own: new Map() }))
  return readLearners(learners, source, load, diagnostics)
}

const varyOf = (asked: NonNullable<Asked['vary']>): Vary[] =>
  Object.entries(asked).flatMap(([path, one]): Vary[] => {
    if (one === undefined) return []
    if (Array.isArray(one)) return [{ path, how: 'list', values: one.filter((text) => text !== undefined) }]
    const { under, over, from = '', to = '', step = '' } = one as Exclude<typeof one, readonly unknown[]>
    const range = { from, to, step }
    if (under !== undefined) return [{ path, how: 'under', of: under, range }]
    return [over === undefined ? { path, how: 'range', range } : { path, how: 'over', of: over, range }]
  })
