import type { Command } from 'commander'
import { formatIn, formatOrEnding } from './format.ts'
import type { Io } from './io.ts'
import type { Report } from './program.ts'

/** The commands for a class: sheets out, answers in. */
export const addClass = (program: Command, io: Io, report: Report): void => {
  addHandout(program, io, report)
  addGrade(program, io, report)
}

const addHandout = (program: Command, io: Io, report: Report): void => {
  program
    .command('handout')
    .summary('write exercise sheets for a class, and the key')
    .description(
      'Writes a set of exercise sheets into a folder: for each learner a sheet in every format and an answer form, and for the teacher the key and a manifest, by which the answers are graded. Every job on them is proven by replay.',
    )
    .argument('<exercise>', 'exercise file (YAML), or - for standard input')
    .requiredOption('--out <folder>', 'where the set is written; made if it is not there')
    .option('--force', 'replace files that are there')
    .action(async (exercise: string, options) => {
      const { handoutCommand } = await import('./commands/handout.ts')
      report(await handoutCommand(exercise, { ...program.opts(), ...options }, io))
    })
}

const addGrade = (program: Command, io: Io, report: Report): void => {
  program
    .command('grade')
    .summary('grade answers, with the reason for each wrong one')
    .description(
      'Grades filled-in answer forms (YAML or CSV, or folders of them) by the manifest of a set. Readings are replayed: whatever proves is right. A wrong answer is told with its likely causes and what it would have cut.',
    )
    .argument('<set>', 'manifest.json of the set')
    .argument('<answers...>', 'answer forms, or folders of them')
    .addOption(formatOrEnding('grades'))
    .option('--out <folder>', 'write a page a learner, and the table, in every format')
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace files that are there')
    .action(async (manifest: string, answers: string[], options, command: Command) => {
      const { gradeCommand } = await import('./commands/grade.ts')
      report(
        await gradeCommand(
          manifest,
          answers,
          { ...program.opts(), ...options, format: formatIn('grades', command) },
          io,
        ),
      )
    })
}
