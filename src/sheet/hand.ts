import type { InstrumentName } from '../lathe/instruments.ts'
import type { Check } from '../moves/inspection.ts'
import { isOnLine } from '../moves/placing.ts'
import type { Size } from '../moves/trace.ts'
import { waysOf } from '../phrase/dial.ts'
import { angleFigure, dimensionFigure } from '../phrase/dimensions.ts'
import { figure, length } from '../phrase/figure.ts'
import { seconds } from '../phrase/pace.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { called, together } from '../phrase/say.ts'
import { labelOf } from '../plan/labels.ts'
import { INCH, MM } from '../units/length.ts'
import { beforeStart } from './cautions.ts'
import { feedingSlide, feedOn } from './feed.ts'
import { fitTool } from './fit-tool.ts'
import { layout } from './layout.ts'
import { overWork, placingWords, touchWords } from './placing.ts'
import type { Planned, Scene, StepWords } from './scene.ts'
import type { Expected } from './sheet.ts'
import { swing } from './swing.ts'

/** The steps that are done by hand, on no dial. */
export const handStep = (scene: Scene): StepWords => {
  switch (scene.move.action) {
    case 'layout':
      return layout(scene)
    case 'fit-tool':
      return fitTool(scene)
    case 'swing':
      return swing(scene)
    case 'set-speed':
      return speed(scene)
    case 'start':
      return say('SPINDLE', ['start'], [`${beforeStart(scene.plan.part.held)}? stand clear`], chips(scene))
    case 'stop':
      return { ...say('SPINDLE', ['STOP, wait until it has come to rest']), short: ['STOP, at rest'] }
    case 'align':
      return align(scene)
    case 'touch-off':
      return touchOff(scene)
    case 'lock':
      return say('CARRIAGE', [lockWords(scene)])
    case 'unlock':
      return say('CARRIAGE', ['unlock'])
    case 'measure':
      return measure(scene)
    case 'deburr':
      if (scene.move.purpose === 'chamfer') return chamfer(scene)
      if (scene.move.purpose === 'burr')
        return {
          ...say('DEBURR', ['lift only the burr with a stone, spindle STOPPED; keep off the lines']),
          short: ['only the burr, by a stone, off the lines'],
        }
      return {
        ...say('DEBURR', ['break sharp edges by hand, spindle STOPPED, fine file or stone']),
        short: ['by hand, spindle STOPPED'],
      }
    default:
      throw new Error(`no words for a move without a slide: ${scene.move.action}`)
  }
}

const say = (thing: string, does: Phrase, effect: Phrase = [], more: readonly Phrase[] = []): StepWords => ({
  thing,
  does,
  effect,
  more,
})

/** Once per sheet, before the first cut. Nothing is held to running work, so that nothing is drawn in. */
const chips = ({ plan, feature, index }: Scene): Phrase[] => {
  const first = plan.features.find(({ status }) => status === 'planned') === feature
  if (!first || feature.operation.moves.findIndex(({ action }) => action === 'start') !== index) return []
  const coolant = plan.part.care === undefined ? '' : `${plan.part.care.coolant.says}; `
  return [[`${coolant}no brush or rag at running work: STOP for chips`]]
}

const speed = (scene: Scene): StepWords => {
  const { spindle } = scene.feature
  const rpm = figure('speed', spindle.rpm, 'rpm')
  if (spindle.tooFast)
    return say(
      'SPEED',
      [rpm, ' rpm: LOWEST AVAILABLE, TOO FAST: DO NOT FORM AT THIS SPEED'],
      [],
      [
        [
          'do not go on: ',
          figure('speed', Math.round(spindle.wanted), 'rpm'),
          ' rpm is wanted; engage the back gear, or take a lathe that runs slower',
        ],
        ['list that speed in spindle-speeds, and print this sheet again'],
      ],
    )
  const feed = feedOn(scene, feedingSlide(scene))
  const words = say(
    'SPEED',
    [rpm, ' rpm; feed ', feedOf(scene), ' a turn of the work, ', ...feed],
    [],
    [...resting(scene), ...(chatters(scene) ? [['chatter: less speed, MORE feed']] : [])],
  )
  const { rest } = scene.feature.pace
  const rests = rest === null || resting(scene).length === 0 ? [] : ['; rest\u00a0', seconds(rest.seconds)]
  return { ...words, short: [rpm, ' rpm, ', ...feed, ...rests] }
}

const feedOf = ({ feature, units }: Scene): Figure => ({ ...length('along', feature.pace.feed, units), role: 'pace' })

const resting = ({ feature }: Scene): Phrase[] => {
  const { rest } = feature.pace
  // A corner is finished by small moves of both slides in turn.
  if (!feature.operation.moves.some(({ action, purpose }) => action === 'feed-in' && purpose === 'finish')) return []
  if (rest === null) return [['never let the tool rest or rub in the cut: draw it out at once']]
  const turns = figure('pace', rest.turns, 'count')
  const says: Phrase = ['at the bottom of a finish rest ', turns, ' turns of the work, ', seconds(rest.seconds)]
  return [[...says, '; roughing: never']]
}

/** Only if it is to be expected: a wide edge, or slender work. */
const chatters = ({ plan, feature }: Scene): boolean => {
  const index = plan.features.indexOf(feature)
  return plan.warnings.some(({ code, feature: of }) => code === 'slender' || (code === 'wide-contact' && of === index))
}

/** Locking shifts the carriage: what it was set by is checked again. */
export const lockWords = ({ feature }: Scene): string => {
  // If the compound is fed forward to touch afterwards, there is nothing to check yet.
  if (feature.operation.moves.some((move) => move.action === 'touch-off' && move.slide === 'compound')) return 'LOCK'
  return isOnLine(feature.operation.placing)
    ? 'LOCK, then look at the line again'
    : 'LOCK, then see that it still touches'
}

/**
 * Spares the tool the point of the corner. No more than four fifths of the legs that the form tool itself has cut when they are measured, or they would not be
 * what is expected; without a measuring no more than a line that touches the arc in its middle, R(2 − √2) (plane geometry). The four fifths, and that it is
 * filed: common practice, no source.
 */
const chamfer = ({ feature, units }: Scene): StepWords => {
  const { operation, trace } = feature
  const radius = operation.dimensions.find(({ id }) => id === 'radius')?.aim ?? 0
  const rough = operation.moves.findIndex(({ purpose }) => purpose === 'expect-rough')
  const measured = (trace.at[rough] ?? []).flatMap((size) => (LEGS.has(size.id) ? [(middle(size) ?? 0) * 0.8] : []))
  const most = Math.min(radius * (2 - Math.SQRT2), ...measured)
  const fine = units === 'inch' ? INCH / 1000 : MM / 50
  const step = most >= 20 * fine ? 5 * fine : fine
  const half = angleFigure('angle', 45)
  const legs = length('along', Math.floor(most / step) * step, units)
  const says = [
    ['by a file with a handle, the arm clear of the chuck, slowest speed; it spares the tool the point of the corner'],
  ]
  return {
    ...say('CHAMFER', [half, ' on the corner, legs ', legs, ' or less'], [], says),
    short: [half, ', legs ', legs],
  }
}

const LEGS: ReadonlySet<Size['id']> = new Set<Size['id']>(['legAlong', 'legDown'])

const align = (scene: Scene): StepWords => {
  if (scene.move.purpose === 'only-tip')
    return say(
      'ALIGN',
      ['outer tip over the work by about ', length('tool', overWork(scene.feature.operation.touch) ?? 0, scene.units)],
      [],
      [['by carriage; the rest of the edge hangs off the corner']],
    )
  const { point, to, on } = placingWords(scene.feature, scene.units)
  if (fedToTouch(scene))
    return say(
      'ALIGN',
      together([`${point} beside `, to, ', a little short of it']),
      [],
      [['by carriage, to its stop if any; the compound stays where it is'], ['the cross-feed stays out']],
    )
  return say(
    'ALIGN',
    together([point, on ? ' on ' : ': ', to]),
    [],
    [['by carriage, to its stop if any; the compound stays where it is'], [bringUp(scene)]],
  )
}

/** A tool whose side is fed against a face by the compound, once the carriage is locked. */
const fedToTouch = ({ feature }: Scene): boolean =>
  feature.edge.shape !== 'corner' &&
  feature.operation.moves.some((move) => move.action === 'touch-off' && move.slide === 'compound')

/** What the cross-feed does meanwhile: nowhere else on the sheet is it brought to the work. */
const bringUp = ({ feature }: Scene): string => {
  if (feature.edge.shape === 'corner') return 'cross-feed out, clear of the work, until it is in place'
  return !isOnLine(feature.operation.placing)
    ? 'spindle stopped; wind the edge in below the top of the shoulder, clear of the work; touch lightly, the compound must not move'
    : 'cross-feed out until then; bring the edge close to the work, not touching'
}

/** The named slide is fed forward, so that the touch itself takes up its lost motion. */
const touchOff = (scene: Scene): StepWords => {
  const { move, feature } = scene
  if (move.slide !== 'compound')
    return say('CROSS-FEED', together(['in gently until ', touchWords(feature, scene.units)]), [], [BY_HAND])
  const { forward } = waysOf('compound', feature.operation.angle)
  const { point, to } = placingWords(feature, scene.units)
  const met =
    feature.edge.shape === 'corner' ? 'only the deep tip touches the end face' : together([`the ${point} touches `, to])
  return say('COMPOUND', together([`${forward} gently until `, met]), [], [BY_HAND])
}

/** In neutral the spindle cannot start, and the work turns by hand. Common practice, no source. */
const BY_HAND: Phrase = ['power off, in neutral; turn the work by hand to feel the touch']

/**
 * Only sizes that can be measured on the finished stretch of work; the expected values are those of the replay at this
 * move.
 */
const measure = (scene: Scene): StepWords => {
  const rough = scene.move.purpose === 'expect-rough'
  const unfinished = (id: Size['id']) =>
    rough && (id === 'cornerRadius' || (id === 'radius' && scene.feature.edge.shape === 'corner'))
  const expected = (scene.feature.trace.at[scene.index] ?? []).filter(
    (size) =>
      middle(size) !== null &&
      size.id !== 'flatness' &&
      !unfinished(size.id) &&
      // A keen V has no flat.
      !(size.id === 'root' && Math.abs(middle(size) ?? 0) < INCH / 10_000),
  )
  if (expected.length === 0) return say('MEASURE', ['with the spindle STOPPED'])
  const taken = expected.map((size) => ({ size, by: takenBy(scene.feature, size.id) }))
  const sizes = taken.flatMap(({ size, by }) =>
    by === null
      ? []
      : [
          {
            id: size.id,
            label: placeLabel(scene, size.id),
            ...(datumOf(scene, size.id) === undefined ? {} : { elsewhere: true as const }),
            size: dimensionFigure(
              'expected',
              size.id,
              (middle(size) ?? 0) - (datumOf(scene, size.id)?.at ?? 0),
              scene.units,
            ),
            ...(by === undefined ? {} : takenWith(scene, size.id, by.with, expected)),
          },
        ],
  )
  const without = taken.flatMap(({ size, by }) => (by === null ? [labelOf(size.id)] : []))
  const lines = sizes.map(
    ({ label, size, by }): Phrase => [...(by === undefined ? [] : [...by, ': ']), `${label}, `, size, ' expected'],
  )
  const not: Phrase[] = without.length === 0 ? [] : [[`not asked, nothing at hand takes it: ${without.join(', ')}`]]
  return {
    ...say('MEASURE', ['with the spindle STOPPED, the burr stoned off:'], [], [...lines, ...not, ...asWritten(scene)]),
    expected: sizes,
  }
}

/** Where nothing is corrected by what is measured, it only shows whether something is wrong. */
const asWritten = ({ move, feature: { corrects } }: Scene): Phrase[] =>
  move.purpose === 'expect-rough' && corrects?.bottom === false && !corrects.width
    ? [['nothing at hand is sure enough to correct by: finish as written']]
    : []

/** What takes a size of this feature; null if nothing at hand does, undefined if it has no instrument. */
const takenBy = ({ inspection = [] }: Planned, id: string): Check['by'] =>
  inspection.find((check) => check.id === (PLACES.has(id) ? 'place' : id))?.by

/** What a place is taken from, where that is not the free end. */
const datumOf = ({ feature: { inspection = [] } }: Scene, id: string): Check['datum'] =>
  PLACES.has(id) ? inspection.find((check) => check.id === 'place')?.datum : undefined

const placeLabel = (scene: Scene, id: Size['id']): string => {
  const datum = datumOf(scene, id)
  return datum === undefined ? labelOf(id) : `${id === 'center' ? id : `${id} edge`} from ${datum.name}`
}

/** Over pins nobody reads a size of the work: what is to be taken off, at this stop, is told beside it. */
function takenWith(
  { feature, units }: Scene,
  id: string,
  name: InstrumentName,
  sizes: readonly Size[],
): Pick<Expected, 'by' | 'over'> {
  const pins = feature.inspection?.find((check) => check.id === id)?.over
  // A center has no edge.
  if (id === 'center') return { by: [`${NAMED[name]} to the near edge, and half the width`] }
  if (name !== 'pins' || pins === undefined) return { by: [NAMED[name]] }
  const { pin, more, flanks } = pins
  const root = sizes.find((size) => size.id === 'root')
  const now = flanks === null || root === undefined ? 0 : (flanks.root - (middle(root) ?? flanks.root)) / flanks.tangent
  const over: Phrase = [
    'over two ',
    called('instrument', pin.label, pin.size, units),
    ' pins less ',
    length('instrument', more + now, units),
  ]
  return { by: over, over }
}

const PLACES: ReadonlySet<string> = new Set(['near', 'far', 'center'])

/** In a shop's words. */
const NAMED: Readonly<Record<InstrumentName, string>> = {
  rule: 'rule',
  caliper: 'caliper',
  'inside-caliper': 'caliper',
  micrometer: 'micrometer',
  'blade-micrometer': 'blade micrometer',
  'depth-micrometer': 'depth micrometer',
  'depth-indicator': 'depth indicator',
  'gauge-blocks': 'gauge blocks',
  pins: 'pins',
  'radius-gauges': 'radius gauge',
  protractor: 'protractor',
}

/** Surely and possibly cut are one form on a proven sheet; if they differ, the surely cut one is expected. */
const middle = (size: Size): number | null => size.surely ?? size.possibly
