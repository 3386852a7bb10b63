import { Command } from 'commander'
import { brief } from '../diagnostics/escaped.ts'
import { formatIn, formatOption, formatOrEnding } from './format.ts'
import { type Io, UsageError } from './io.ts'
import { addClass } from './program-class.ts'
import { addWriting } from './program-writing.ts'
import { VERSION_LINE } from './version.ts'
import { widthOption } from './width.ts'

export type Report = (status: number) => void

/**
 * The commands and their help. The code of a command is loaded only when it runs: `--version` and `--help` load none of
 * it but the formats.
 */
export const programFor = (io: Io, report: Report): Command => {
  const program = new Command('groovewright')
    .description('Turns a lathe job with grooves, radii and V-grooves into a sheet of dial moves, proven by replay.')
    .version(VERSION_LINE, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .option('--color', 'color even where the output is no terminal')
    .option('--no-color', 'no color')
    .option('--root <folder>', 'let jobs name files below that folder too', (folder) => void io.roots?.push(folder))
    .showHelpAfterError('(groovewright --help shows the commands)')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(text),
      outputError: (text, write) => write(brief(text)),
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .addHelpText('after', EXAMPLES)
  addSheet(program, io, report)
  addCheck(program, io, report)
  addReplay(program, io, report)
  addGrind(program, io, report)
  addFinish(program, io, report)
  addClass(program, io, report)
  addWriting(program, io, report)
  return program
}

const EXAMPLES = `
Examples:
  $ groovewright new job -o press.yaml        start a job from a worked example
  $ groovewright sheet press.yaml             print the sheet of moves
  $ groovewright sheet press.yaml -o press.html
  $ groovewright sheet jobs/ --out sheets --format html
  $ groovewright check jobs/                  can all of them be cut as drawn?
  $ groovewright finish press.yaml --feature Neck --bottom-diameter .7685
  $ groovewright keys job features.width      what may stand in a job file

Exit status: 0 done, 1 something cannot be cut as asked, 2 the input could not
be read or the command was wrong.`

const addSheet = (program: Command, io: Io, report: Report): void => {
  program
    .command('sheet')
    .summary('print the sheet of moves for a job')
    .description(
      'Prints the sheet of moves for a job. Without a file, or with -, the job is read from standard input. With --out, the sheet of each job named, and of all jobs in the folders named, is written to a file of its name.',
    )
    .argument('[job...]', 'job file (YAML), or - for standard input')
    .addOption(formatOrEnding('sheet'))
    .option('--card', 'a page a feature for who knows the work: boxes to tick and a table of its cuts')
    .addOption(widthOption())
    .option('--drawing', 'a small drawing of each form in plain characters, as on a terminal')
    .option('--no-drawing', 'no such drawing on a terminal')
    .option('--grind', 'add how each tool is ground')
    .option('--slips', 'add what common mistakes on this job would measure')
    .option(
      '--supervised',
      'for learners: a dry run with the spindle off, and boxes for the initials of the instructor',
    )
    .option('--inspection', 'add a table to fill in at the bench')
    .option('--since <file>', 'begin with what changed since a sheet that was kept (as --format json wrote it)')
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--out <folder>', 'write a file for each job; the folder is made if it is not there')
    .option('--force', 'replace files that exist')
    .action(async (jobs: string[], options, command: Command) => {
      if (jobs.length === 0 && io.stdin.isTTY) return void (await shortHelp(command, io, report))
      const all = { ...program.opts(), ...options, format: formatIn('sheet', command) }
      if (options.out !== undefined) {
        const { sheetsCommand } = await import('./commands/sheets.ts')
        return void report(await sheetsCommand(jobs.length === 0 ? ['-'] : jobs, options.out, all, io))
      }
      if (jobs.length > 1) throw new UsageError('more than one job: give --out FOLDER to write a sheet for each')
      const { sheetCommand } = await import('./commands/sheet.ts')
      report(await sheetCommand(jobs[0] ?? '-', all, io))
    })
}

const addCheck = (program: Command, io: Io, report: Report): void => {
  program
    .command('check')
    .summary('check jobs, or folders of them')
    .description(
      'Plans and proves every job named, and all jobs in the folders named (YAML files with the keys of a job, also misspelt; others are skipped). One line a job. Status 0 only if everything is planned and holds.',
    )
    .argument('[path...]', 'job files or folders; - is standard input')
    .addOption(formatOption('check'))
    .option('--against <folder>', 'compare with the sheets kept there (NAME.json for NAME.yaml)')
    .action(async (paths: string[], options, command: Command) => {
      if (paths.length === 0 && io.stdin.isTTY) return void (await shortHelp(command, io, report))
      const { checkCommand } = await import('./commands/check.ts')
      report(await checkCommand(paths.length === 0 ? ['-'] : paths, { ...program.opts(), ...options }, io))
    })
}

const addReplay = (program: Command, io: Io, report: Report): void => {
  program
    .command('replay')
    .summary('replay a list of moves on the lathe of a job')
    .description(
      'Replays a list of dial moves (CSV, as sheet --format csv prints it, or YAML) on the lathe of a job: the finished form against the drawing, every faulty move by its line, and what the part would be. Status 0 only if it is proven within the limits.',
    )
    .argument('<job>', 'job file (YAML), or - for standard input')
    .argument('<moves>', 'list of moves (CSV or YAML), or - for standard input')
    .addOption(formatOrEnding('replay'))
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace the output file if it exists')
    .action(async (job: string, moves: string, options, command: Command) => {
      const { replayCommand } = await import('./commands/replay.ts')
      report(
        await replayCommand(job, moves, { ...program.opts(), ...options, format: formatIn('replay', command) }, io),
      )
    })
}

const addGrind = (program: Command, io: Io, report: Report): void => {
  program
    .command('grind')
    .summary('print how the tools of a job are ground')
    .description(
      'Prints a grinding sheet for each tool of a job, measured or still to be ground: blank, angles as ground and in use, what to grind so that the form comes out right, the order, and what to check. Without a file, or with -, the job is read from standard input.',
    )
    .argument('[job]', 'job file (YAML), or - for standard input')
    .addOption(formatOrEnding('grind'))
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace the output file if it exists')
    .action(async (job: string | undefined, options, command: Command) => {
      if (job === undefined && io.stdin.isTTY) return void (await shortHelp(command, io, report))
      const { grindCommand } = await import('./commands/grind.ts')
      report(await grindCommand(job ?? '-', { ...program.opts(), ...options, format: formatIn('grind', command) }, io))
    })
}

const addFinish = (program: Command, io: Io, report: Report): void => {
  program
    .command('finish')
    .summary('print what remains of a feature, from what was measured')
    .description(
      'Plans the finishing pass of one feature from what its bottom measures at the stop before it: where the zero really is, how wide the tool really is, and the moves that are left, replayed from the measured form. Status 1 where the part is already past its limits.',
    )
    .argument('<job>', 'job file (YAML), or - for standard input')
    .option('--feature <name>', 'name of the feature in the job; not needed where only one can be finished')
    .requiredOption('--bottom-diameter <length>', 'as measured at the stop: .7685, 49/64, 768.5 thou, 19.52 mm')
    .option('--width <length>', 'width of the groove as measured at the stop: shows the true width of the tool')
    .option('--outside-diameter <length>', 'as measured beside the groove: a depth on the drawing counts from it')
    .option('--sheet <file>', 'the sheet that was cut, as sheet --format json wrote it: its moves are gone on from')
    .option(
      '--roughed-at <reading>',
      'reading that the last roughing pass stopped at, where it is not the one the job plans now',
    )
    .option('--measured-again', 'the bottom was measured twice: plan also from one that no stated error explains')
    .addOption(formatOrEnding('finish'))
    .option('-o, --output <file>', 'write to a file; - is standard output')
    .option('--force', 'replace the output file if it exists')
    .action(async (job: string, options, command: Command) => {
      const { finishCommand } = await import('./commands/finish.ts')
      report(await finishCommand(job, { ...program.opts(), ...options, format: formatIn('finish', command) }, io))
    })
}

/** Nothing was named and there is no pipe: print what is needed instead of waiting for the keyboard. */
const shortHelp = async (command: Command, io: Io, report: Report): Promise<void> => {
  io.stderr.write(`Usage: ${command.parent?.name()} ${command.name()} ${command.usage()}\n\n${command.summary()}\n`)
  io.stderr.write(`(groovewright ${command.name()} --help shows more)\n`)
  report(2)
}
