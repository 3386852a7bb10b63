import type { Size } from '../moves/trace.ts'
import { angleFigure, dimensionFigure, labelOf } from './dimensions.ts'
import { figure, length } from './figure.ts'
import type { LayoutLine } from './plan.ts'
import type { Phrase } from './sheet.ts'
import type { Said, Scene } from './scene.ts'

/** What a hand does that is on no dial. */
export const handStep = (scene: Scene): Said => {
  switch (scene.move.action) {
    case 'layout': return layout(scene)
    case 'fit-tool': return fitTool(scene)
    case 'swing': return swing(scene)
    case 'set-speed': return speed(scene)
    case 'start': return say('SPINDLE', ['start'], ['key out? stand clear'])
    case 'stop': return say('SPINDLE', ['STOP, wait until it stands'])
    case 'align': return say('ALIGN', [`${scene.feature.align.point} on ${scene.feature.align.to}`])
    case 'touch-off': return say((scene.move.slide ?? 'cross-feed').toUpperCase(), [scene.feature.touch])
    case 'lock': return say('CARRIAGE', ['LOCK, then look at the line again'])
    case 'unlock': return say('CARRIAGE', ['unlock'])
    case 'measure': return measure(scene)
    case 'deburr': return say('DEBURR', ['break the sharp edges with a file, spindle slow'], ['no rag near the work'])
    default: throw new Error(`no words for a move without a slide: ${scene.move.action}`)
  }
}

const say = (thing: string, does: Phrase, effect: Phrase = [], more: readonly Phrase[] = []): Said => ({ thing, does, effect, more })

const layout = (scene: Scene): Said => {
  const lines = scene.feature.layout
  if (lines.length === 0) return say('LAYOUT', ['none: the place is found by touching'])
  return say('LAYOUT', ['dye the work, scribe with the spindle stopped:'], [], lines.map((line) => scribe(scene, line)))
}

/** From the datum that the drawing uses; where that is not the free end, from there too, for a rule that only reaches from the end. */
const scribe = (scene: Scene, line: LayoutLine): Phrase => {
  const fromEnd: Phrase =
    line.fromEnd === line.distance ? [] : [' (', length('place', line.fromEnd, scene.units), ' from the free end)']
  return [length('place', line.distance, scene.units), ` from ${line.from}`, ...fromEnd, `: ${line.say}`]
}

const fitTool = (scene: Scene): Said => {
  const { tool, edge } = scene.feature
  return say('TOOL', [`"${tool}" on center, square to the work`], [], [
    ['stick the bit out no more than it must (the ground edge reaches ', length('tool', edge.reach, scene.units), ')'],
  ])
}

/** On the scale of this lathe; what the angle is from the ways is said beside it. */
const swing = (scene: Scene): Said => {
  const { angle } = scene.feature.operation
  const { scaleZero } = scene.plan.lathe.compound
  const shown = scaleZero === 'square' ? 90 - angle : angle
  const into = angle > 0 ? 'forward feed goes INTO the work' : angle < 0 ? 'forward feed goes OUT of the work' : 'parallel with the ways'
  const from = scaleZero === 'square' ? ' (0 on this scale is square)' : ' (0 on this scale is parallel)'
  const beside: Phrase = scaleZero === 'square' ? ['that is ', angleFigure('angle', angle), ' from parallel'] : []
  return say('COMPOUND', ['swing to ', angleFigure('angle', Math.abs(shown)), from, ', tighten'], [], [[into], ...(beside.length > 0 ? [beside] : [])])
}

const speed = (scene: Scene): Said => {
  const { spindle } = scene.feature
  const rpm = figure('speed', spindle.rpm, 'rpm')
  if (spindle.tooFast) return say('SPEED', [rpm, ' rpm: LOWEST AVAILABLE, TOO FAST'], [], [['do not form at this speed']])
  return say('SPEED', [rpm, ' rpm'], [], [['chatter: less speed, MORE feed']])
}

/** Only what the finished stretch of work can be measured for; the expected sizes come from the replay at this very move. */
const measure = (scene: Scene): Said => {
  const expected = (scene.feature.trace.at[scene.index] ?? []).filter((size) => middle(size) !== null && size.id !== 'flatness')
  const lines = expected.map((size) => expectation(scene, size))
  if (lines.length === 0) return say('MEASURE', ['with the spindle STOPPED'])
  return say('MEASURE', ['with the spindle STOPPED:'], [], lines)
}

const expectation = (scene: Scene, size: Size): Phrase => [
  `${labelOf(size.id)}, `,
  dimensionFigure('expected', size.id, middle(size) ?? 0, scene.units),
  ' expected',
]

/** Surely and possibly cut are one form on a proven sheet; where they are not, what is surely there is expected. */
const middle = (size: Size): number | null => size.surely ?? size.possibly
