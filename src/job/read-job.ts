import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { Lathe } from '../lathe/lathe.ts'
import { latheFileSchema } from '../lathe/schema.ts'
import type { SourceFile } from '../source/source.ts'
import type { Tool } from '../tools/tool.ts'
import type { Units } from '../units/length.ts'
import type { JobWarning } from './checks/warnings.ts'
import { doubtsOf, slackDoubts } from './doubts.ts'
import { givenLookup } from './giver.ts'
import type { Job } from './job.ts'
import { checkNames, stepNames } from './names.ts'
import { featureNames, readFeature, saneCutting } from './read-feature.ts'
import { type Files, type Load, openFiles } from './read-files.ts'
import { type LatheRead, readLathe } from './read-lathe.ts'
import { readPart } from './read-part.ts'
import { readShape } from './read-shape.ts'
import { readTools } from './read-tools.ts'
import type { Places } from './reader.ts'
import { jobSchema, toolboxSchema } from './schema.ts'
import type { AnySchema } from './schema-walk.ts'

export type { Load } from './read-files.ts'

/** `job` is null if there is any error; every problem of every file is in `diagnostics`. */
export type ReadJob = {
  readonly job: Job | null
  readonly diagnostics: readonly Diagnostic[]
  readonly sources: ReadonlyMap<string, SourceFile>
}

/**
 * Reads a job and the files it includes: shape, measures, names and combinations of keys. Geometry and shop rules come
 * later.
 */
export const readJob = (entry: string, load: Load): ReadJob => {
  const diagnostics: Diagnostic[] = []
  const files = openFiles(load, (problem) => diagnostics.push(problem))
  const source = files.open(entry, null)
  const job = source ? jobFrom(source, files, diagnostics) : null
  const failed = diagnostics.some((problem) => problem.severity === 'error')
  return { job: failed ? null : job, diagnostics, sources: files.sources }
}

type Reading = {
  readonly files: Files
  readonly places: Places
  readonly diagnostics: Diagnostic[]
  readonly units: Units
}

const jobFrom = (source: SourceFile, files: Files, diagnostics: Diagnostic[]): Job | null => {
  const other = otherKind(source.data, source.file)
  if (other !== null) {
    diagnostics.push({ code: 'not-a-job', severity: 'error', origin: { file: source.file, path: [] }, ...other })
    return null
  }
  const places: Places = new Map()
  // Without units nothing is compiled; with millimeters the fewest false mistakes are reported (ISO 286 classes need
  // them).
  const values = shapeOf({ files, places, diagnostics, units: 'mm' }, jobSchema, source)
  if (!values) return null
  const reading: Reading = { files, places, diagnostics, units: values.units ?? 'mm' }
  const givenOf = givenLookup(places, diagnostics)
  const lathe = values.lathe === undefined ? null : latheOf(reading, values.lathe, source)
  const tools =
    values.tools === undefined && givenOf(values).has('tools') ? null : toolsOf(reading, values.tools ?? {}, source)
  const part = values.part ? readPart(values.part, reading.units, givenOf) : null
  const rows = values.features ?? []
  const names = featureNames(rows)
  if (values.cutting) saneCutting(values.cutting, givenOf)
  const features = rows.map((row, index) => row && readFeature(row, index, names[index] ?? '', values.cutting, givenOf))
  checkNames(rows, names, stepNames(values.part, givenOf), tools?.names ?? null, givenOf)
  if (!lathe || !tools || !part || !values.part || values.title === undefined || !values.units) return null
  return {
    title: values.title,
    drawingNumber: values['drawing-number'] ?? null,
    units: values.units,
    work: values.work ?? 'one-off',
    decision: values.decision ?? 'prove',
    part,
    lathe: lathe.lathe,
    tools: tools.tools,
    features: features.filter((feature) => feature != null),
    doubts: [...doubtsOf(source, values.part, part, values.units, givenOf), ...lathe.doubts],
    origin: { file: source.file, path: [] },
  }
}

/** A list of moves, a lathe or a toolbox used as a job: one plain sentence instead of a list of missing keys. */
const otherKind = (data: unknown, file: string): { message: string; hint: string } | null => {
  if (isMoves(data))
    return {
      message: 'this is a list of moves, not a job',
      hint: `replay it on a job: groovewright replay JOB ${file}`,
    }
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return null
  if (['title', 'part', 'features', 'lathe', 'tools', 'cutting', 'work'].some((key) => key in data)) return null
  const hint = (key: string) => `name it in a job, like ${key}: FILE, and give the job's file here`
  if ('cross-feed' in data) return { message: 'this is a lathe file, not a job', hint: hint('lathe') }
  const tools = Object.values(data).filter((one) => typeof one === 'object' && one !== null && 'shape' in one)
  return tools.length > 0 ? { message: 'this is a toolbox, not a job', hint: hint('tools') } : null
}

/** In YAML, recognized by its moves; a table is one long text to YAML, recognized by its columns. */
const isMoves = (data: unknown): boolean =>
  typeof data === 'string'
    ? /^[\w-]+(,[\w-]+)*,action(,|\s)/.test(data)
    : typeof data === 'object' && data !== null && 'moves' in data && !('features' in data)

/** Checks one file against its schema; its problems and places are added to those of the job. */
const shapeOf = <S extends AnySchema>(reading: Reading, schema: S, source: SourceFile) => {
  const { value, places, problems } = readShape(schema, source, reading.units)
  reading.diagnostics.push(...problems)
  for (const [values, place] of places) reading.places.set(values, place)
  return value
}

const latheOf = (
  reading: Reading,
  values: NonNullable<ReturnType<typeof shapeOf<typeof jobSchema>>>['lathe'],
  from: SourceFile,
): LatheAsked | null => {
  if (typeof values === 'object') return latheFrom(reading, values)
  const source =
    values === undefined ? undefined : reading.files.open(values, { file: from.file, path: ['lathe'], as: 'lathe' })
  const included = source && shapeOf(reading, latheFileSchema, source)
  return included ? latheFrom(reading, included) : null
}

type LatheAsked = { readonly lathe: Lathe; readonly doubts: readonly JobWarning[] }

const latheFrom = (reading: Reading, values: LatheRead): LatheAsked | null => {
  const givenOf = givenLookup(reading.places, reading.diagnostics)
  const lathe = readLathe(values, reading.units, givenOf)
  return lathe && { lathe, doubts: slackDoubts(values, reading.units, givenOf) }
}

type Toolbox = { readonly tools: Record<string, Tool>; readonly names: readonly string[] }

const toolsOf = (reading: Reading, values: object | string, from: SourceFile): Toolbox | null => {
  const source =
    typeof values === 'string'
      ? reading.files.open(values, { file: from.file, path: ['tools'], as: 'toolbox' })
      : undefined
  const toolbox = typeof values === 'string' ? source && shapeOf(reading, toolboxSchema, source) : values
  if (!toolbox) return null
  const names = [...(reading.places.get(toolbox)?.keys.keys() ?? [])].filter((name) => name !== 'units')
  return { tools: readTools(toolbox, givenLookup(reading.places, reading.diagnostics)), names }
}
