import type { Scale } from '../lathe/lathe.ts'
import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'

/**
 * One slide and its dial, all in pm of slide travel. `dial` is the reading, `at` where the slide is for no lost motion and for the
 * whole stated lost motion; `offset` moves the dial's zero to the zero of the operation (0 unless a zero is set again).
 */
export type SlideState = {
  readonly step: Length
  readonly lost: Length
  readonly dial: Length
  readonly at: Interval
  readonly offset: Length
  readonly zeroed: boolean
  /** Brought to a place by eye: where it is is known, and its dial says nothing of it. */
  readonly seen: boolean
}

/** Before anything is known of it: the lost motion may lie anywhere. */
export const fresh = (scale: Scale | null): SlideState => {
  const lost = scale?.kind === 'dial' ? travel(scale, scale.backlash) : 0
  return { step: stepOf(scale), lost, dial: 0, at: [0, lost], offset: 0, zeroed: false, seen: false }
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
  const follow = (s: Length, lost: Length): Length => Math.min(Math.max(s, dial), dial + lost)
  return { ...slide, dial, at: [follow(slide.at[0], 0), follow(slide.at[1], slide.lost)] }
}

/** Fed forward until the tool touches: the screw pushes, so nothing is left open. */
export const touching = (slide: SlideState): SlideState => ({ ...slide, at: [slide.dial, slide.dial] })

/** Names the reading 0 where the dial stands. The first time that is the operation's zero; later the slide keeps its place. */
export const zeroed = (slide: SlideState): SlideState => ({
  ...slide,
  dial: 0,
  at: [slide.at[0] - slide.dial, slide.at[1] - slide.dial],
  offset: slide.zeroed || slide.seen ? slide.offset + slide.dial : 0,
  zeroed: true,
  seen: false,
})

/** Moved by hand until the tool is seen to stand at a place: whatever its screw has lost, the tool is there. */
export const broughtTo = (slide: SlideState, place: Length): SlideState => ({
  ...slide,
  dial: 0,
  at: [0, 0],
  offset: place,
  zeroed: false,
  seen: true,
})

export const isKnown = ({ zeroed, seen }: SlideState): boolean => zeroed || seen

export const isOpen = (slide: SlideState): boolean => slide.at[1] - slide.at[0] > 0.5

/** Where the slide is, from the operation's zero. */
export const placeOf = (slide: SlideState): Interval => [slide.at[0] + slide.offset, slide.at[1] + slide.offset]
