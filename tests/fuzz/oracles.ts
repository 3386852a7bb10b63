import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'

/** What one job looks like in every format. */
export type Prints = {
  readonly text: string
  readonly card: string
  readonly csv: string
  readonly html: string
  readonly data: Sheet & Data
}

type Data = {
  readonly steps: readonly {
    readonly number: number
    readonly action: string
    readonly slide?: string
    readonly reading?: number | null
    readonly placeFromEnd?: number
    readonly say: string
  }[]
}

/** What one print tells that another does not, and what the brute force has against the sheet; empty: all agree. */
export const disagreements = ({ text, card, csv, html, data }: Prints): string[] => {
  const steps = data.steps.map(({ number }) => String(number))
  const known = new Set([...numbersIn(text), ...steps])
  const onCard = numbersIn(card.replace(/page \d+ of \d+/g, '')).filter(
    (number) => !known.has(number) && Number(number) !== 0,
  )
  const onPage = new Set(numbersIn(textOf(html)))
  const missing = numbersIn(stepsOf(text)).filter((number) => !onPage.has(number) && !steps.includes(number))
  return [
    ...(onCard.length > 0 ? [`the card tells ${onCard[0]}, the sheet does not`] : []),
    ...(missing.length > 0 ? [`the page does not tell ${missing[0]}`] : []),
    ...rows(csv, data),
    ...bruteForce(data)
      .problems.slice(0, 1)
      .map((problem) => `brute force: ${problem}`),
  ]
}

/** The numbered lines of the sheet, without the title, the proof and the details. */
const stepsOf = (text: string): string =>
  text
    .split('\n')
    .filter((line) => /^ {0,8}\d+ {2}[A-Z]/.test(line))
    .join('\n')

/** A row of the table for each step, with its reading. */
const rows = (csv: string, { steps }: Data): string[] => {
  const found = csv.trim().split(/\r?\n/).slice(1).map(fieldsOf)
  if (found.length !== steps.length) return [`the table has ${found.length} rows for ${steps.length} steps`]
  return steps
    .flatMap(({ number, action, slide, reading, placeFromEnd }, i) => {
      const [, act, by, at = ''] = found[i]!
      const same =
        act === action &&
        (slide === undefined || by === slide) &&
        (at === '' || Number(at) === (placeFromEnd ?? reading))
      return same ? [] : [`the table has another step ${number}`]
    })
    .slice(0, 1)
}

const fieldsOf = (line: string): string[] =>
  [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, field = '']) => field)

const numbersIn = (text: string): string[] => text.match(/\d+ \d+\/\d+|\d+\/\d+|\d*\.?\d+/g) ?? []

const textOf = (html: string): string =>
  html
    .replace(/<(style|script)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&nbsp;|&#160;|\u00a0/g, ' ')
    .replace(/\s+/g, ' ')

/**
 * The job of one feature with what its remedy tells to do first: a key to write for this feature, a taller ridge, a larger infeed, more overhang, a
 * narrower tool. Null where it tells nothing of that sort, or where the job has another shape than random jobs have.
 */
export const followed = (job: string, err: string): string | null => {
  const told = err.split('\n').flatMap((line) => /^ *remedy: (.*)$/.exec(line)?.[1] ?? [])
  const features = job.split('\n').filter((line) => line.startsWith('  - ')).length
  if (told.length !== 1 || features !== 1 || !/\nfeatures:\n {2}- kind: /.test(job)) return null
  const key = /^(?:write|allow [a-z ]*\()([a-z-]+: [^\s,;)]+)/.exec(told[0]!)?.[1]
  if (key !== undefined) return withKey(job, key)
  const overhang = /^let the work stick out at least ([\d.]+)/.exec(told[0]!)?.[1]
  if (overhang !== undefined) return replaced(job, /overhang: [\d.]+/, `overhang: ${overhang}`)
  const width = /^take a tool ([\d.]+) wide or less/.exec(told[0]!)?.[1]
  return width === undefined ? null : replaced(job, /(?<=shape: square, width: )[\d.]+/, width)
}

/** Null where nothing is there to be replaced, or it is the same already. */
const replaced = (job: string, what: RegExp, by: string): string | null => {
  const other = job.replace(what, by)
  return other === job ? null : other
}

const withKey = (job: string, told: string): string => {
  const [key = ''] = told.split(':')
  const lines = job.split('\n')
  const own = lines.findIndex((line) => line.startsWith(`      ${key}: `))
  if (own >= 0) return lines.with(own, `      ${told}`).join('\n')
  const cutting = lines.indexOf('    cutting:')
  if (cutting >= 0) return lines.toSpliced(cutting + 1, 0, `      ${told}`).join('\n')
  const last = lines.findLastIndex((line) => /^ {4}[a-z-]+: /.test(line))
  return lines.toSpliced(last + 1, 0, '    cutting:', `      ${told}`).join('\n')
}
