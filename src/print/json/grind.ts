import type { AngleRange, FormFacts, GrindFacts, LengthRange } from '../../moves/grinding.ts'
import { words } from '../../phrase/words.ts'
import type { GrindSheet } from '../../sheet/grind/grind.ts'
import { inUnits, type Length, type Units } from '../../units/length.ts'

/** The grinding sheet as data. Lengths in the units of the job, angles in degrees. */
export const printGrindJson = (sheet: GrindSheet): string => `${JSON.stringify(toData(sheet), null, 2)}\n`

const toData = (sheet: GrindSheet) => ({
  format: 'groovewright.grind/1',
  title: sheet.title,
  drawingNumber: sheet.drawingNumber,
  units: sheet.units,
  cautions: sheet.cautions.map((caution) => words(caution, sheet.units)),
  tools: sheet.tools.map((tool) => ({
    name: tool.name,
    forms: tool.facts.map((facts) => ({ feature: facts.form.feature, ...factsData(facts, sheet.units) })),
    says: Object.fromEntries(
      tool.says.map(({ label, says }) => [label, says.map((phrase) => words(phrase, sheet.units))]),
    ),
    order: tool.order.map((phrase) => words(phrase, sheet.units)),
    warnings: tool.warnings.map((phrase) => words(phrase, sheet.units)),
  })),
  left: sheet.left.map(({ name, reason }) => ({ name, reason: words(reason, sheet.units) })),
})

/** The block under one feature of the sheet of moves; nothing if it was refused. */
export const grindOf = (sheet: GrindSheet, feature: number) => {
  const facts = sheet.tools.flatMap((tool) => tool.facts.filter((_, i) => tool.features[i] === feature))[0]
  return facts === undefined ? {} : { grind: factsData(facts, sheet.units) }
}

const factsData = (facts: GrindFacts, units: Units) => {
  const { blank, width, nose, cornerRadius, rakeAdvice, endRelief, sides, gauge } = facts
  const of = (length: Length) => plain(length, units)
  return {
    shape: facts.shape,
    bit: facts.bit,
    measured: facts.measured,
    work: facts.work,
    blank: blank === null ? null : of(blank.square),
    width:
      width === null
        ? null
        : {
            drawn: width.drawn === null ? null : of(width.drawn),
            aim: of(facts.measured ? width.edge : width.aim),
            widest: of(width.aim),
            edge: of(width.edge),
          },
    nose: nose === null ? null : of(nose),
    cornerRadius: cornerRadius === null ? null : of(cornerRadius),
    holderAngle: facts.holderAngle,
    rake: {
      ground: round(facts.rakeGround),
      inUse: round(facts.rakeInUse),
      advised: range(rakeAdvice.forming),
      turning: range(rakeAdvice.turning),
    },
    endRelief: { inUse: range(endRelief.use), ground: range(endRelief.ground) },
    sideRelief: { ground: range(sides.relief), inUse: range(sides.reliefInUse) },
    sideClearance: { ground: range(sides.back), inUse: range(sides.backInUse) },
    form: formData(facts.form, units),
    gauge: gauge === null ? null : { radius: of(gauge.radius), label: gauge.label, off: of(gauge.off) },
  }
}

const formData = (
  { depth, surface, face, sidesReach, shoulder, squareToFront, shallow, vee, round: arc, corner }: FormFacts,
  units: Units,
) => {
  const of = (length: Length) => plain(length, units)
  const reach = ([low, high]: LengthRange) => [of(low), of(high)]
  return {
    depth: of(depth),
    surface: of(surface),
    alongFace: of(face),
    sidesReach: reach(sidesReach),
    shoulder: of(shoulder),
    squareToFront: of(squareToFront),
    uncorrectedShallow: of(shallow),
    halfAngle:
      vee === null ? null : { drawn: round(vee.half), grind: round(vee.ground), uncorrectedCuts: round(vee.cut) },
    radius: arc !== null ? { drawn: of(arc.radius), grind: of(arc.ground), uncorrectedCuts: of(arc.cut.radius) } : null,
    hollow:
      corner === null
        ? null
        : {
            drawn: of(corner.radius),
            grindDown: of(corner.down),
            uncorrectedCutsDown: of(corner.cutDown),
            arc: corner.arc === null ? null : lengthsIn(corner.arc, units),
            points: corner.points.map((point) => lengthsIn(point, units)),
          },
  }
}

const lengthsIn = (lengths: Readonly<Record<string, Length>>, units: Units) =>
  Object.fromEntries(Object.entries(lengths).map(([key, length]) => [key, plain(length, units)]))

const range = (of: AngleRange | null) => (of === null ? null : [round(of[0]), round(of[1])])
/** Nine decimals: finer than a picometer in millimeters, and no binary rounding error. */
const plain = (length: Length, units: Units): number => round(inUnits(length, units))
const round = (value: number): number => Number(value.toFixed(9)) + 0
