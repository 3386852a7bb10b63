/**
 * A program of somebody who uses the library: compiled as strictly as can be against the package as it is packed, and
 * run. It knows the package by its name only.
 */
import {
  type Budgeted,
  CODES,
  type Code,
  compile,
  type Diagnostic,
  drawnSheetFor,
  type FeaturePlan,
  type Figure,
  FORMATS,
  type Format,
  hidden,
  jsonSchema,
  type Load,
  type Move,
  type Operation,
  type Phrase,
  type Plan,
  PRINTERS,
  printDiagnostics,
  type Role,
  type Sheet,
  type SheetFeature,
  type SheetStep,
  sheetFor,
  sheetSchema,
  type Trace,
} from 'groovewright'

const from =
  (files: Readonly<Record<string, string>>): Load =>
  (path) => {
    const text = files[path]
    return text === undefined
      ? { ok: false, message: `there is no ${path}`, hint: 'name a file of the sample' }
      : { ok: true, file: path, bytes: text }
  }

type Planned = Extract<FeaturePlan, { status: 'planned' }>
const isPlanned = (feature: FeaturePlan): feature is Planned => feature.status === 'planned'

const plannedIn = (files: Readonly<Record<string, string>>): Plan => {
  const { plan, diagnostics } = compile('good.yaml', from(files))
  if (plan === null || diagnostics.length > 0) throw new Error('the sample is no good job')
  return plan
}

/** The most that any size may miss what was aimed at, pm. */
const widest = (sizes: readonly Budgeted[]): number => Math.max(...sizes.map(({ low, high }) => high - low))

const asMoves = ({ moves }: Operation): readonly Move['action'][] => moves.map(({ action }) => action)

const figuresIn = (phrase: Phrase): readonly Figure[] =>
  phrase.filter((part): part is Figure => typeof part !== 'string')

const firstFeature = ({ features }: Sheet): SheetFeature => {
  const [first] = features
  if (first === undefined) throw new Error('a sheet without a feature')
  return first
}

/** Everything that the package says that it has, used once. */
export const sample = (files: Readonly<Record<string, string>>) => {
  const plan = plannedIn(files)
  const [feature] = plan.features.filter(isPlanned)
  if (feature === undefined) throw new Error('nothing is planned')
  const sheet: Sheet = sheetFor(plan)
  const turned: readonly SheetStep[] = sheet.steps.filter(({ slide }) => slide !== null)
  const trace: Trace['operations'][number] = feature.trace

  const wrong = compile('wrong.yaml', from(files))
  const problems: readonly Diagnostic[] = wrong.diagnostics
  const codes: readonly Code[] = problems.map(({ code }) => code)

  const refused = compile('refused.yaml', from(files)).plan?.features[0]
  const format: Format = 'text'
  const answers: ReadonlySet<Role> = new Set<Role>(['mark', 'turns', 'reading'])

  return {
    text: PRINTERS[format](sheet),
    data: PRINTERS.json(sheet),
    open: PRINTERS.text(hidden(sheet, answers)),
    picture: PRINTERS.svg(drawnSheetFor(plan)),
    formats: FORMATS,
    name: firstFeature(sheet).name,
    turned: turned.length,
    figures: turned.flatMap(({ does }) => figuresIn(does)).length,
    actions: asMoves(feature.operation),
    replayed: trace.slides.length,
    widest: widest(feature.budget),
    codes,
    means: codes.map((code) => CODES[code]),
    printed: printDiagnostics(problems, wrong.sources),
    refused: refused?.status === 'refused' ? refused.code : null,
    schemas: [jsonSchema('job'), sheetSchema()],
  }
}
