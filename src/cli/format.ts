import { type Command, Option } from 'commander'
import {
  type ClassPrinted,
  type Format,
  formatByEnding,
  formatNamed,
  formatsOf,
  offeredFor,
  type Printed,
} from '../print/registry.ts'
import { UsageError } from './io.ts'

export const formatOption = (what: Printed): Option =>
  new Option('--format <format>', 'how to print it').choices(formatsOf(what)).default('text')

/** The same where the file that it is written to says it too: the ending counts where no format is given. */
export const formatOrEnding = (what: Printed | ClassPrinted): Option =>
  new Option('--format <format>', 'how to print it; without it the ending of the output file says')
    .choices(offeredFor(what))
    .default('text')

export const formatIn = (what: Printed | ClassPrinted, command: Command): Format => {
  const { format, output } = command.opts<{ format: Format; output?: string }>()
  if (command.getOptionValueSource('format') !== 'default' || output === undefined) return format
  const asked = formatByEnding(output) ?? format
  if (offeredFor(what).includes(asked)) return asked
  const endings = offeredFor(what).map((each) => formatNamed(each).endings[0])
  throw new UsageError(
    `${JSON.stringify(output)} has the ending of ${asked}, which ${command.name()} does not print: end it in ${endings.join(' or ')}, or give --format`,
  )
}
