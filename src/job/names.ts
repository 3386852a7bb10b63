import { suggest } from '../diagnostics/suggest.ts'
import { KINDS } from '../features/registry.ts'
import type { FeatureRead, GivenLookup } from './read-feature.ts'
import type { PartRead } from './read-part.ts'
import { either, listed, quoted } from './schema-walk.ts'

/**
 * Names that features may refer to besides "end"; null if a name could not be read. A plain bar is one step called
 * "body".
 */
export const stepNames = (part: PartRead | undefined, givenOf: GivenLookup): string[] | null => {
  if (!part) return null
  if (!givenOf(part).has('steps')) return ['body']
  const names = part.steps?.map((step) => step?.name) ?? [undefined]
  return names.every((name) => name !== undefined) ? names : null
}

/** Every step and tool that a feature names must exist. Null means that names could not be read. */
export const checkNames = (
  features: readonly (FeatureRead | undefined)[],
  names: readonly string[],
  steps: readonly string[] | null,
  tools: readonly string[] | null,
  givenOf: GivenLookup,
): void => {
  for (const [index, feature] of features.entries()) {
    if (!feature) continue
    checkStep(feature, steps, givenOf)
    checkTool(feature, tools, givenOf)
    if (feature.name !== undefined && names.indexOf(feature.name) < index)
      givenOf(feature).report(
        'name',
        'duplicate-name',
        `two features are called ${quoted(feature.name)}`,
        'give every feature its own name',
      )
  }
}

const checkStep = (feature: FeatureRead, steps: readonly string[] | null, givenOf: GivenLookup): void => {
  const given = givenOf(feature as Readonly<Record<string, unknown>>)
  for (const key of feature.kind === undefined ? [] : KINDS[feature.kind].stepKeys) {
    const name = given.values[key]
    if (typeof name !== 'string' || name === 'end' || !steps || steps.includes(name)) continue
    const known = ['end', ...steps]
    const near = suggest(name, known)
    const hint = near ? `did you mean "${near}"?` : `say ${known.length > 12 ? listed(known) : either(known)}`
    given.report(key, 'unknown-step', `no step is called ${quoted(name)}`, hint)
  }
}

const TOOL_KEYS = ['tool', 'rough-tool'] as const

const checkTool = (feature: FeatureRead, tools: readonly string[] | null, givenOf: GivenLookup): void => {
  for (const key of TOOL_KEYS) checkNamed(feature, key, tools, givenOf)
}

const checkNamed = (
  feature: FeatureRead,
  key: (typeof TOOL_KEYS)[number],
  tools: readonly string[] | null,
  givenOf: GivenLookup,
): void => {
  const tool = (feature as Readonly<Record<string, unknown>>)[key]
  if (typeof tool !== 'string' || !tools || tools.includes(tool)) return
  const near = suggest(tool, tools)
  const known =
    tools.length > 0
      ? `the toolbox has ${listed(tools)}`
      : 'the toolbox is empty: leave tool out and the sheet says what to grind'
  givenOf(feature as Readonly<Record<string, unknown>>).report(
    key,
    'unknown-tool',
    `no tool is called ${quoted(tool)}`,
    near ? `did you mean "${near}"?` : known,
  )
}
