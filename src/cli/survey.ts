import type { Units } from '../units/length.ts'

/**
 * One page to find out what a lathe file asks, and the lathe file that follows from it. A blank is a name and a line:
 * `A1x____` is answer 1 of part A for the cross-feed; the file below has the same blank. Common practice, no source.
 */
export const surveySheet = (units: Units): string =>
  `${[...head(units), ...DIALS, ...cuts(units), ...BACKLASH, ...COMPOUND, ...SPINDLE, ...EYE, ...file(units)].join('\n')}\n`

const RULE = '='.repeat(80)

const head = (units: Units): string[] => [
  RULE,
  `SURVEY OF A LATHE: what its lathe file asks${units.padStart(37)}`,
  RULE,
  'Lathe A0________________________   by ____________________   on ______________',
  'Key out of the chuck. Spindle STOPPED, but for the two cuts of B and for E.',
  `Wanted: an indicator that shows ${units === 'inch' ? '.0005' : '0.01'} on a magnet, a micrometer, a round bar.`,
]

const row = (say: string, name: string): string =>
  ` ${say.padEnd(37)}${['x', 'c', 'k'].map((slide) => `${name}${slide}`.padEnd(11, '_')).join('  ')}`.trimEnd()

const plainRow = (say: string): string => ` ${say.padEnd(37)}${Array(3).fill('___________').join('  ')}`

const DIALS: readonly string[] = [
  '',
  'A  DIALS                              x cross-feed c compound   k carriage',
  row('1 one mark is worth', 'A1'),
  row('2 one whole turn is worth', 'A2'),
  plainRow('  marks counted round the dial'),
  '   A2 is that many times A1, exactly; if not, count again.',
  plainRow('  indicator on the slide, one turn'),
  '   Turn forward through the lost motion first. Equal to A2: the dial shows',
  '   travel. Half of A2: it shows diameter (cross-feed only; B proves it).',
]

const cuts = (units: Units): string[] => [
  '',
  'B  CROSS-FEED: DEPTH OR DIAMETER',
  '   Skim a bar clean, carriage back, STOP, micrometer:      first ____________',
  '   IN ten marks, never back; skim again; STOP, micrometer: second ___________',
  `   first less second ____________      ten marks are ten times A1x ____________`,
  '   The same: write diameter. Twice as much: write depth.   B1________________',
  `   Off by more than ${units === 'inch' ? '.001' : '0.02'}: the lost motion was not taken up. Cut again.`,
]

const BACKLASH: readonly string[] = [
  '',
  'C  LOST MOTION, by indicator against the slide',
  '   Feed forward (in; toward the headstock) until the needle moves, and on to a',
  '   whole mark; set the dial to 0; turn back until the needle just moves; read.',
  '   The carriage likewise, unlocked, by its handwheel: its gears lose motion too.',
  plainRow('  near one end of the travel'),
  plainRow('  in the middle'),
  plainRow('  near the other end'),
  row('1 the greatest, and one mark more', 'C1'),
]

const COMPOUND: readonly string[] = [
  '',
  'D  COMPOUND',
  '   Indicator on the compound, against a bar turned true. Swivel until the needle',
  '   does not move all along: that is parallel. Its scale shows about 0: write',
  '   parallel. About 90: write square.                       D1________________',
  '   From that 0 it is numbered to ________ on one side, to ________ on the other;',
  '   swung so that forward goes in and toward the headstock, it reads on the side',
  '   that is (left, right, seen from above)                  __________________',
  '   Greatest less smallest reading from end to end          D2________________',
]

const SPINDLE: readonly string[] = [
  '',
  'E  SPINDLE: every speed, lowest first, with commas: from the plate, or counted',
  '   by a mark on the chuck for half a minute, twice over, key out, stand clear',
  '   E1____________________________________________________________________',
]

/** An eccentric bar is touched at its highest side: by half of the swing of the needle. */
const EYE: readonly string[] = [
  '',
  'F  TOUCH, RUNOUT, HALF MARKS',
  ' 1 touch a bar five times anew, read; half of greatest less least F1__________',
  " 2 indicator on the bar, turned by hand; half of the needle's swing F2________",
  ' 3 marks so wide that the eye halves them: 1/2; if not: 1   F3x______ F3c______',
]

const file = (units: Units): string[] => [
  '',
  RULE,
  'LATHE FILE: type it, with the answers for the blanks of the same name.',
  `A readout: { readout: ${units === 'inch' ? '0.0005' : '0.005'}, reads: depth }`,
  'No dial on the carriage: leave that line out, or, with an indicator that bears',
  'on it, write the finest it shows and how far its plunger follows:',
  `carriage: { indicator: ${units === 'inch' ? '0.001, range: 1' : '0.01, range: 25'} }`,
  RULE,
  'name: A0____________________',
  `units: ${units}`,
  'cross-feed: { graduation: A1x____, per-turn: A2x____, backlash: C1x____,',
  '              reads: B1____, read-to: F3x____ }',
  'compound: { graduation: A1c____, per-turn: A2c____, backlash: C1c____,',
  '            travel: D2____, scale-zero: D1____, read-to: F3c____ }',
  'carriage: { graduation: A1k____, per-turn: A2k____, backlash: C1k____ }',
  'spindle-speeds: [E1____________________]',
  'accuracy: { touch-off: F1____, runout: F2____ }',
]
