/**
 * A sheet is read at arm's length, from a terminal or a printer of any age: 80 columns, plain ASCII and the two signs
 * that shops need.
 */
export const COLUMNS = 80

/** Words wrapped to a width; a word longer than a line is cut, so that no line is ever too long. */
export const wrap = (text: string, width: number): string[] => {
  const lines: string[] = []
  let line = ''
  for (const word of wordsOf(text).flatMap((one) => fitting(one, width))) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return line === '' ? lines : [...lines, line]
}

/** A label in a column of its own, and beside it text that stays in its column when it wraps. */
export const beside = (label: string, column: number, text: string, width = COLUMNS): string[] => {
  const lines = wrap(text, width - column)
  return (lines.length === 0 ? [''] : lines).map((line, i) =>
    `${(i === 0 ? plain(label) : '').padEnd(column).slice(0, column)}${line}`.trimEnd(),
  )
}

/** Left and right on one line if they fit, otherwise one under the other. */
export const leftAndRight = (left: string, right: string, width = COLUMNS): string[] => {
  const [l, r] = [plain(left), plain(right)]
  if (l.length + r.length + 2 <= width) return [`${l}${' '.repeat(width - l.length - r.length)}${r}`.trimEnd()]
  return [...wrap(l, width), ...wrap(r, width)]
}

/** A name between rules, on one line where it fits. */
export const ruled = (left: string, right: string, width = COLUMNS): string[] => {
  const text = `== ${left} ${right === '' ? '' : `= ${right} `}`
  return text.length + 2 <= width
    ? [plain(text).padEnd(width, '=')]
    : ['='.repeat(width), ...leftAndRight(left, right, width), '='.repeat(width)]
}

/**
 * Plain ASCII, ° and ±: accents are removed, typographic signs become their typed forms, the rest is a question mark.
 */
export const plain = (text: string): string => (PLAIN.test(text) ? text : madePlain(text))

const PLAIN = /^[ -~°±]*$/

const madePlain = (text: string): string =>
  text
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/\u00d7/g, 'x')
    .replace(/\u2026/g, '...')
    .replace(/[^\x20-\x7e°±]/gu, (sign) =>
      sign
        .normalize('NFKD')
        .replace(/\u2044/g, '/')
        .replace(/[\u0300-\u036f]/g, ''),
    )
    .replace(/\s/g, ' ')
    .replace(/[^\x20-\x7e°±]/gu, '?')

/** Split at blanks, but not at those inside of a reading. */
const wordsOf = (text: string): string[] =>
  text
    .split(/[^\S\u00a0]+/)
    .map(plain)
    .filter(Boolean)

/** A reading that is longer than a line is split all the same. */
const fitting = (word: string, width: number): string[] =>
  word.length <= width ? [word] : word.split(' ').flatMap((one) => pieces(one, width))

const pieces = (word: string, width: number): string[] =>
  word.length <= width ? [word] : [word.slice(0, width), ...pieces(word.slice(width), width)]

/** A name of a person as it is: no letter of it is changed, only what would move the cursor is taken out. */
export const nameText = (name: string, width: number): string =>
  [...name.replace(/[^\p{L}\p{M}\p{N}\p{P}\p{S} ]/gu, ' ')].slice(0, width).join('')
