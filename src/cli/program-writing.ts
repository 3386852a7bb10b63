import { Argument, type Command, Option } from 'commander'
import type { KeysName } from './commands/keys.ts'
import type { SchemaKind } from './commands/schema.ts'
import type { Io } from './io.ts'
import type { Report } from './program.ts'

/** The files of a class: what a teacher writes, what is handed out and comes back. */
const CLASS = ['exercise', 'answers', 'manifest', 'grades'] as const
const FILES = ['job', 'lathe', 'toolbox'] as const

/** The commands that help to write a file. None of them reads one. */
export const addWriting = (program: Command, io: Io, report: Report): void => {
  addNew(program, io, report)
  addKeys(program, io, report)
  addSchema(program, io, report)
  addSurvey(program, io, report)
}

const addNew = (program: Command, io: Io, report: Report): void => {
  program
    .command('new')
    .summary('print a file to start from')
    .description('Prints a commented file to start from: a job, a lathe, a toolbox or an exercise.')
    .addArgument(new Argument('<kind>', 'what to start').choices([...FILES, 'exercise']))
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace the output file if it exists')
    .action(async (kind: KeysName, options) => {
      const { newCommand } = await import('./commands/new.ts')
      report(newCommand(kind, options, io))
    })
}

const addKeys = (program: Command, io: Io, report: Report): void => {
  program
    .command('keys')
    .summary('print the keys that a file may have')
    .description(
      'Prints every key that a job, a lathe, a toolbox or an exercise may have: what it means, what holds where it is left out, and an example. A key below another is written with a dot; <name> stands for a name of your own. With codes: every code that a problem may have.',
    )
    .addArgument(new Argument('<kind>', 'of what').choices([...FILES, 'exercise', 'codes']))
    .argument('[name]', 'only the keys of that name, and those below it: accuracy, features.width')
    .action(async (kind: KeysName | 'codes', name: string | undefined) => {
      const { keysCommand } = await import('./commands/keys.ts')
      report(keysCommand(kind, name, io))
    })
}

const addSchema = (program: Command, io: Io, report: Report): void => {
  program
    .command('schema')
    .summary('print a JSON Schema')
    .description(
      'Prints the JSON Schema (draft-7) of a job, a lathe, a toolbox, a list of moves, of the sheet as data, or of the files of a class.',
    )
    .addArgument(new Argument('<kind>', 'of what').choices([...FILES, 'sheet', 'moves', ...CLASS]))
    .action(async (kind: SchemaKind) => {
      const { schemaCommand } = await import('./commands/schema.ts')
      report(await schemaCommand(kind, io))
    })
}

const addSurvey = (program: Command, io: Io, report: Report): void => {
  program
    .command('survey')
    .summary('print a page to get to know a lathe')
    .description(
      'Prints a page to fill in at the lathe: how to find out what its lathe file asks, and the file that follows.',
    )
    .addOption(new Option('--units <units>', 'units of its dials').choices(['inch', 'mm']).default('inch'))
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace the output file if it exists')
    .action(async (options) => {
      const { surveyCommand } = await import('./commands/survey.ts')
      report(surveyCommand(options, io))
    })
}
