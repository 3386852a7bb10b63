/**
 * The ways to write a tolerance, split into texts. What the numbers mean (lengths, angles) is the caller's business.
 */
export type Toleranced =
  | { readonly form: 'plain'; readonly nominal: string }
  | { readonly form: 'range'; readonly low: string; readonly high: string }
  | { readonly form: 'most'; readonly nominal: string }
  | { readonly form: 'least'; readonly nominal: string }
  | { readonly form: 'plus-minus'; readonly nominal: string; readonly deviation: string }
  | { readonly form: 'deviations'; readonly nominal: string; readonly first: string; readonly second: string }
  | { readonly form: 'one-deviation'; readonly nominal: string; readonly deviation: string }
  | { readonly form: 'class'; readonly nominal: string; readonly letters: string; readonly grade: number }

const RANGE = /^(.+?) ?\bto\b ?(.+)$/i
const MOST_OR_LEAST = /^(.+?) ?\b(max|min)(?:imum)?\.?$/i
const PLUS_MINUS = /^(.*?) ?(?:±|\+ ?\/ ?-|\+ ?-) ?(.+)$/
// A sign can only be in front of a deviation: the hyphen of `1-3/16` is already gone (see tidy).
const DEVIATIONS = /^(.+?) ?([+-] ?[^+-]+?) ?\/? ?([+-] ?[^+-]+)$/
const ONE_DEVIATION = /^(.*[^ ]) ?([+-] ?[^+-]+)$/
const CLASS = /^(.+?) ?\b([A-Za-z]{1,2}) ?(\d{1,2})$|^(.*?[\d."]) ?([A-Za-z]{1,2}) ?(\d{1,2})$/

/** Splits tidied text. */
export function splitTolerance(text: string): Toleranced {
  const range = RANGE.exec(text)
  if (range) return { form: 'range', low: group(range, 1), high: group(range, 2) }
  const bound = MOST_OR_LEAST.exec(text)
  if (bound) return { form: /max/i.test(group(bound, 2)) ? 'most' : 'least', nominal: group(bound, 1) }
  const plusMinus = PLUS_MINUS.exec(text)
  if (plusMinus) return { form: 'plus-minus', nominal: group(plusMinus, 1), deviation: group(plusMinus, 2) }
  const two = DEVIATIONS.exec(text)
  if (two) return { form: 'deviations', nominal: group(two, 1), first: group(two, 2), second: group(two, 3) }
  const one = ONE_DEVIATION.exec(text)
  if (one) return { form: 'one-deviation', nominal: group(one, 1), deviation: group(one, 2) }
  return splitClass(text)
}

function splitClass(text: string): Toleranced {
  const match = CLASS.exec(text)
  if (!match) return { form: 'plain', nominal: text }
  const [nominal, letters, grade] = match[1] === undefined ? match.slice(4) : match.slice(1)
  return { form: 'class', nominal: nominal as string, letters: letters as string, grade: Number(grade) }
}

const group = (match: RegExpExecArray, index: number): string => match[index] as string
