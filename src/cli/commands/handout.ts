import { bareSheetFor, compilePlain } from '../../compile.ts'
import type { Diagnostic } from '../../diagnostics/diagnostic.ts'
import { answerForm } from '../../exercise/form.ts'
import type { HandOut } from '../../exercise/hand-out.ts'
import type { Key } from '../../exercise/key.ts'
import { manifestText } from '../../exercise/manifest.ts'
import { ownValues } from '../../exercise/own.ts'
import { readExercise } from '../../exercise/read.ts'
import { type Compile, setOf } from '../../exercise/set.ts'
import { inEveryFormat } from '../every-format.ts'
import { folderWriter, holds } from '../folder-writer.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import { progressOn } from '../progress.ts'
import { reportDiagnostics } from '../report.ts'
import { tell } from '../tell.ts'

export type HandoutOptions = { readonly out: string; readonly force?: boolean; readonly color?: boolean }

/** Writes a set: a sheet a learner in every format, answer forms, the key, and last the manifest. */
export const handoutCommand = async (entry: string, options: HandoutOptions, io: Io): Promise<number> => {
  const load = loaderFor(io, entry === '-' ? await readStdin(io) : null)
  const { exercise, diagnostics, sources } = readExercise(entry === '-' ? STDIN : entry, load)
  await reportDiagnostics(diagnostics, sources, options.color, io)
  if (exercise === null) return 2
  const problems: Diagnostic[] = []
  const own = ownValues(load, (one) => problems.push(one))
  if (options.force !== true && holds(options.out, 'manifest.json', io))
    throw new UsageError(`${JSON.stringify(options.out)} holds a set already; say --force to replace it`)
  const files = folderWriter(options.out, options.force === true, io)
  const printSheet = await inEveryFormat('worksheet')
  // As text: the forms of a thousand operations would fill the memory.
  const done: { readonly key: HandOut['key']; readonly handed: string }[] = []
  const progress = progressOn(io, exercise.learners.length)
  let repeated: number | null = null
  for (const made of setOf(exercise, compileText, own, bareSheetFor)) {
    if (problems.length > 0) break
    if ('tried' in made) {
      progress.end()
      return failed(
        `no job for sheet ${made.index + 1}: of ${made.tried} tried none proves; of the last: ${made.why}; ${made.hint}`,
        io,
      )
    }
    repeated = made.holds ?? repeated
    if (made.worksheet.blanks.length === 0) {
      progress.end()
      return failed(
        `sheet ${made.worksheet.sheet} has nothing to fill in: ${exercise.hide.join(', ')} finds nothing to ask in this job`,
        io,
      )
    }
    printSheet(made.name, made.worksheet, files)
    files.write(`answers/${made.name}.yaml`, answerForm(made.worksheet, made.handed.set))
    done.push({ key: made.key, handed: JSON.stringify(made.handed) })
    await progress.step()
  }
  progress.end()
  if (problems.length > 0) {
    await reportDiagnostics(problems.slice(0, 1), sources, options.color, io)
    return 2
  }
  const { title, teaches } = exercise
  const key: Key = { title, teaches, sheets: done.map((one) => one.key) }
  ;(await inEveryFormat('key'))('key', key, files)
  files.write(
    'manifest.json',
    manifestText(
      title,
      teaches,
      done.map(({ handed }) => handed),
    ),
    true,
  )
  if (repeated !== null)
    tell(
      `the values make ${repeated} different sheets that prove: from sheet ${repeated + 1} on they are like earlier ones`,
      io,
    )
  io.stdout.write(`${done.length} sheets in ${options.out}\n`)
  return 0
}

const compileText: Compile = (text) => {
  const { plan, diagnostics } = compilePlain('job', () => ({ ok: true, file: 'job', bytes: text }))
  return {
    plan,
    why: plan === null ? (diagnostics.find(({ severity }) => severity === 'error')?.message ?? null) : null,
  }
}

const failed = (message: string, io: Io): number => {
  tell(message, io)
  return 1
}
