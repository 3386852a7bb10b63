import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import { suggest } from '../diagnostics/suggest.ts'
import { findMaterial, materialNames } from '../handbook/materials.ts'
import type { Material, Part, Step } from '../moves/part.ts'
import { exact, say } from '../phrase/say.ts'
import { words } from '../phrase/words.ts'
import { formatExact } from '../units/format.ts'
import type { Length, Units } from '../units/length.ts'
import { isSlip, likelyMeasured } from './measured.ts'
import type { GivenLookup } from './read-feature.ts'
import type { partSchema, stepSchema } from './schema.ts'
import { quoted } from './schema-walk.ts'

export type PartRead = AsRead<z.output<typeof partSchema>>
type StepRead = AsRead<z.output<typeof stepSchema>>

/** Null if something is missing or impossible; the reason has then been reported. */
export const readPart = (values: PartRead, units: Units, givenOf: GivenLookup): Part | null => {
  const given = givenOf(values)
  const material = readMaterial(values, units, givenOf)
  const steps = readSteps(values, units, givenOf)
  if (!material || !steps) return null
  const whole = steps.reduce((sum, step) => sum + step.length, 0)
  if (values.overhang !== undefined && values.overhang > whole)
    given.report(
      'overhang',
      'impossible',
      'the overhang is longer than the part',
      'give how far the part sticks out, or describe the whole part in steps',
    )
  const dog = readDog(values, whole, givenOf)
  const out = overhangOf(values, whole, units, givenOf)
  return {
    material,
    held: values.held ?? 'chuck',
    overhang: out ?? whole,
    overhangGiven: out !== null,
    dog,
    steps,
    origin: given.origin,
  }
}

/** How far it sticks out, from the overhang or from the grip; null if neither is given. */
const overhangOf = (values: PartRead, whole: Length, units: Units, givenOf: GivenLookup): Length | null => {
  const given = givenOf(values)
  const { overhang, grip, held = 'chuck' } = values
  if (grip !== undefined && overhang !== undefined)
    given.report('grip', 'too-many-keys', 'grip and overhang say the same', 'keep one of them')
  if (grip !== undefined && (held === 'between centers' || held === 'mandrel'))
    given.report('grip', 'useless-key', `nothing grips the work: held: ${held}`, 'take grip out')
  if (grip !== undefined && grip >= whole)
    given.report('grip', 'impossible', 'the grip takes the whole part', 'give how much of the headstock end is held')
  const out = overhang ?? (grip === undefined ? null : Math.max(0, whole - grip))
  const gripped = out === null ? null : whole - out
  // A center carries the free end.
  if (gripped === null || gripped < 0 || (held !== 'chuck' && held !== 'collet')) return out
  const thick = values.steps?.at(-1)?.diameter ?? values.diameter
  if (thick === undefined || gripped >= Math.min(thick.nominal, out!) / SHORTEST) return out
  given.report(
    overhang === undefined ? 'grip' : 'overhang',
    'short-grip',
    words(
      say`only ${exact('drawing', gripped, units)} of the part would be held, and ${exact('drawing', out!, units)} sticks out`,
      units,
    ),
    words(
      say`let the ${held} hold an eighth of the diameter at least, better all of it, or hold the free end in a center too (held: chuck and center)`,
      units,
    ),
  )
  return out
}

/**
 * Less than an eighth of the diameter and of what sticks out is no hold for a form tool; a good one is a whole diameter.
 * Common practice, no source.
 */
const SHORTEST = 8

const readDog = (values: PartRead, whole: number, givenOf: GivenLookup): number | null => {
  const { dog, held } = values
  if (dog === undefined) return null
  const given = givenOf(values)
  if (held !== 'between centers')
    given.report(
      'dog',
      'impossible',
      'a dog drives work between centers',
      'write held: between centers, or leave it out',
    )
  if (dog >= whole)
    given.report('dog', 'impossible', 'the dog takes the whole part', 'give how much of the headstock end it takes')
  return dog
}

const readMaterial = (values: PartRead, units: Units, givenOf: GivenLookup): Material | null => {
  const { material } = values
  const speedUnits = units === 'inch' ? 'ft/min' : 'm/min'
  if (material === undefined) return null
  if (typeof material === 'object') {
    const { name, 'cutting-speed': cuttingSpeed } = material
    return name !== undefined && cuttingSpeed !== undefined
      ? { name, cuttingSpeed, speedUnits, source: 'given in the job' }
      : null
  }
  const row = findMaterial(material)
  if (row)
    return {
      name: row.name,
      cuttingSpeed: units === 'inch' ? row.hssFtPerMin : row.hssMPerMin,
      speedUnits,
      source: row.source,
    }
  const near = suggest(material, materialNames())
  const own = 'or give a name and a cutting-speed'
  const hint = near ? `did you mean "${near}"? ${own}` : `the table has ${materialNames().join(', ')}; ${own}`
  givenOf(values).report(
    'material',
    'unknown-material',
    `${quoted(material)} is not in the table of cutting speeds`,
    hint,
  )
  return null
}

const readSteps = (values: PartRead, units: Units, givenOf: GivenLookup): Step[] | null => {
  const given = givenOf(values)
  const bar = (['diameter', 'length', 'measured-diameter'] as const).filter((key) => given.has(key))
  if (given.has('steps')) {
    // If the list itself was refused, that is the problem to report.
    if (values.steps !== undefined && bar.length > 0)
      given.report(
        bar[0]!,
        'too-many-keys',
        `${bar.join(' and ')} ${bar.length > 1 ? 'are' : 'is'} for a plain bar, and steps are given`,
        'keep the steps, or diameter and length',
      )
    return values.steps ? stepsOf(values.steps, units, givenOf) : null
  }
  if (bar.length === 0)
    given.report(null, 'missing-key', 'the part has no size', 'give steps, or diameter and length of a plain bar')
  for (const key of bar.length > 0 ? (['diameter', 'length'] as const) : [])
    if (!given.has(key)) given.report(null, 'missing-key', `the bar has no ${key}`, `give ${key}, or steps`)
  const step = readStep({ ...values, name: 'body' }, units, given)
  return step && [step]
}

const stepsOf = (rows: readonly (StepRead | undefined)[], units: Units, givenOf: GivenLookup): Step[] | null => {
  const names = new Set<string>()
  for (const row of rows) {
    if (row?.name === undefined) continue
    if (row.name === 'end')
      givenOf(row).report(
        'name',
        'reserved',
        'a step cannot be called "end"',
        'that word means the free end of the part',
      )
    if (names.has(row.name))
      givenOf(row).report(
        'name',
        'duplicate-name',
        `two steps are called ${quoted(row.name)}`,
        'give every step its own name',
      )
    names.add(row.name)
  }
  const steps = rows.map((row) => row && readStep(row, units, givenOf(row)))
  return steps.every((step) => step != null) ? steps : null
}

const readStep = (row: StepRead, units: Units, given: Given<MeasuredRead>): Step | null => {
  const { name, diameter, length, 'measured-diameter': measured } = row
  if (!name || !diameter || !length) return null
  if (measured !== undefined && isSlip(diameter, measured)) {
    const likely = likelyMeasured(diameter, measured, units)
    given.report(
      'measured-diameter',
      'measured-far-from-drawn',
      `measured-diameter is ${formatExact(measured, units)}, and diameter is drawn ${diameter.text}: one of the two is a slip`,
      likely === null ? 'measure it again, or correct diameter' : `write ${words(likely, units)}, or correct diameter`,
    )
  }
  const { origin } = given
  return { name, diameter, measured: measured ?? diameter.aim, measuredGiven: measured !== undefined, length, origin }
}

type MeasuredRead = { readonly 'measured-diameter'?: Length | undefined }
