import { type Child, type Markup, short, tag } from '../markup.ts'
import { INK } from './pen.ts'

/** A drawing on paper, mm, and the same in words. */
export type Picture = {
  /** Unique in the sheet, of letters, figures and hyphens. */
  readonly id: string
  readonly kind: 'part' | 'form' | 'tool' | 'dial' | 'swivel'
  /** Index of the feature it is of; null: of the whole part. */
  readonly feature: number | null
  /** The step that it shows, where it shows one. */
  readonly step: number | null
  readonly title: string
  readonly desc: string
  readonly width: number
  readonly height: number
  readonly drawn: Child
}

/** As an element of its own, for a page or (placed) for a larger drawing. */
export const framed = (picture: Picture, at?: { readonly x: number; readonly y: number }): Markup => {
  // In a larger drawing lengths are in its own unit, which is the millimeter already.
  const unit = at === undefined ? 'mm' : ''
  const { id, kind, title, desc, width, height, drawn } = picture
  return tag(
    'svg',
    {
      id,
      class: `picture ${kind}`,
      x: at?.x,
      y: at?.y,
      width: `${short(width)}${unit}`,
      height: `${short(height)}${unit}`,
      viewBox: `0 0 ${short(width)} ${short(height)}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      'font-family': 'Arial, Helvetica, sans-serif',
      fill: INK,
    },
    tag('title', { id: `${id}-title` }, title),
    tag('desc', { id: `${id}-desc` }, desc),
    drawn,
  )
}
