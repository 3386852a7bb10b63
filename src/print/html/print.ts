import type { Sheet } from '../../sheet/sheet.ts'
import type { Parts } from '../format.ts'
import { type Markup, tag } from '../markup.ts'
import { picturesOf } from '../svg/pictures.ts'
import { grinding, inspection, slips } from './back.ts'
import { plates } from './dials.ts'
import { documentOf } from './document.ts'
import { featureSection } from './feature.ts'
import { front, nameOf } from './front.ts'
import { proof } from './proof.ts'
import { SCRIPT, SCRIPT_SUM } from './script.ts'
import { styleFor } from './style.ts'

/** What the page may load or run: its own style, its own script, nothing from anywhere. */
const ALLOWED = `default-src 'none'; style-src 'unsafe-inline'; script-src '${SCRIPT_SUM}'; base-uri 'none'; form-action 'none'`

/** The whole sheet as one page that asks nobody for anything. */
export const printHtml = (sheet: Sheet, parts: Parts = {}): string => {
  const pictures = picturesOf(sheet)
  const title = [sheet.title, sheet.drawingNumber, nameOf(sheet)].filter((each) => each !== null).join(', ')
  return documentOf(
    title,
    ALLOWED,
    own('style', styleFor(title, sheet.features)),
    tag(
      'body',
      {
        'data-sheet':
          sheet.continues === undefined ? (sheet.identity ?? sheet.title) : `${nameOf(sheet)} ${sheet.title}`,
      },
      plates(sheet),
      tag(
        'main',
        {},
        ...front(sheet, pictures),
        ...sheet.features.map((feature) => featureSection(sheet, feature, pictures)),
        ...proof(sheet),
        ...(parts.inspection === true ? inspection(sheet) : []),
        ...grinding(sheet),
        ...slips(sheet),
        bar(),
      ),
      next(),
      own('script', SCRIPT),
    ),
  )
}

/** Text that is ours to the last sign, as a browser reads style and script: nothing in it is escaped. */
const own = (name: 'style' | 'script', text: string): Markup => ({ made: `<${name}>${text}</${name}>` })

/** Hidden until the script that serves them runs. */
const bar = (): Markup =>
  tag('div', { class: 'bar', id: 'bar', hidden: '' }, button('one', 'Next step, large'), button('clear', 'Clear ticks'))

const next = (): Markup =>
  tag(
    'div',
    { id: 'next', hidden: '', role: 'dialog', 'aria-label': 'next step' },
    tag('div', { id: 'now', 'aria-live': 'polite' }),
    tag('div', { class: 'keys' }, button('back', 'Back'), button('all', 'All steps'), button('on', 'Done, next')),
  )

const button = (id: string, text: string): Markup => tag('button', { id, type: 'button' }, text)
