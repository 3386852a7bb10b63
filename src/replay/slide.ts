import type { Scale } from '../lathe/lathe.ts'
import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'

/**
 * One slide and its dial, all in pm of slide travel. `dial` is the reading, `at` where the slide is for no lost motion and for the
 * whole stated lost motion; `offset` moves the dial's zero to the zero of the operation (0 unless a zero is set again, or set where the
 * slide had moved on from the place it was brought to).
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
  /** Brought to a place by eye: where it is is known, and its dial says nothing of it. */
  readonly seen: boolean
}

/** Before anything is known of it: the lost motion may lie anywhere. */
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

/** Slide travel behind a difference of readings: a scale that reads diameter counts double. */
export const travel = (scale: Scale, reading: Length): Length => (scale.reads === 'diameter' ? reading / 2 : reading)

/** Turns the dial to a place; the slide follows through its lost motion. */
export const turned = (slide: SlideState, dial: Length): SlideState => {
  const { step, lost, at, offset, brought, zeroed, seen } = slide
  return { step, lost, dial, at: [dial, Math.min(Math.max(at[1], dial), dial + lost)], offset, brought, zeroed, seen }
}

/** Fed forward until the tool touches: the screw pushes, so nothing is left open. */
export const touching = (slide: SlideState): SlideState => broughtHere({ ...slide, at: [slide.dial, slide.dial] })

/** Where the slide is now the tool stands at its place: the zero belongs here. */
export const broughtHere = (slide: SlideState): SlideState => ({ ...slide, brought: slide.at })

/** How far the slide has gone since then, for no lost motion and for all of it; the lesser first. */
export const goneOn = ({ at, brought }: SlideState): Interval => {
  if (brought === null) return [0, 0]
  const [a, b] = [at[0] - brought[0], at[1] - brought[1]]
  return a <= b ? [a, b] : [b, a]
}

/** Names the reading 0 where the dial stands. The first time that is the operation's zero, unless the slide has gone on from there; later the slide keeps its place. */
export const zeroed = (slide: SlideState): SlideState => ({
  ...slide,
  dial: 0,
  at: [slide.at[0] - slide.dial, slide.at[1] - slide.dial],
  offset: slide.zeroed || slide.seen ? [slide.offset[0] + slide.dial, slide.offset[1] + slide.dial] : goneOn(slide),
  zeroed: true,
  seen: false,
})

/** Moved by hand until the tool is seen to stand at a place: whatever its screw has lost, the tool is there. */
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
