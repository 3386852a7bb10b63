import { describe, expect, it } from 'vitest'
import { change, JOB, read, said } from './reading.ts'

/** What is changed in which file, and every line that must come out: nothing more, nothing less. */
type Mistake = readonly [what: string, file: 'job.yaml' | 'lathe.yaml' | 'toolbox.yaml', from: string, to: string, ...said: string[]]

const KEYS: Mistake[] = [
  [
    'a misspelt key', 'job.yaml', '    name: Thread relief', '    nmae: Thread relief',
    'job.yaml:13:5 groove has no key "nmae" | did you mean "name"?',
  ],
  [
    'a misspelt required key, as one message', 'job.yaml', '    width: 5/32 ±0.005', '    widht: 5/32 ±0.005',
    'job.yaml:15:5 groove has no key "widht" | did you mean "width"?',
  ],
  [
    'a misspelt required key with a bad value behind it', 'job.yaml', '    width: 5/32 ±0.005', '    widht: 5/32 ±',
    'job.yaml:15:5 groove has no key "widht" | did you mean "width"?',
    'job.yaml:15:12 widht: "5/32 ±" is not a length | write a length like 0.125, 1 3/16, 5/32 in, 0.125", 12 thou or 4.5 mm',
  ],
  [
    'an underscore for a hyphen', 'job.yaml', '    corner-radius:', '    corner_radius:',
    'job.yaml:17:5 groove has no key "corner_radius" | did you mean "corner-radius"?',
  ],
  [
    'a key of another kind', 'job.yaml', '    width: 5/32 ±0.005', '    width: 5/32\n    angle: 30',
    'job.yaml:16:5 groove has no key "angle" | keys not given yet: from, far, center, bottom-diameter, why, cutting, leave, leave-sides, infeed, clear, overlap, speed-factor and others',
  ],
  [
    'a missing key', 'job.yaml', '    width: 5/32 ±0.005\n', '',
    'job.yaml:12:5 groove (entry 1 of features) has no "width" | give a length such as 1/8, or one with its tolerance such as 0.125 ±0.005',
  ],
  [
    'a missing part', 'job.yaml', '  material: mild steel\n', '',
    'job.yaml:3:1 part has no "material" | give a material of the cutting-speed table, or a name with its cutting-speed',
  ],
  [
    'no units', 'job.yaml', 'units: inch\n', '',
    'job.yaml:1:1 the job has no "units" | give inch or mm',
  ],
  [
    'units by another name', 'job.yaml', 'units: inch', 'units: inches',
    'job.yaml:2:8 units cannot be "inches" | did you mean "inch"?',
  ],
  [
    'a misspelt kind', 'job.yaml', 'kind: groove', 'kind: grove',
    'job.yaml:12:11 kind cannot be "grove" | did you mean "groove"?',
  ],
  [
    'a kind that is none', 'job.yaml', 'kind: groove', 'kind: thread',
    'job.yaml:12:11 kind cannot be "thread" | give groove, radius or v-groove',
  ],
  [
    'no kind', 'job.yaml', '  - kind: groove\n    name: Thread relief', '  - name: Thread relief',
    'job.yaml:12:5 the feature has no "kind" | give groove, radius or v-groove',
  ],
  [
    'a misspelt kind key', 'job.yaml', '- kind: groove', '- knid: groove',
    'job.yaml:12:5 groove has no key "knid" | did you mean "kind"?',
  ],
  [
    'a radius without a shape', 'job.yaml', '    shape: concave\n', '',
    'job.yaml:19:5 the radius has no "shape" | give concave or corner',
  ],
  [
    'a key without a value', 'job.yaml', '    width: 5/32 ±0.005', '    width:',
    'job.yaml:15:5 width has no value | give a length such as 1/8, or one with its tolerance such as 0.125 ±0.005',
  ],
  [
    'a key twice', 'job.yaml', '    tool: neck', '    tool: neck\n    tool: oil',
    'job.yaml:19:5 "tool" is here twice: the first is on line 18 | keep one of the two',
  ],
  [
    'features that are no list', 'job.yaml', JOB.slice(JOB.indexOf('features:')), 'features:\n  kind: groove\n',
    'job.yaml:12:3 features is not of the right kind | give a list, each entry behind a hyphen',
  ],
  [
    'no features', 'job.yaml', JOB.slice(JOB.indexOf('features:')), 'features: []\n',
    'job.yaml:11:11 features is an empty list | give at least one entry',
  ],
  [
    'a list for a length', 'job.yaml', 'near: 1.125', 'near: [1, 2]',
    'job.yaml:14:11 near is not of the right kind | give a length such as 1/8, or one with its tolerance such as 0.125 ±0.005',
  ],
  [
    'a truth for a name', 'job.yaml', 'name: Thread relief', 'name: true',
    'job.yaml:13:11 name cannot be "true" | give text',
  ],
]

const MEASURES: Mistake[] = [
  [
    'a comma for a point', 'job.yaml', 'near: 1.125', 'near: 1,125',
    'job.yaml:14:11 near: "1,125" has a comma in it | use a point: 1.125',
  ],
  [
    'a length that is none', 'job.yaml', 'near: 1.125', 'near: about an inch',
    'job.yaml:14:11 near: "about an inch" is not a length | write a length like 0.125, 1 3/16, 5/32 in, 0.125", 12 thou or 4.5 mm',
  ],
  [
    'an unknown unit', 'job.yaml', 'near: 1.125', 'near: 3 cm',
    'job.yaml:14:11 near: "cm" is not a unit of length | units are in (or "), thou and mm',
  ],
  [
    'a tolerance with one side', 'job.yaml', '0.070 +0.004 -0', '0.070 +0.004',
    'job.yaml:16:12 depth: "0.070 +0.004" has a tolerance on one side only | write both sides, like 0.125 +0.003 -0, or both limits, like 0.120 to 0.125',
  ],
  [
    'a negative width', 'job.yaml', '5/32 ±0.005', '-5/32',
    'job.yaml:15:12 width is -5/32 | it must be more than zero',
  ],
  [
    'a depth of zero', 'job.yaml', '0.070 +0.004 -0', '0',
    'job.yaml:16:12 depth is 0 | it must be more than zero',
  ],
  [
    'a tolerance that eats the size', 'job.yaml', '5/32 ±0.005', '0.005 ±0.005',
    'job.yaml:15:12 width is 0.005 ±0.005 | it must be more than zero, its lower limit too',
  ],
  [
    'an included angle of 180', 'job.yaml', 'angle: 38', 'angle: 180',
    'job.yaml:31:12 angle is 180 | it must be more than 0 and less than 180 degrees',
  ],
  [
    'an angle in a strange unit', 'job.yaml', 'angle: 38', 'angle: 38 grad',
    'job.yaml:31:12 angle: "38 grad" is not an angle | write an angle like 34, 34 deg, 34°, 14 1/2 deg or 84° 16\'',
  ],
  [
    'a tolerance where none is taken', 'toolbox.yaml', 'reach: 0.125', 'reach: 0.125 ±0.010',
    'toolbox.yaml:1:53 reach: "0.125 ±0.010" has a tolerance, and none is taken here | give the plain size',
  ],
  [
    'a class on a size in inches', 'job.yaml', 'diameter: 0.875', 'diameter: 0.875 h11',
    'job.yaml:7:32 diameter: "0.875 h11" has an ISO 286 class on a size in inches | write 0.875 mm h11 if it is in mm, else the limits as numbers',
  ],
]

const COMBINATIONS: Mistake[] = [
  [
    'near and far', 'job.yaml', '    near: 1.125', '    near: 1.125\n    far: 1.3',
    'job.yaml:15:5 near and far together say twice where it stands | keep one of near, far and center',
  ],
  [
    'no place', 'job.yaml', '    near: 1.125\n', '',
    'job.yaml:12:5 nothing says where it stands | give one of near (tailstock side), far (headstock side) and center',
  ],
  [
    'depth and bottom diameter', 'job.yaml', '    tool: neck', '    bottom-diameter: 0.735',
    'job.yaml:18:5 depth and bottom-diameter together say twice how deep it is | keep one of the two',
  ],
  [
    'no depth', 'job.yaml', '    depth: 0.070 +0.004 -0\n', '',
    'job.yaml:12:5 nothing says how deep it is | give depth or bottom-diameter',
  ],
  [
    'a concave radius alone', 'job.yaml', '    radius: 3/32\n    width: 5/32', '    radius: 3/32',
    'job.yaml:19:5 the radius alone does not say how much of it is cut | give width or depth as well',
  ],
  [
    'a V with only a depth', 'job.yaml', '    width: 0.500\n    depth: 0.400', '    depth: 0.400',
    'job.yaml:28:5 the form of the V is open | give two of width, depth (or bottom-diameter) and root, or width alone for a sharp V',
  ],
  [
    'width-at without width', 'job.yaml', '    width: 0.500\n    depth: 0.400', '    width-at: 1.4\n    root: 0.1\n    depth: 0.400',
    'job.yaml:32:5 width-at says where a width is measured, and no width is given | give width as well, or take width-at out',
  ],
  [
    'steps and a diameter', 'job.yaml', '  overhang: 4', '  diameter: 2',
    'job.yaml:5:3 diameter is for a plain bar, and steps are given | keep the steps, or diameter and length',
  ],
  [
    'a bar without a length', 'job.yaml', JOB.slice(JOB.indexOf('  overhang'), JOB.indexOf('lathe:')), '  diameter: 2\n',
    'job.yaml:3:1 the bar has no length | give length, or steps',
  ],
  [
    'a part without a size', 'job.yaml', JOB.slice(JOB.indexOf('  overhang'), JOB.indexOf('lathe:')), '',
    'job.yaml:3:1 the part has no size | give steps, or diameter and length of a plain bar',
  ],
  [
    'an overhang longer than the part', 'job.yaml', 'overhang: 4', 'overhang: 14',
    'job.yaml:5:13 the overhang is longer than the part | give how far the part stands out, or describe the whole part in steps',
  ],
  [
    'two steps of one name', 'job.yaml', 'name: pilot', 'name: body',
    'job.yaml:8:15 two steps are called "body" | give every step its own name',
  ],
  [
    'a step called end', 'job.yaml', 'name: pilot', 'name: end',
    'job.yaml:7:15 a step cannot be called "end" | that word stands for the free end of the part',
  ],
  [
    'two features of one name', 'job.yaml', '    shape: concave', '    shape: concave\n    name: Thread relief',
    'job.yaml:21:11 two features are called "Thread relief" | give every feature its own name',
  ],
  [
    'a cutting key twice', 'job.yaml', '    tool: neck', '    infeed: 0.02\n    cutting: { infeed: 0.03 }',
    'job.yaml:19:16 infeed is given twice for this feature | keep one of the two',
  ],
]

const NAMES: Mistake[] = [
  [
    'a misspelt step', 'job.yaml', 'corner-of: body', 'corner-of: bdoy',
    'job.yaml:26:16 no step is called "bdoy" | did you mean "body"?',
  ],
  [
    'an unknown step', 'job.yaml', 'from: body', 'from: flange',
    'job.yaml:29:11 no step is called "flange" | say end, pilot or body',
  ],
  [
    'a misspelt tool', 'job.yaml', 'tool: neck', 'tool: nekc',
    'job.yaml:18:11 no tool is called "nekc" | did you mean "neck"?',
  ],
  [
    'an unknown tool', 'job.yaml', 'tool: neck', 'tool: parting',
    'job.yaml:18:11 no tool is called "parting" | the toolbox has neck, oil, sheave, quarter',
  ],
  [
    'a misspelt material', 'job.yaml', 'mild steel', 'mild steal',
    'job.yaml:4:13 "mild steal" is not in the table of cutting speeds | did you mean "mild steel"? or give a name and a cutting-speed',
  ],
  [
    'a lathe file that is not there', 'job.yaml', 'lathe.yaml', 'lathes.yaml',
    'job.yaml:9:8 lathes.yaml cannot be read | look at the name',
  ],
]

const LATHES: Mistake[] = [
  [
    'no backlash', 'lathe.yaml', ', backlash: 0.008', '',
    'lathe.yaml:3:1 the dial has no backlash | measure the lost motion on the dial and give a little more (0 if there is none): the sheet is proved for everything from 0 to this',
  ],
  [
    'no graduation', 'lathe.yaml', '{ graduation: 0.010, ', '{ ',
    'lathe.yaml:5:1 the dial has no graduation | give what one mark stands for, or readout for a digital readout',
  ],
  [
    'a turn that ends between marks', 'lathe.yaml', 'graduation: 0.001, per-turn: 0.100, reads', 'graduation: 0.003, per-turn: 0.100, reads',
    'lathe.yaml:3:44 per-turn is 33.333 graduations | it must be a whole number of graduations, or a turn would not end on a mark',
  ],
  [
    'a graduation of zero', 'lathe.yaml', 'graduation: 0.010', 'graduation: 0',
    'lathe.yaml:5:25 graduation is 0 | it must be more than zero',
  ],
  [
    'a negative backlash', 'lathe.yaml', 'backlash: 0.030', 'backlash: -0.030',
    'lathe.yaml:5:59 backlash is -0.030 | it must be zero or more',
  ],
  [
    'a readout with per-turn', 'lathe.yaml', '{ graduation: 0.010, per-turn: 0.800, backlash: 0.030 }', '{ readout: 0.001, per-turn: 0.800 }',
    'lathe.yaml:5:29 a readout has no per-turn | keep readout, or give a dial without it',
  ],
  [
    'a compound beyond square', 'lathe.yaml', 'travel: 2.5', 'angle: 95',
    'lathe.yaml:4:73 angle is 95 | it must be more than -90 and not more than 90 degrees',
  ],
  [
    'a compound at minus 90', 'lathe.yaml', 'travel: 2.5', 'angle: -90',
    'lathe.yaml:4:73 angle is -90 | it must be more than -90 and not more than 90 degrees',
  ],
  [
    'thirds of a mark', 'lathe.yaml', 'reads: depth', 'reads: depth, read-to: 1/3',
    'lathe.yaml:3:74 read-to cannot be "1/3" | give 1, 1/2, 1/4, 1/5, 1/10, 0.5, 0.25, 0.2 or 0.1',
  ],
  [
    'reads by another name', 'lathe.yaml', 'reads: depth', 'reads: diametre',
    'lathe.yaml:3:58 reads cannot be "diametre" | did you mean "diameter"?',
  ],
  [
    'a speed of zero', 'lathe.yaml', '[60, 95', '[0, 95',
    'lathe.yaml:6:18 entry 1 of spindle-speeds cannot be "0" | give a number more than zero',
  ],
  [
    'a speed with its unit', 'lathe.yaml', '[60, 95', '[60, 95 rpm',
    'lathe.yaml:6:22 entry 2 of spindle-speeds cannot be "95 rpm" | give a number more than zero',
  ],
  [
    'no units in a file of its own', 'lathe.yaml', 'units: inch\n', '',
    'lathe.yaml:1:1 the lathe has no "units" | give inch or mm',
  ],
]

const TOOLS: Mistake[] = [
  [
    'a square tool without a width', 'toolbox.yaml', ' width: 0.148 ±0.0005,', '',
    'toolbox.yaml:1:1 square tool (neck) has no "width" | give a length such as 1/8, or one with its tolerance such as 0.125 ±0.005',
  ],
  [
    'a round tool without a reach', 'toolbox.yaml', ', reach: 0.1 }', ' }',
    'toolbox.yaml:2:1 round tool (oil) has no "reach" | give a length such as 0.125, 1/8 or 4.5 mm',
  ],
  [
    'a vee tool without a nose', 'toolbox.yaml', ' nose: 0.140,', '',
    'toolbox.yaml:3:1 vee tool (sheave) has no "nose" | give a length such as 0.125, 1/8 or 4.5 mm',
  ],
  [
    'a misspelt shape', 'toolbox.yaml', 'shape: square', 'shape: sqare',
    'toolbox.yaml:1:16 shape cannot be "sqare" | did you mean "square"?',
  ],
  [
    'a tool without a shape', 'toolbox.yaml', 'shape: corner, ', '',
    'toolbox.yaml:4:1 the tool has no "shape" | give square, vee, round or corner',
  ],
  [
    'both rakes', 'toolbox.yaml', 'rake-ground: 0', 'rake-ground: 0, rake-in-use: 2',
    'toolbox.yaml:1:115 rake-ground and rake-in-use together say the rake twice | keep one: in use = ground + holder-angle',
  ],
  [
    'an edge offset without a blank', 'toolbox.yaml', 'reach: 0.45', 'reach: 0.45, edge-offset: 0.1',
    'toolbox.yaml:3:60 edge-offset says where the edge is on the blank, and no blank is given | give blank as well, or take edge-offset out',
  ],
  [
    'an edge wider than its blank', 'toolbox.yaml', 'blank: 5/16', 'blank: 1/8',
    'toolbox.yaml:1:67 the edge is wider than the blank behind it | give the width of the tool bit itself',
  ],
  [
    'a round edge wider than its circle', 'toolbox.yaml', 'reach: 0.1 }', 'reach: 0.1, edge-width: 0.2 }',
    'toolbox.yaml:2:60 the edge is wider than its whole circle | give at most twice the radius',
  ],
  [
    'a tool that is a word', 'toolbox.yaml', 'quarter: { shape: corner, radius: 1/8 }', 'quarter: 1/8',
    'toolbox.yaml:4:10 quarter cannot be "1/8" | give keys with their values, indented',
  ],
  [
    'a misspelt units key', 'toolbox.yaml', 'neck:', 'unit: inch\nneck:',
    'toolbox.yaml:1:1 toolbox has no key "unit" | did you mean "units"?',
  ],
]

describe.each([
  ['keys', KEYS],
  ['measures', MEASURES],
  ['combinations', COMBINATIONS],
  ['names', NAMES],
  ['lathe', LATHES],
  ['tools', TOOLS],
])('mistakes in %s', (_, mistakes) => {
  it.each(mistakes)('%s', (_what, file, from, to, ...expected) => {
    const result = read(change(file, from, to))
    expect(result.job).toBeNull()
    expect(said(result)).toEqual(expected)
  })
})
