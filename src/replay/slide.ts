import type { Scale } from '../lathe/lathe.ts'
import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'

/**
 * One slide and its dial, all in pm of slide travel. `dial` is the reading. `at` is where the slide is with no lost motion, and with all of the stated
 * lost motion. `offset` moves the dial's zero to the zero of the operation: it is 0 unless a zero is set again, or is set where the slide has moved on
 * from the place it was brought to.
 */
export type SlideState = {
  readonly step: Length
  readonly lost: Length
  readonly dial: Length
  readonly at: Interval
  readonly offset: Interval
  /** Where the slide was when the tool was brought to its place. */
  readonly brought: Interval | null
  readonly zeroed: boolean
  /** Brought to a place by eye: the place is known, but not from the dial. */
  readonly seen: boolean
}

/** At the start: nobody knows to which side the lost motion is open. */
export const fresh = (scale: Scale | null): SlideState => {
  const lost = scale?.kind === 'dial' ? travel(scale, scale.backlash) : 0
  return {
    step: stepOf(scale),
    lost,
    dial: 0,
    at: [0, lost],
    offset: [0, 0],
    brought: null,
    zeroed: false,
    seen: false,
  }
}

/** Slide travel of one readable step. */
export const stepOf = (scale: Scale | null): Length => {
  if (scale === null) return 0
  return travel(scale, scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution)
}

/** Slide travel for a difference of readings: a scale that reads diameter shows twice the travel. */
export const travel = (scale: Scale, reading: Length): Length => (scale.reads === 'diameter' ? reading / 2 : reading)

/** Turns the dial to a reading. The slide follows once the lost motion is taken up. */
export const turned = (slide: SlideState, dial: Length): SlideState => {
  const { step, lost, at, offset, brought, zeroed, seen } = slide
  return { step, lost, dial, at: [dial, Math.min(Math.max(at[1], dial), dial + lost)], offset, brought, zeroed, seen }
}

/** Fed forward until the tool touches. The screw pushes, so no lost motion is left open. */
export const touching = (slide: SlideState): SlideState => broughtHere({ ...slide, at: [slide.dial, slide.dial] })

/** The tool is at its place now: the zero belongs here. */
export const broughtHere = (slide: SlideState): SlideState => ({ ...slide, brought: slide.at })

/** How far the slide has moved since then, with no lost motion and with all of it; the smaller first. */
export const goneOn = ({ at, brought }: SlideState): Interval => {
  if (brought === null) return [0, 0]
  const [a, b] = [at[0] - brought[0], at[1] - brought[1]]
  return a <= b ? [a, b] : [b, a]
}

/** Sets the dial to 0 where it is. The first time this is the operation's zero, unless the slide has moved on since it was brought; later the slide keeps its place. */
export const zeroed = (slide: SlideState): SlideState => ({
  ...slide,
  dial: 0,
  at: [slide.at[0] - slide.dial, slide.at[1] - slide.dial],
  offset: slide.zeroed || slide.seen ? [slide.offset[0] + slide.dial, slide.offset[1] + slide.dial] : goneOn(slide),
  zeroed: true,
  seen: false,
})

/** Moved by hand until the tool is seen to be at a place: it is there for every amount of lost motion. */
export const seenAt = (slide: SlideState, place: Length): SlideState => ({
  ...slide,
  dial: 0,
  at: [0, 0],
  offset: [place, place],
  zeroed: false,
  seen: true,
})

export const isKnown = ({ zeroed, seen }: SlideState): boolean => zeroed || seen

export const isOpen = ({ at, offset }: SlideState): boolean => at[1] - at[0] + offset[1] - offset[0] > 0.5

/** Where the slide is, from the operation's zero. */
export const placeOf = (slide: SlideState): Interval => [slide.at[0] + slide.offset[0], slide.at[1] + slide.offset[1]]
