import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import type { Figure, Phrase } from '../../src/phrase/phrase.ts'
import { words } from '../../src/phrase/words.ts'
import type { Plan } from '../../src/plan/plan.ts'
import type { Sheet, SheetStep } from '../../src/sheet/sheet.ts'
import { groove, grooveMoves, grooveWith, inch, metricDial, move, plan, refused } from './fixture.ts'

const line = (step: SheetStep | undefined): string => {
  if (step === undefined) throw new Error('no such step')
  return [
    `${step.thing} ${words(step.does, 'inch')}`,
    words(step.effect, 'inch'),
    ...step.more.map((m) => words(m, 'inch')),
  ]
    .filter(Boolean)
    .join(' | ')
}
const lineOf = (sheet: Sheet, number: number): string => line(sheet.steps[number - 1])
const linesOf = (over: Partial<Plan>): string[] => sheetFor(plan(over)).steps.map(line)

describe('steps', () => {
  it('are one a move, numbered through the whole sheet', () => {
    const sheet = sheetFor(plan({ features: [groove, refused, groove] }))
    expect(sheet.steps.map((step) => step.number)).toEqual(
      Array.from({ length: grooveMoves.length * 2 }, (_, i) => i + 1),
    )
    expect(sheet.steps.map((step) => step.action)).toEqual([...grooveMoves, ...grooveMoves].map(({ action }) => action))
    expect(new Set(sheet.steps.map((step) => step.feature))).toEqual(new Set([0, 2]))
  })

  it('say what the hand does, and then what that does to the work', () => {
    const sheet = sheetFor(plan())
    expect(lineOf(sheet, 1)).toBe(
      'LAYOUT dye the work, scribe with the spindle stopped: | 1.125 from the free end: tailstock-side edge; 1 1/8 on a rule | 1.281 from the free end: headstock-side edge; 1 9/32 on a rule | scribe with hermaphrodite calipers, the bent leg on the free end',
    )
    expect(lineOf(sheet, 4)).toBe('COMPOUND turn toward the headstock, 11 marks or more | takes up backlash')
    expect(lineOf(sheet, 8)).toBe(
      'CROSS-FEED in gently until the edge touches the turning surface | power off, in neutral; turn the work by hand to feel the touch',
    )
    expect(lineOf(sheet, 12)).toBe('CROSS-FEED in past 0, to 52 | .052 deep, 1.396 dia')
    expect(lineOf(sheet, 13)).toBe('CROSS-FEED OUT past 0, stop at 50 (.050 out, half a turn) | clears by .042')
    expect(lineOf(sheet, 14)).toBe('COMPOUND toward the headstock to 8 | shift .008 toward the headstock')
    expect(lineOf(sheet, 17)).toBe('COMPOUND back past 0, stop at 80 (.020 before 0) | more than the backlash')
    expect(lineOf(sheet, 25)).toBe('COMPOUND toward the headstock to 8, 3 marks a second | cleans the bottom')
    expect(lineOf(sheet, 26)).toBe(
      'CROSS-FEED OUT past 0, stop at 50 (.050 out, half a turn), 3 marks a second at first | squares the shoulder',
    )
  })

  it('keep hands away from the tool: stop, whole turns out, measure, the same turns in', () => {
    const sheet = sheetFor(plan())
    expect([19, 20, 21, 22, 23].map((number) => lineOf(sheet, number))).toEqual([
      'SPINDLE STOP, wait until it has come to rest',
      'CROSS-FEED OUT 5 whole turns more, count them | room for the hands',
      'MEASURE with the spindle STOPPED, the burr stoned off: | width, .148 expected | bottom diameter, 1.396 expected',
      'CROSS-FEED IN 5 whole turns to the same mark, 50 (.050 out)',
      'SPINDLE start | key out? stand clear',
    ])
  })

  it('are grouped so that the eye finds its place again', () => {
    const groups = sheetFor(plan()).steps.map((step) => step.group)
    expect(groups.filter((group, i) => group !== groups[i - 1])).toEqual([
      'set up',
      'rough',
      'measure',
      'finish',
      'end',
    ])
  })

  it('never promise more clearance than was replayed', () => {
    const nearly = { ...groove, trace: { ...groove.trace, clearance: { 9: inch(0.04199) } } }
    expect(linesOf({ features: [nearly] })[9]).toContain('clears by .041')
  })

  it('state readings as the dial has them', () => {
    const { steps } = sheetFor(plan())
    expect(steps[9]).toMatchObject({ reading: -0.05, turns: -1, mark: 50 })
    expect(steps[3]).toMatchObject({ reading: null, turns: null, mark: null })
    expect(steps[6]).toMatchObject({ reading: 0, turns: 0, mark: 0 })
    expect(steps[0]).toMatchObject({ slide: null, reading: null })
    const metric = sheetFor(plan({ lathe: { ...plan().lathe, crossFeed: metricDial } }))
    expect(metric.steps[11]).toMatchObject({ reading: 1.04, turns: 0, mark: 52 })
  })
})

describe('depth and place', () => {
  const swung = grooveWith(
    [
      move('zero', { slide: 'compound' }),
      move('zero', { slide: 'cross-feed' }),
      move('shift', { slide: 'compound', count: 82 }),
      move('feed-in', { slide: 'cross-feed', count: 19 }),
    ],
    30,
  )
  it('count what a swung compound adds', () => {
    // .082 forward at 30° is .041 in and .071 along.
    expect(linesOf({ features: [swung] }).slice(2)).toEqual([
      'COMPOUND toward the headstock to 82 | shift .071 toward the headstock',
      'CROSS-FEED in to 19 | .060 deep, 1.380 dia',
    ])
  })

  it('count half of a diameter dial', () => {
    const crossFeed = { ...plan().lathe.crossFeed, reads: 'diameter', perTurn: inch(0.2) } as Plan['lathe']['crossFeed']
    expect(linesOf({ lathe: { ...plan().lathe, crossFeed } })[11]).toBe(
      'CROSS-FEED in past 0, to 52 (.052 on the dial) | .026 deep, 1.448 dia',
    )
  })

  it('count how far a corner tool still has to go', () => {
    const corner = grooveWith([
      move('zero', { slide: 'compound' }),
      move('zero', { slide: 'cross-feed' }),
      move('feed-in', { slide: 'cross-feed', count: -38 }),
      move('feed-in', { slide: 'compound', count: -24 }),
      move('feed-in', { slide: 'cross-feed', count: 0 }),
    ])
    const lines = linesOf({ features: [{ ...corner, edge: { ...corner.edge, shape: 'corner' } }] })
    expect(lines.slice(2)).toEqual([
      'CROSS-FEED OUT from 0 to 62 (.038 out) | .038 to go',
      'COMPOUND back from 0 to 76 (.024 before 0) | .024 to go',
      'CROSS-FEED in onto 0 | finished size',
    ])
  })
})

describe('swinging the compound', () => {
  const swing = (angle: number, scaleZero: 'parallel' | 'square'): string | undefined =>
    linesOf({
      features: [grooveWith([move('swing')], angle)],
      lathe: { ...plan().lathe, compound: { ...plan().lathe.compound, scaleZero } },
    })[0]

  it('is said as the scale of this lathe shows it', () => {
    expect(swing(0, 'parallel')).toBe(
      'COMPOUND set to 0° on its swivel scale (0 there is parallel), tighten | by indicator along a true bar: .001 at most in an inch; its gib snug',
    )
    expect(swing(5 + 44 / 60, 'square')).toContain(
      "COMPOUND set to 84° 16' on its swivel scale (0 there is square), tighten | that is 5° 44' from parallel | ",
    )
    expect(swing(-29.5, 'square')).toContain(
      "a scale that ends at 90° or counts back from it: 60° 30' on the far side of 90°, 29° 30' past it",
    )
  })

  // Trade geometry: a feed of C goes C·cos θ toward the headstock and C·sin θ into the work, θ from parallel.
  const way = (theta: number): { in: number; head: number } => {
    const radians = (theta * Math.PI) / 180
    const sign = (x: number) => (Math.abs(x) < 1e-9 ? 0 : Math.sign(x))
    return { in: sign(Math.sin(radians)), head: sign(Math.cos(radians)) }
  }
  const inOf = (words: string) => (/INTO|goes in/.test(words) ? 1 : /OUT|goes out/.test(words) ? -1 : 0)
  const ANGLES = Array.from({ length: 180 }, (_, i) => i - 89)

  it.each(['parallel', 'square'] as const)(
    'says which side to swing to, right at every angle, marked from %s',
    (zero) => {
      for (const angle of ANGLES) {
        const said = swing(angle, zero)!.split(' | ').slice(1)
        const right = said.find((line) => line.startsWith('so that'))
        const wrong = said.find((line) => line.startsWith('on the other side of 0'))
        const meant = way(angle)
        const other = way(zero === 'square' ? 180 - angle : -angle)
        const oneSided = Math.abs(zero === 'square' ? 90 - angle : angle) === 0
        expect(wrong === undefined, `${angle}`).toBe(oneSided)
        if (wrong !== undefined) {
          expect(inOf(wrong), `${angle}: ${wrong}`).toBe(other.in)
          expect(/toward the tailstock/.test(wrong), `${angle}: ${wrong}`).toBe(other.head < 0)
          expect(wrong).toMatch(/: WRONG$/)
        }
        if (right === undefined) expect([angle, zero]).toEqual([0, 'parallel'])
        else {
          expect(inOf(right), `${angle}: ${right}`).toBe(meant.in)
          expect(/TOWARD THE HEADSTOCK/.test(right)).toBe(meant.head > 0)
        }
        expect(said.some((line) => line.includes('the near side of 90°'))).toBe(zero === 'square' && angle < 0)
      }
    },
  )
})

describe('the spindle', () => {
  it('is warned of where the lathe is too fast', () => {
    const fast = { ...groove, spindle: { ...groove.spindle, tooFast: true } }
    expect(linesOf({ features: [fast] })[2]).toBe(
      'SPEED 95 rpm: LOWEST AVAILABLE, TOO FAST: DO NOT FORM AT THIS SPEED | do not go on: 115 rpm is wanted; engage the back gear, or take a lathe that runs slower | list that speed in spindle-speeds, and print this sheet again',
    )
  })
})

describe('the sheet', () => {
  it('gives every figure an id of its own', () => {
    const ids = figuresIn(sheetFor(plan({ features: [groove, groove] }))).map(({ id }) => id)
    expect(ids.length).toBeGreaterThan(100)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('bakes no reading into prose', () => {
    for (const { does, effect } of sheetFor(plan()).steps.slice(11, 26)) {
      for (const part of [...does, ...effect])
        if (typeof part === 'string') expect(part.replace(/past 0|onto|before\s0/g, '')).not.toMatch(/\d/)
    }
  })

  it('survives a JSON round trip', () => {
    const sheet = sheetFor(plan({ features: [groove, refused] }))
    expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet)
  })

  it('warns of an edge that pulls itself in only where it can', () => {
    const brass = { ...plan().part, material: 'brass' }
    const raked = { ...groove, edge: { ...groove.edge, rakeInUse: 5 } }
    const cautions = (over: Partial<Plan>) => sheetFor(plan(over)).cautions.join(' ')
    expect(cautions({ part: brass, features: [raked] })).toMatch(/pull a tool/)
    expect(cautions({ part: brass })).not.toMatch(/pull a tool/)
    expect(cautions({ features: [raked] })).not.toMatch(/pull a tool/)
    expect(cautions({})).toMatch(/manual, the shop's rules, local codes and a qualified supervisor/)
  })

  it('proves every dimension, and says what would make it hold', () => {
    const [feature] = sheetFor(plan()).features
    if (feature?.status !== 'planned') throw new Error('planned')
    const [width, bottom, near] = feature.proof.lines
    expect(words(feature.proof.replayed, 'inch')).toBe(
      'CHECKED BY REPLAY, any backlash 0 to .008 (cross-feed) and 0 to .006 (compound)',
    )
    expect(width).toMatchObject({ verdict: 'holds', remedy: null, spare: { value: 0.00325 } })
    expect(words(bottom?.remedy ?? [], 'inch')).toBe('would hold with .001 less of "touching off", the largest cause')
    expect(near).toMatchObject({ limits: null, spare: null, remedy: null })
  })
})

const figuresIn = (value: unknown): Figure[] => {
  if (typeof value !== 'object' || value === null) return []
  if ('role' in value && 'digits' in value) return [value as Figure]
  return Object.values(value as Record<string, Phrase>).flatMap(figuresIn)
}
