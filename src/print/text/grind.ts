import { words } from '../../phrase/words.ts'
import type { GrindSheet, GroundTool } from '../../sheet/grind/grind.ts'
import { SHAPE_WORDS } from '../../sheet/grind/shapes.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, leftAndRight } from './columns.ts'

const LABEL = 12
const NUMBER = 5

/** The grinding sheet to hang at the grinder. */
export const printGrind = (sheet: GrindSheet): string =>
  `${[
    '='.repeat(COLUMNS),
    ...leftAndRight(sheet.title.toUpperCase(), sheet.drawingNumber ?? ''),
    ...grindLines(sheet),
  ].join('\n')}\n`

/** The same as a part of the sheet of moves. */
export const grindLines = (sheet: GrindSheet, width: number = COLUMNS): string[] => [
  '='.repeat(width),
  ...leftAndRight('TOOLS TO GRIND', sheet.units === 'inch' ? 'inches' : 'millimeters', width),
  '='.repeat(width),
  ...sheet.cautions.flatMap((caution) => beside(' !', 3, words(caution, sheet.units), width)),
  ...sheet.tools.flatMap((tool) => toolLines(tool, sheet.units, width)),
  ...left(sheet, width),
]

const toolLines = (tool: GroundTool, units: Units, width: number): string[] => [
  '',
  '-'.repeat(width),
  ...leftAndRight(`"${tool.name}"`, shape(tool), width),
  '-'.repeat(width),
  ...tool.says.flatMap(({ label, says }) =>
    says.flatMap((phrase, i) => beside(i === 0 ? label : '', LABEL, words(phrase, units), width)),
  ),
  ...tool.warnings.flatMap((phrase) => beside('WARNING', LABEL, words(phrase, units), width)),
  '',
  ...tool.order.flatMap((phrase, i) => beside(`${String(i + 1).padStart(3)}  `, NUMBER, words(phrase, units), width)),
]

const shape = ({ facts }: GroundTool): string => {
  const [first] = facts
  if (first === undefined) return ''
  return `${SHAPE_WORDS[first.shape].called}, ${first.measured ? 'measured' : 'still to be ground'}`
}

const left = ({ left: refused, units }: GrindSheet, width: number): string[] =>
  refused.length === 0
    ? []
    : [
        '',
        ...refused.flatMap(({ name, reason }) =>
          beside('No tool', LABEL, `for ${name}, which cannot be cut as asked: ${words(reason, units)}.`, width),
        ),
      ]
