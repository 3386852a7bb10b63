/** Jobs near an edge of what the lathe can do, so that a slip of one turn in the clear meets a center, a shoulder or the end of the travel. */
const machine = (travel: string) => `
lathe:
  name: Bench
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: ${travel} }
  spindle-speeds: [60, 95, 150, 240]`

const groove = (where: string) => `
  - { kind: groove, name: Oil channel, ${where}, width: 0.210, depth: 0.060, tool: neck }`

const job = (part: string, travel: string, features: string) => `title: Press beam pin
units: inch
part: { material: mild steel, ${part} }
${machine(travel).trim()}
tools:
  neck: { shape: square, width: 0.150, reach: 0.400 }
features:${features}
`

export const edgeJobs: readonly string[] = [
  job('held: between centers, diameter: 1.250, length: 4', '2.5', groove('near: 0.030')),
  job('held: chuck, overhang: 3, diameter: 1.250, length: 4', '0.1', groove('near: 1')),
  job(
    'held: chuck, overhang: 4, steps: [{ name: tip, diameter: 1.000, length: 1 }, { name: collar, diameter: 1.500, length: 0.5 }, { name: body, diameter: 1.000, length: 3 }]',
    '2.5',
    groove('from: body, near: 0'),
  ),
]
