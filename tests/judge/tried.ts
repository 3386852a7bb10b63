import { readdirSync, readFileSync } from 'node:fs'

/** Jobs that were tried at the lathe and found wanting, by name; their lathes are those of examples/. */
const JOBS: Readonly<Record<string, string>> = {
  neck: `title: Stub arbor
units: inch
part:
  material: medium-carbon steel
  held: chuck
  overhang: 3 1/4
  steps:
    - { name: journal, diameter: 0.750, length: 1.400, measured-diameter: 0.7508 }
    - { name: flange, diameter: 1 3/8, length: 2.5 }
lathe: ../lathes/engine-lathe.yaml
tools:
  relief: { shape: square, width: 0.0935, reach: 0.150, blank: 5/16, edge-offset: 0.219 }
features:
  - kind: groove
    name: Grinding neck
    from: flange
    far: 0
    width: 0.125 +0.010 -0
    depth: 0.030 ±0.003
    tool: relief
`,
  swung: `title: Swung compound, shoulder neck
units: inch
part:
  material: alloy steel
  held: chuck and center
  overhang: 5
  steps:
    - { name: thread, diameter: 1.000, length: 2.000, measured-diameter: 0.9970 }
    - { name: shank, diameter: 1.500, length: 5 }
lathe:
  name: E
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.200, reads: diameter, backlash: 0.014 }
  compound: { graduation: 0.001, per-turn: 0.125, backlash: 0.005, travel: 3 1/4, scale-zero: square }
  spindle-speeds: [62,96]
  accuracy: { reading: 0.003 }
tools:
  relief: { shape: square, width: 0.117, reach: 0.150, blank: 3/8, edge-offset: 0.258 }
cutting: { compound: { angle: 29 1/2 } }
features:
  - kind: groove
    name: Thread runout
    from: shank
    far: 0
    width: 0.180 ±0.006
    depth: 0.075 +0.006 -0.0015
    tool: relief
`,
  flank: `title: Vee sheave
units: mm
part: { material: gray cast iron, held: chuck, diameter: 80, length: 60, overhang: 45, measured-diameter: 80.06 }
lathe: ../lathes/metric-lathe.yaml
tools:
  units: mm
  v34: { shape: vee, angle: 34, nose: 3, reach: 12 }
features:
  - kind: v-groove
    name: Belt groove
    method: flank-feed
    angle: 34 deg ±1 deg
    depth: 9 ±0.25
    root: 4.2 ±0.3
    near: 14 ±0.5
    tool: v34
`,
  rounds: `title: Roller
units: inch
part: { material: mild steel, held: chuck, diameter: 1.500, length: 6, overhang: 3, measured-diameter: 1.501 }
lathe: ../lathes/bench-lathe.yaml
tools:
  rnd: { shape: round, radius: 0.0625, reach: 0.25, blank: 1/4 }
  sq: { shape: square, width: 0.125, reach: 0.3, blank: 3/8 }
features:
  - kind: radius
    shape: concave
    name: Cord groove
    center: 1.250
    radius: 5/32 ±0.006
    depth: 0.080 ±0.005
    tool: rnd
    cusp: 0.001
  - kind: groove
    name: Fillet groove
    near: 1.75
    width: 0.400 ±0.004
    depth: 0.090 ±0.004
    corner-radius: 3/64 ±0.008
    tool: sq
    cusp: 0.002
  - kind: radius
    shape: corner
    corner-of: end
    name: End corner
    radius: 3/32 ±0.015
    tool: sq
    cusp: 0.004
`,
  tilted: `title: Tilted
units: inch
part: { material: mild steel, held: chuck, diameter: 2.000, length: 4, overhang: 2.5, measured-diameter: 1.999 }
lathe: ../lathes/bench-lathe.yaml
tools:
  v: { shape: vee, angle: 59, nose: 0.020, reach: 0.2, holder-angle: 14 1/2 deg }
  s: { shape: square, width: 0.110, reach: 0.2, holder-angle: 14 1/2 deg }
features:
  - kind: v-groove
    name: V
    center: 1
    angle: 60 ±1.5
    width: 0.200 ±0.008
    root: 0.020
    tool: v
  - kind: groove
    name: Plain
    near: 1.5
    width: 0.140 ±0.005
    depth: 0.050 ±0.004
    tool: s
  - kind: groove
    name: To grind
    near: 2.0
    width: 0.100 ±0.003
    depth: 0.050 ±0.003
`,
}

/** Where a job stands, and all files it may name. */
export const jobPath = (name: string): string => `examples/jobs/tried-${name}.yaml`

export const FILES: Record<string, string> = Object.fromEntries([
  ...['lathes', 'toolboxes', 'jobs', 'moves'].flatMap((folder) =>
    readdirSync(`examples/${folder}`).map((name) => [
      `examples/${folder}/${name}`,
      readFileSync(`examples/${folder}/${name}`, 'utf8'),
    ]),
  ),
  ...Object.entries(JOBS).map(([name, text]) => [jobPath(name), text]),
])
