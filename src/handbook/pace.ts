import { INCH, type Length, MM } from '../units/length.ts'

/** A wider edge heats and chatters more: it is fed half as far. Common practice, no source. */
const NARROW: Length = INCH / 4

/**
 * About .002 in a turn for cutting off (US Army subcourse OD1645, Lathe Operations, 1988; a War Department lathe manual
 * has the same), and so at most that for a narrow groove; half of it for a wider edge. A metric sheet has it in
 * hundredths of a millimeter, rounded down. pm.
 */
export const formingFeed = (edge: Length, units: 'inch' | 'mm'): Length => {
  const feed = edge <= NARROW ? (2 * INCH) / 1000 : INCH / 1000
  const hundredth = MM / 100
  return units === 'inch' ? feed : Math.floor(feed / hundredth) * hundredth
}

/**
 * Turns of the work. One makes the bottom round: drawn out while it still feeds, a tool leaves a spiral as deep as its
 * feed (plane geometry). Two or three are common practice, no source.
 */
const REST_TURNS = 3

/**
 * At a speed in rpm; nobody counts less than a second. Magnesium may take fire from a tool that dwells or rubs (T.O.
 * 1-1A-9 / TM 43-0106, magnesium machining safety).
 */
export const restAt = (rpm: number, material: string): { readonly turns: number; readonly seconds: number } | null =>
  /magnesium/i.test(material) ? null : { turns: REST_TURNS, seconds: Math.max(1, Math.round((60 * REST_TURNS) / rpm)) }
