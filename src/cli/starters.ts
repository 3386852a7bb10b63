import type { SchemaName } from '../job/json-schema.ts'

/**
 * A file to begin with, complete and commented; it works as it is. The first line tells an editor where the schema is.
 */
export const starter = (name: SchemaName | 'exercise'): string => (name === 'exercise' ? EXERCISE : STARTERS[name])

const EXERCISE = `# yaml-language-server: $schema=exercise.schema.json
# For editors that complete and check as you type:  groovewright schema exercise > exercise.schema.json
# Every key that may stand here:  groovewright keys exercise
#
# An exercise for a class: a job, what of it is varied, and what the learner fills in.
#   groovewright new job -o job.yaml
#   groovewright handout exercise.yaml --out week-1
#   groovewright grade week-1/manifest.json week-1/answers --out week-1-marks

title: A groove with a narrower tool
teaches: how far the tool is shifted, and where the dials stop
base: job.yaml               # a job that proves: groovewright check job.yaml
seed: 1                      # another seed, other sheets
learners: [Ann, Ben, Cleo]   # or sheets: 30, or a table: class.csv with a column learner

vary:                        # paths of the job: features.0 is its first feature
  features.0.width: { from: 0.156, to: 0.180, step: 0.003 }
  tools.neck.width: { under: features.0.width, from: 0.004, to: 0.015, step: 0.001 }

# readings, turns, marks, shift, bottom-diameter, depth, form, pin, rpm, corrections,
# drill, order, set-up, grinding, caution, mistake, refusal
hide: [shift, readings]
`

const JOB = `# yaml-language-server: $schema=job.schema.json
# For editors that complete and check as you type:  groovewright schema job > job.schema.json
# Every key that may stand here:  groovewright keys job
#
# A job: what is to be cut, on which lathe, with which tools.
# A length is written as on the drawing: 0.125  1/8  1 3/16  5/32 in  12 thou  4.5 mm
# A tolerance follows it: 0.125 ±0.005   0.125 +0.003 -0   0.120 to 0.125   20 mm h11

title: Cider press screw
drawing-number: CP-14
units: inch                  # inch or mm: the meaning of bare numbers, and the units of the sheet
work: one-off                # or repeat: form tools are then ground to size

part:
  material: mild steel       # from the table of cutting speeds, or { name: yew, cutting-speed: 300 }
  held: chuck                # chuck, collet, between centers, chuck and center
  overhang: 4                # out of the chuck
  steps:                     # from the free end toward the headstock
    - { name: pilot, diameter: 0.875, length: 2 }
    - { name: body, diameter: 1.500, length: 3, measured-diameter: 1.4985 }

lathe:                       # or the path of a lathe file: lathe.yaml
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240, 380, 600, 950]

tools:                       # or the path of a toolbox: toolbox.yaml
  neck: { shape: square, width: 0.148, reach: 0.125, blank: 5/16 }
  oil: { shape: round, radius: 3/32, reach: 0.1 }
  quarter: { shape: corner, radius: 1/8 }
  sheave: { shape: vee, angle: 38, nose: 0.140, reach: 0.45 }

features:
  - kind: groove
    name: Thread-relief groove
    why: clearance for the die at the end of the thread
    near: 1.125              # one of near (tailstock side), far (headstock side), center; from the free end
    width: 5/32 ±0.005
    depth: 0.070 +0.004 -0   # or bottom-diameter
    tool: neck               # left out: the sheet says which tool to grind

  - kind: radius
    shape: concave           # a round groove
    name: Oil groove
    center: 1 1/2
    radius: 3/32
    width: 5/32              # or depth
    tool: oil

  - kind: radius
    shape: corner            # rounds a corner that faces the tailstock
    name: Rounded end
    corner-of: end           # or the name of a step
    radius: 1/8
    tool: quarter

  - kind: v-groove
    name: Belt groove
    from: body               # distances now run from the tailstock-side end of the body
    near: 1
    angle: 38                # included
    width: 0.500             # two of width, depth (or bottom-diameter) and root
    depth: 0.400
    tool: sheave
`

const LATHE = `# yaml-language-server: $schema=lathe.schema.json
# For editors that complete and check as you type:  groovewright schema lathe > lathe.schema.json
# Every key that may stand here:  groovewright keys lathe
#
# A lathe: its dials, its speeds and what can be held on it. Name this file in a job:  lathe: lathe.yaml

name: Bench lathe
units: inch                  # inch or mm: the meaning of bare numbers in this file, whatever the job is in

cross-feed:
  graduation: 0.001          # one mark
  per-turn: 0.100            # one whole turn
  reads: depth               # depth: slide travel. diameter: the change of the work
  backlash: 0.008            # lost motion as counted on this dial, rather too much than too little
  # read-to: 1/2             # if halves of a mark can be judged by eye

# With a digital readout instead of a dial:
# cross-feed: { readout: 0.0005, reads: diameter }

compound:
  graduation: 0.001
  per-turn: 0.100
  backlash: 0.006
  angle: 0                   # degrees from parallel with the ways
  travel: 2.5                # greatest less smallest reading
  scale-zero: parallel       # where the swivel scale has its 0: parallel or square

carriage: { graduation: 0.010, per-turn: 0.800, backlash: 0.030 }   # leave it out where there is no dial

spindle-speeds: [60, 95, 150, 240, 380, 600, 950]

jaw-clearance: 1/4           # how far tool and slides stay from the jaws

accuracy:                    # what cannot be helped, each as plus or minus; these are the defaults
  touch-off: 0.001
  layout: 0.005
  tool: 0.0005
  stock: 0.0005
  runout: 0
`

const TOOLBOX = `# yaml-language-server: $schema=toolbox.schema.json
# For editors that complete and check as you type:  groovewright schema toolbox > toolbox.schema.json
# Every key that may stand here:  groovewright keys toolbox
#
# A toolbox: tools by the names the shop gives them, with sizes as measured. Name this file in a job:  tools: toolbox.yaml

units: inch                  # left out: the units of the job

neck:
  shape: square
  width: 0.148 ±0.0005
  reach: 0.125               # how deep the ground end goes before the shank touches
  blank: 5/16                # width of the bit behind the edge
  bit: hss                   # or carbide
  holder-angle: 14 1/2 deg   # how far the holder tilts the bit
  rake-ground: 0             # or rake-in-use, which is rake-ground + holder-angle

oil: { shape: round, radius: 3/32, reach: 0.1 }

sheave: { shape: vee, angle: 38, nose: 0.140, reach: 0.45 }

quarter: { shape: corner, radius: 1/8 }
`

const STARTERS: Readonly<Record<SchemaName, string>> = { job: JOB, lathe: LATHE, toolbox: TOOLBOX }
