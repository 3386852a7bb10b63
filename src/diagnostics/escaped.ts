/**
 * Characters that a terminal obeys or that hide what is written: C0 without tab and line ends, DEL, C1, line and
 * paragraph separators, direction controls, byte-order marks inside a text, lone surrogates. As part of a pattern.
 */
export const HIDDEN =
  '\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f-\\u009f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ufeff\\p{Cs}'

/** Most texts have nothing of this. To see that is much faster than to make a pattern of all hidden characters. */
const UNUSUAL = /[^\t\n -~\u00a0-\u061b]/
const UNUSUAL_IN_LINE = /[^ -~\u00a0-\u061b]/
const SHORT: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' }

const asNumber = (character: string): string => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`

/** The same text with those characters as `\u001b`; line feeds and tabs stay. In JSON that is the same text again. */
export const escaped = (text: string): string =>
  UNUSUAL.test(text) ? text.replace(new RegExp(`[${HIDDEN}\\r]`, 'gu'), asNumber) : text

/** A name within a line: it ends no line either. */
export const oneLine = (text: string): string =>
  UNUSUAL_IN_LINE.test(text)
    ? text.replace(new RegExp(`[${HIDDEN}\\r\\n\\t]`, 'gu'), (character) => SHORT[character] ?? asNumber(character))
    : text

const LONGEST_VALUE = 250
const LONGEST_MESSAGE = 2000

/** A message in which somebody's long value stands: the value is cut in its middle, so that the rest can be read. */
export const brief = (message: string): string =>
  message.length <= LONGEST_VALUE ? message : cut(message.replace(/"[^"]{251,}"|\S{251,}/g, cutValue), LONGEST_MESSAGE)

const cutValue = (value: string): string => cut(value, LONGEST_VALUE)

const cut = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, Math.ceil(most / 2))}…${text.slice(-Math.floor(most / 2))}`
