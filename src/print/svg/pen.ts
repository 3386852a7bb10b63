import { type Child, type Markup, short, shown, tag } from '../markup.ts'

/** All pictures are drawn in millimeters of paper, x to the right and y down. */
export type Point = readonly [x: number, y: number]

/** Line weights as on a shop drawing: what is made, what is told of it, and what only helps the eye. mm. */
export const WEIGHT = { edge: 0.5, thin: 0.25, mark: 0.35, heavy: 0.7 } as const
export const INK = '#000'
export const GRAY = { metal: '#efefef', band: '#b4b4b4', jaws: '#dcdcdc', faint: '#8a8a8a' } as const

/** A capital of this size is 2.5 mm high. */
export const TEXT = 3.5

type Style = {
  readonly width?: number
  readonly dash?: string
  readonly ink?: string
  readonly fill?: string
  readonly as?: string
}

export const path = (d: string, { width = WEIGHT.thin, dash, ink = INK, fill = 'none', as }: Style = {}): Markup =>
  tag('path', {
    class: as,
    d,
    fill,
    stroke: width === 0 ? 'none' : ink,
    'stroke-width': width === 0 ? undefined : width,
    'stroke-dasharray': dash,
    'stroke-linejoin': 'round',
  })

export const line = ([x1, y1]: Point, [x2, y2]: Point, style: Style = {}): Markup =>
  path(`M${short(x1)} ${short(y1)}L${short(x2)} ${short(y2)}`, style)

export const closed = (points: readonly Point[], style: Style = {}): Markup =>
  path(`M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}Z`, style)

export const circle = (
  [cx, cy]: Point,
  r: number,
  { width = WEIGHT.thin, fill = 'none', as, ink = INK }: Style = {},
): Markup =>
  tag('circle', {
    class: as,
    cx,
    cy,
    r,
    fill,
    stroke: width === 0 ? 'none' : ink,
    'stroke-width': width === 0 ? undefined : width,
  })

type Lettering = {
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly size?: number
  readonly bold?: boolean
  /** Read from the right. */
  readonly upright?: boolean
  /** A rim of white, where a line may pass behind it. */
  readonly rim?: boolean
  readonly as?: string
}

export const letters = (
  [x, y]: Point,
  text: Child,
  { anchor = 'start', size = TEXT, bold, upright, rim, as }: Lettering = {},
): Markup =>
  tag(
    'text',
    {
      class: as,
      x,
      y,
      'font-size': size,
      'font-weight': bold ? 'bold' : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      transform: upright ? `rotate(-90 ${short(x)} ${short(y)})` : undefined,
      stroke: rim ? '#fff' : undefined,
      'stroke-width': rim ? 1.2 : undefined,
      'paint-order': rim ? 'stroke' : undefined,
    },
    text,
  )

/** In parts of the size, as in the broadest of the usual faces: it is there to keep things apart. */
export const widthOf = (text: string, size = TEXT): number =>
  [...text].reduce((sum, sign) => sum + breadth(sign), 0) * size

const breadth = (sign: string): number => {
  const spelled = shown(sign)
  if (spelled !== sign) return widthOf(spelled, 1)
  if (/[mwMW@\u2014]/.test(sign)) return 0.9
  if (/[A-Z\u00d8]/.test(sign)) return 0.72
  return /[ .,:;'()ijl|!ftr-]/.test(sign) ? 0.38 : 0.63
}

/** Words in lines that are no wider than so much; a word that is longer than a line is cut. */
export const inLines = (text: string, width: number, size = TEXT): string[] => {
  const lines: string[] = []
  for (const word of text
    .split(/\s+/)
    .filter(Boolean)
    .flatMap((one) => cut(one, width, size))) {
    const last = lines.at(-1)
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= width) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

const cut = (word: string, width: number, size: number): string[] => {
  if (widthOf(word, size) <= width) return [word]
  const most = Math.max(1, Math.floor(width / (0.72 * size)))
  const signs = [...word]
  return [signs.slice(0, most).join(''), ...cut(signs.slice(most).join(''), width, size)]
}

export const LEADING = 5

/** Lines of text one under the other; y is the first base line. */
export const paragraph = ([x, y]: Point, lines: readonly string[], how: Lettering = {}): Markup[] =>
  lines.map((text, i) => letters([x, y + i * LEADING], text, how))

/** A filled head, three times as long as wide, its tip at a point. `toward`: where it points, degrees from the right, turning down. */
export const head = ([x, y]: Point, toward: number, size = 3): Markup => {
  const turned = ([along, across]: Point): Point => {
    const a = (toward * Math.PI) / 180
    return [x + along * Math.cos(a) - across * Math.sin(a), y + along * Math.sin(a) + across * Math.cos(a)]
  }
  return closed([turned([0, 0]), turned([-size, size / 6]), turned([-size, -size / 6])], { width: 0, fill: INK })
}
