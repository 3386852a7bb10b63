/** Markup that was made here. A plain string is never taken for it: it is text, and its signs are written so that they stay text. */
export type Markup = { readonly made: string }
export type Child = Markup | string | readonly Child[]
export type Attributes = Readonly<Record<string, string | number | undefined>>

/** One element. A name and the names of attributes are ours; values and text may be anybody's. */
export const tag = (name: string, attributes: Attributes = {}, ...children: readonly Child[]): Markup => {
  const all = Object.entries(attributes)
    .flatMap(([key, value]) =>
      value === undefined ? [] : [` ${key}="${typeof value === 'number' ? short(value) : escaped(String(value))}"`],
    )
    .join('')
  if (EMPTY.has(name)) return { made: `<${name}${all}/>` }
  return { made: `<${name}${all}>${joined(children)}</${name}>` }
}

/** Of text and elements, one after the other. */
export const joined = (children: Child): string => {
  if (typeof children === 'string') return escaped(children)
  return isList(children) ? children.map(joined).join('') : children.made
}

/** What turns the order of signs round is shown, not obeyed. */
export const shown = (text: string): string =>
  text.replace(
    /[\u202a-\u202e\u2066-\u2069\u200e\u200f\u061c]/g,
    (sign) => `[U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}]`,
  )

/** Text as it stands between tags or in quotes: nothing in it can end either. */
export const escaped = (text: string): string =>
  shown(text)
    .replace(/[\t\n\r\u2028\u2029]/g, ' ')
    .replace(UNPRINTABLE, '\ufffd')
    .replace(/[&<>"'`]/g, (sign) => `&#${sign.charCodeAt(0)};`)

/** A thousandth of a millimeter is finer than any printer. */
export const short = (value: number): string => String(Number(value.toFixed(3)) + 0)

const isList = (child: Child): child is readonly Child[] => Array.isArray(child)

/** Elements that have nothing in them, and no end tag in a page. */
const EMPTY: ReadonlySet<string> = new Set(['meta', 'input', 'br', 'path', 'line', 'circle', 'rect', 'polygon'])

/** What XML does not allow in a file at all: control signs, halves of pairs, and two that are no signs. */
const UNPRINTABLE = /[^\x20-\x7e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu
