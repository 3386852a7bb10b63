import type { Cause } from './cause.ts'

/** Who takes the tool for as wide as the groove has nowhere to shift it. */
export const undersizeForgotten: Cause = {
  code: 'undersize-forgotten',
  says: 'the tool was taken for as wide as the groove: that it is narrower was forgotten',
  teach: 'what a tool that measures under its groove leaves to be shifted',
  reading: ({ axis, tool }) => (axis === 'along' && tool !== null ? [0] : []),
  worked: ({ formula }) => (formula === 'shift' ? [0] : []),
}
