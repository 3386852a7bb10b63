/** A small reader of marked-up text that stops at the first thing that is not well-formed. `raw`: elements whose text is taken as it stands. */
export type Element = {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly (Element | string)[]
}

export const parse = (text: string, raw: readonly string[] = []): Element => {
  const body = text.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n|^<!DOCTYPE html>\n/, '')
  const stray = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff\ufffe\uffff]/u.exec(body)
  if (stray) throw new Error(`a sign that may not stand at ${stray.index}`)
  const root: { name: string; attributes: Record<string, string>; children: (Element | string)[] } = {
    name: '',
    attributes: {},
    children: [],
  }
  const open = [root]
  let at = 0
  while (at < body.length) {
    const here = open.at(-1)!
    if (body[at] !== '<') {
      const end = body.indexOf('<', at)
      const stretch = body.slice(at, end < 0 ? body.length : end)
      here.children.push(unescaped(stretch))
      at += stretch.length
      continue
    }
    const closing = /^<\/([\w:-]+)>/.exec(body.slice(at, at + 80))
    if (closing) {
      if (here.name !== closing[1]) throw new Error(`</${closing[1]}> ends <${here.name}> at ${at}`)
      open.pop()
      at += closing[0].length
      continue
    }
    const opening = /^<([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)(\/?)>/.exec(body.slice(at, at + 200_000))
    if (!opening) throw new Error(`no tag at ${at}: ${body.slice(at, at + 60)}`)
    const [whole, name, attributes, alone] = opening
    const element = { name: name!, attributes: attributesOf(attributes!), children: [] as (Element | string)[] }
    here.children.push(element)
    at += whole.length
    if (alone === '/') continue
    if (raw.includes(name!)) {
      const end = body.indexOf(`</${name}`, at)
      element.children.push(body.slice(at, end))
      at = end
    }
    open.push(element)
  }
  if (open.length !== 1) throw new Error(`<${open.at(-1)!.name}> is not ended`)
  const elements = root.children.filter((child): child is Element => typeof child !== 'string')
  const between = root.children.filter((child) => typeof child === 'string').join('')
  if (elements.length !== 1 || between.trim() !== '') throw new Error('more than one thing at the top')
  return elements[0]!
}

const attributesOf = (text: string): Record<string, string> => {
  const found: Record<string, string> = {}
  for (const [, name, value] of text.matchAll(/([\w:-]+)="([^"]*)"/g)) {
    if (name! in found) throw new Error(`${name} is given twice`)
    found[name!] = unescaped(value!)
  }
  return found
}

const unescaped = (text: string): string => {
  if (text.includes(']]>')) throw new Error(']]> in text')
  const rest = text.replace(/&#(\d+);/g, '')
  if (rest.includes('&')) throw new Error(`& that begins nothing: ${rest}`)
  return text.replace(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
}

/** The element and all below it, in the order of the text. */
export const everyIn = (element: Element): Element[] => [
  element,
  ...element.children.flatMap((child) => (typeof child === 'string' ? [] : everyIn(child))),
]

/** The text in it, a space that does not break read as a space: only how lines break differs. */
export const textIn = (element: Element): string =>
  element.children
    .map((child) => (typeof child === 'string' ? child.replaceAll('\u00a0', ' ') : textIn(child)))
    .join('')

export const classesOf = ({ attributes }: Element): string[] => (attributes.class ?? '').split(' ').filter(Boolean)

export const withClass = (element: Element, name: string): Element[] =>
  everyIn(element).filter((one) => classesOf(one).includes(name))

/** Ends of the strokes of a path; of an arc, points all along it. */
export const pointsOf = (d: string): [x: number, y: number][] => {
  const points: [number, number][] = []
  for (const [, letter, numbers] of d.matchAll(/([MLAVHhZ])([^MLAVHhZ]*)/g)) {
    const values = numbers!
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number)
    const last = points.at(-1) ?? [0, 0]
    if (letter === 'M' || letter === 'L') points.push([values[0]!, values[1]!])
    if (letter === 'A') points.push(...alongArc(last, [values[5]!, values[6]!], values[0]!, values[4] === 1))
    if (letter === 'V') points.push([last[0], values[0]!])
    if (letter === 'H') points.push([values[0]!, last[1]])
  }
  return points
}

const PARTS = 64

/** Of less than half a circle. `clockwise`: as it is seen, with y down. */
const alongArc = (
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  r: number,
  clockwise: boolean,
): [number, number][] => {
  const chord = Math.hypot(x1 - x0, y1 - y0)
  const away = Math.sqrt(Math.max(0, r ** 2 - chord ** 2 / 4)) * (clockwise ? 1 : -1)
  const [cx, cy] = [(x0 + x1) / 2 - (away * (y1 - y0)) / chord, (y0 + y1) / 2 + (away * (x1 - x0)) / chord]
  const start = Math.atan2(y0 - cy, x0 - cx)
  const turned = 2 * Math.asin(Math.min(1, chord / 2 / r)) * (clockwise ? 1 : -1)
  return Array.from({ length: PARTS }, (_, i): [number, number] => {
    const at = start + (turned * (i + 1)) / PARTS
    return i === PARTS - 1 ? [x1, y1] : [cx + r * Math.cos(at), cy + r * Math.sin(at)]
  })
}
