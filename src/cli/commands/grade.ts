import type { Diagnostic } from '../../diagnostics/diagnostic.ts'
import { oneLine } from '../../diagnostics/escaped.ts'
import type { Handed, Manifest } from '../../exercise/manifest.ts'
import { type Answers, readAnswers } from '../../grading/answers.ts'
import { gatherer } from '../../grading/class.ts'
import { gradeSheet } from '../../grading/grade.ts'
import type { GradedLearner, Grades } from '../../grading/grades.ts'
import { foreign } from '../../grading/other-sheet.ts'
import { classPrinterOf, type Format } from '../../print/registry.ts'
import { MOST_TABLE_BYTES } from '../../source/text.ts'
import { type AnswerFiles, answerFiles } from '../answer-files.ts'
import { inEveryFormat, type PrintAll } from '../every-format.ts'
import { folderWriter } from '../folder-writer.ts'
import { type Io, reasonOf, UsageError } from '../io.ts'
import { deliver, guardInputs, type OutputOptions } from '../output.ts'
import { progressOn } from '../progress.ts'
import { readManifest } from '../read-manifest.ts'
import { reportDiagnostics } from '../report.ts'
import { tell } from '../tell.ts'

export type GradeOptions = OutputOptions & { readonly format: Format; readonly out?: string; readonly color?: boolean }

/** Grades every answer form by its manifest. 0: all are graded; 1: some are missing or not graded. */
export const gradeCommand = async (
  path: string,
  given: readonly string[],
  options: GradeOptions,
  io: Io,
): Promise<number> => {
  const manifest = readManifest(path, io)
  const files = answerFiles(given, io)
  for (const { path: lost, why } of files.missing) tell(`cannot read ${lost}: ${why}`, io)
  if (files.missing.length > 0) return 2
  guardInputs([path, ...files.paths], options, io)
  const forms = await readForms(manifest, files, options, io)
  const print = await classPrinterOf('grades', options.format)
  const grades = await gradeAll(manifest, forms, options, io, await inEveryFormat('page'))
  if (options.out !== undefined)
    (await inEveryFormat('grades'))('grades', grades, folderWriter(options.out, options.force === true, io))
  deliver(print(grades), options, io)
  return grades.learners.every(
    ({ score, blanks }) => score !== null && blanks.every(({ verdict }) => verdict !== 'ungraded'),
  )
    ? 0
    : 1
}

type Forms = { readonly bySheet: ReadonlyMap<string, readonly Answers[]>; readonly broken: readonly string[] }

/** What is named and cannot be read is the user's mistake. */
const formBytes = (path: string, io: Io): Uint8Array | string => {
  try {
    return io.readFile(path, { most: MOST_TABLE_BYTES, pipe: true })
  } catch (error) {
    throw new UsageError(`cannot read ${path}: ${reasonOf(error)}`)
  }
}

/** Every form that can be read, by its sheet; what cannot is told with its place. */
const readForms = async (
  manifest: Manifest,
  { paths }: AnswerFiles,
  { color }: GradeOptions,
  io: Io,
): Promise<Forms> => {
  const bySheet = new Map<string, Answers[]>()
  const broken: string[] = []
  for (const path of paths) {
    const { answers, diagnostics, source } = readAnswers(formBytes(path, io), path)
    await reportDiagnostics(diagnostics, new Map([[path, source]]), color, io)
    if (diagnostics.length > 0) broken.push(path)
    for (const one of answers) {
      const sheet = asHanded(one.sheet, manifest)
      bySheet.set(sheet, [...(bySheet.get(sheet) ?? []), { ...one, sheet }])
    }
  }
  return { bySheet, broken }
}

/** A table of numbers drops the zeros that a sheet's number begins with. */
const asHanded = (sheet: string, { learners }: Manifest): string =>
  learners.find((one) => one.sheet === sheet || (/^\d+$/.test(sheet) && Number(one.sheet) === Number(sheet)))?.sheet ??
  sheet

const gradeAll = async (
  manifest: Manifest,
  forms: Forms,
  options: GradeOptions,
  io: Io,
  printPage: PrintAll<'page'>,
): Promise<Grades> => {
  const class_ = gatherer()
  const pages = options.out === undefined ? null : folderWriter(options.out, options.force === true, io)
  const progress = progressOn(io, manifest.learners.length)
  const learners: GradedLearner[] = []
  for (const handed of manifest.learners) {
    const graded = gradeOne(manifest, handed, forms, io)
    class_.add(graded)
    // The forms are on the page only: those of a thousand would fill the memory.
    learners.push({ ...graded, pictures: [] })
    if (pages !== null && graded.score !== null)
      printPage(nameOf(handed), { title: manifest.title, units: handed.units, graded }, pages)
    await progress.step()
  }
  progress.end()
  const known = new Set(manifest.learners.map(({ sheet }) => sheet))
  for (const sheet of forms.bySheet.keys())
    if (!known.has(sheet)) tell(`an answer form is of sheet ${JSON.stringify(sheet)}, which the set does not have`, io)
  const grades: Grades = { title: manifest.title, learners, questions: class_.questions(), teach: class_.teach() }
  return grades
}

const nameOf = ({ form }: Handed): string => form.replace(/^answers\//, '').replace(/\.yaml$/, '')

const gradeOne = (manifest: Manifest, handed: Handed, { bySheet, broken }: Forms, io: Io): GradedLearner => {
  const note = (text: string): GradedLearner => ({
    sheet: handed.sheet,
    learner: handed.learner,
    score: null,
    outOf: handed.blanks.reduce((sum, { outOf }) => sum + outOf, 0),
    blanks: [],
    cuts: [],
    pictures: [],
    note: text,
  })
  const all = bySheet.get(handed.sheet) ?? []
  const filled = all.filter(({ values }) => [...values.values()].some((value) => value !== ''))
  const [answers] = filled.length > 0 ? filled : all
  if (broken.some((path) => path.replaceAll('\\', '/').endsWith(`/${nameOf(handed)}.yaml`)) && answers === undefined)
    return note('the form cannot be read: mend it, and grade again')
  if (answers === undefined) return note('no answers')
  // Everybody was given a form: one as it was handed out is of somebody who has not answered.
  if (filled.length === 0) return note('nothing is filled in')
  if (filled.length > 1) return note('two forms are filled in for this sheet: keep one')
  const { learner, set } = answers
  if (set !== null && handed.set !== undefined && set !== handed.set)
    return note('the form is of another set, or of this one before it was handed out anew: it is not graded')
  if (learner !== null && handed.learner !== null && plainName(learner) !== plainName(handed.learner))
    return note("the form is signed by another learner: it is not graded as this sheet's")
  const graded = gradeSheet(handed, answers)
  for (const problem of unread(graded, answers)) {
    const { line, column } = problem.span!
    io.stderr.write(`${oneLine(`${answers.file}:${line}:${column}: ${problem.message}; ${problem.hint}`)}\n`)
  }
  return { ...graded, note: foreign(manifest, handed, answers, graded) }
}

const plainName = (name: string): string => name.trim().normalize('NFC').toLowerCase().replace(/\s+/g, ' ')

/** An answer that is no number is not wrong: it is told, and left out of the marks. */
const unread = ({ blanks }: GradedLearner, { at, file }: Answers): Diagnostic[] =>
  blanks.flatMap(({ id, says: [message, hint], verdict }) =>
    verdict !== 'ungraded'
      ? []
      : [
          {
            code: 'answer',
            severity: 'error',
            origin: { file, path: [] },
            span: at(id),
            message: `${message}, and is not graded`,
            hint: hint!,
          },
        ],
  )
