import { readingFigure } from '../../phrase/dial.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { about, say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { INCH, type Length, MM } from '../../units/length.ts'
import type { ReadingFacts } from '../blank.ts'
import { shuffledList } from '../shuffle.ts'
import { solve } from '../solve.ts'
import type { Ask, Made, Scene } from './ask.ts'
import { onDial } from './on-dial.ts'

/** Questions on one sheet, and the steps of travel that are asked for, in thousandths or hundredths. */
const QUESTIONS = 8
const FEWEST = 15
const MOST = 240

/** Questions about the dial of the cross-feed: from a depth or a diameter, inch or metric, to turns and mark. */
export const drill: Ask = {
  says: 'questions about a dial: turns and mark for a depth or a diameter, inch and metric',
  make: (scene) => {
    const many = Array.from({ length: MOST - FEWEST }, (_, i) => FEWEST + i)
    return shuffledList(many, `${scene.seed}/drill`)
      .slice(0, QUESTIONS)
      .map((size, i) => question(scene, size, i))
  },
}

/** In turn: a depth, an amount off the diameter, and each of both in the other units. */
const question = (scene: Scene, size: number, i: number): Made => {
  const scale = scene.plan.lathe.crossFeed
  const inch = (scale.units === 'inch') !== i % 4 > 1
  const byDiameter = i % 2 === 1
  // An amount off a diameter is even, so that half of it is no part of a thousandth.
  const amount: Length = (byDiameter ? size + (size % 2) : size) * (inch ? INCH / 1000 : MM / 50)
  const facts: ReadingFacts = {
    sort: 'reading',
    slide: 'cross-feed',
    scale,
    axis: 'deep',
    travel: byDiameter ? amount / 2 : amount,
    angle: 0,
    tool: null,
    width: null,
    rough: null,
    correction: null,
    units: scale.units,
  }
  const right = solve(facts) as number
  const shown: Phrase = [about('depth', amount, inch ? 'inch' : 'mm')]
  const { units } = scene.plan
  return {
    id: `drill-${i + 1}`,
    asks: words(say`dial drill, question ${i + 1}`, units),
    facts,
    ...onDial(scale, right, units),
    working: words(
      say`${shown} ${byDiameter ? 'off the diameter is half of it in depth' : 'deep'}${scale.reads === 'diameter' ? ', and the dial reads diameter' : ''}: ${readingFigure(scale, right)}`,
      units,
    ),
    follows: [],
    move: null,
    place: {
      question: words(
        say`From 0, ${byDiameter ? 'take' : 'go in'} ${shown}${byDiameter ? ' off the diameter' : ' deep'}: turns and mark`,
        units,
      ),
    },
  }
}
