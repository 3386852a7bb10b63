/** So many grooves, half an inch apart along a bar that is long enough. */
export const groovesJob = (count) =>
  jobText({
    part: `held: between centers, diameter: 3, length: ${2 + count / 2}`,
    dial: COARSE,
    tool: 'shape: square, width: 0.125, reach: 0.3',
    features: Array.from(
      { length: count },
      (_, i) =>
        `kind: groove, name: Ring ${i + 1}, near: ${1 + i / 2}, width: 0.150 ±0.005, depth: 0.060 ±0.005, tool: bit`,
    ),
  })

/** A rope groove of 1 inch radius by a round tool of 1/8: the lower the ridge that may stay, the more stations. Fine dials, or the marks would set the ridge. */
export const steppedJob = (cusp) =>
  jobText({
    part: 'held: chuck, overhang: 4, diameter: 2.5, length: 6',
    dial: FINE,
    tool: 'shape: round, radius: 0.125, reach: 0.9',
    features: [
      `kind: radius, shape: concave, name: Rope groove, center: 2, radius: 1, width: 1.6, cusp: ${cusp}, tool: bit`,
    ],
  })

/** A recess by a tool of 1/32, plunged one place beside the other. */
export const wideJob = (width) =>
  jobText({
    part: 'held: chuck, overhang: 4, diameter: 2.5, length: 6',
    dial: COARSE,
    tool: 'shape: square, width: 0.032, reach: 0.3',
    features: [`kind: groove, name: Recess, near: 1, width: ${width}, depth: 0.1, tool: bit`],
  })

const COARSE = 'graduation: 0.001, per-turn: 0.100'
const FINE = 'graduation: 0.0002, per-turn: 0.050'

const jobText = ({ part, dial, tool, features }) => `title: Spindle of the cider press
units: inch
part: { material: mild steel, ${part} }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { ${dial}, reads: depth, backlash: 0.008 }
  compound: { ${dial}, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  bit: { ${tool} }
features:
${features.map((feature) => `  - { ${feature} }`).join('\n')}
`
