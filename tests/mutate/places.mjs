// Where a source text can be made wrong by one small change. Text in, places out; it knows nothing of the program.

/** Each sort of change: what to look for in the code, and what to put there. */
const SORTS = [
  ['compare', / (<=|>=|<|>) /g, (m) => ` ${{ '<': '<=', '<=': '<', '>': '>=', '>=': '>' }[m[1]]} `],
  ['turn', / (<=|>=|<|>) /g, (m) => ` ${{ '<': '>', '<=': '>=', '>': '<', '>=': '<=' }[m[1]]} `],
  ['equal', / (===|!==) /g, (m) => ` ${m[1] === '===' ? '!==' : '==='} `],
  ['add', / (\+|-) (?!$)/g, (m) => ` ${m[1] === '+' ? '-' : '+'} `],
  ['times', / (\*|\/) /g, (m) => ` ${m[1] === '*' ? '/' : '*'} `],
  ['both', / (&&|\|\|) /g, (m) => ` ${m[1] === '&&' ? '||' : '&&'} `],
  ['extreme', /\bMath\.(min|max)\(/g, (m) => `Math.${m[1] === 'min' ? 'max' : 'min'}(`],
  ['round', /\bMath\.(floor|ceil)\(/g, (m) => `Math.${m[1] === 'floor' ? 'ceil' : 'floor'}(`],
  ['number', /(?<![\w.'])(\d+(?:\.\d+)?)(?![\w.'])/g, numbered],
  ['minus', /(?<=[([,:?=] ?|return )-(?=[a-z\d(])/g, () => ''],
  ['all', /\.(every|some)\(/g, (m) => `.${m[1] === 'every' ? 'some' : 'every'}(`],
  [
    'which',
    /\.(findLastIndex|findLast|findIndex|find)\(/g,
    (m) => `.${{ find: 'findLast', findLast: 'find', findIndex: 'findLastIndex', findLastIndex: 'findIndex' }[m[1]]}(`,
  ],
  ['end', /\.at\(-1\)/g, () => '.at(0)'],
]

/** One more; of a large one, which stands for a length in picometers, twice as many: one more would be nothing. */
function numbered([, number]) {
  if (Number(number) === 0) return '1'
  return Number(number) < 100 ? `(${number} + 1)` : `(${number} * 2)`
}

/** Every place of a text, in order: { sort, from, to, put }. */
export const placesIn = (text) => {
  const code = codeOf(text)
  const places = []
  for (const [sort, pattern, change] of SORTS) {
    for (const match of code.matchAll(pattern)) {
      const from = match.index
      if (passed(text, from)) continue
      places.push({ sort, from, to: from + match[0].length, put: change(match) })
    }
  }
  return [...places, ...conditions(text, code), ...statements(text, code)].sort(
    (a, b) => a.from - b.from || a.sort.localeCompare(b.sort),
  )
}

/** Conditions on one line, which then never hold. */
const conditions = (text, code) =>
  [...code.matchAll(/\bif \(/g)].flatMap(({ index }) => {
    const from = index + 'if '.length
    const to = closing(code, from)
    if (to === null || passed(text, index)) return []
    return [{ sort: 'never', from, to, put: `(false && ${text.slice(from, to)})` }]
  })

/** Behind the parenthesis that closes the one at `from`; null if it is on another line. */
const closing = (code, from) => {
  let open = 0
  for (let i = from; i < code.length && code[i] !== '\n'; i++) {
    open += code[i] === '(' ? 1 : code[i] === ')' ? -1 : 0
    if (open === 0) return i + 1
  }
  return null
}

/** Whole statements of one line that do something and give nothing. */
const statements = (text, code) => {
  const places = []
  for (const match of code.matchAll(/^ {2,}[a-zA-Z.[\]]+(?:\(.*\)| [-+]?= .*|\+\+)$/gm)) {
    const line = match[0].trim()
    if (/^(const|let|return|throw|if|for|while|case|default|export|import|type)\b/.test(line)) continue
    if (!balanced(line) || passed(text, match.index)) continue
    places.push({ sort: 'gone', from: match.index, to: match.index + match[0].length, put: '' })
  }
  return places
}

const balanced = (line) => {
  let open = 0
  for (const c of line) open += '([{'.includes(c) ? 1 : ')]}'.includes(c) ? -1 : 0
  return open === 0
}

/** Imports and types are no code that runs. */
const passed = (text, at) => {
  const start = text.lastIndexOf('\n', at) + 1
  const line = text.slice(start, text.indexOf('\n', at))
  if (/^(import|export type|type|interface)\b/.test(line) || /^\s*(readonly |\| )/.test(line)) return true
  return /^(export )?type /m.test(text.slice(text.lastIndexOf('\n\n', at) + 2).split('\n')[0])
}

/** The text with comments, strings and patterns blanked out, every other character where it was. */
const codeOf = (text) => {
  let out = ''
  let i = 0
  const blank = (to) => {
    out += text.slice(i, to).replace(/[^\n]/g, '_')
    i = to
  }
  while (i < text.length) {
    const two = text.slice(i, i + 2)
    if (two === '//') blank(until(text, '\n', i))
    else if (two === '/*') blank(until(text, '*/', i) + 2)
    else if (text[i] === "'" || text[i] === '"') blank(endOf(text, text[i], i))
    else if (text[i] === '`') blank(endOf(text, '`', i))
    else if (text[i] === '/' && /[(,=:[!&|?{};\n] *$/.test(out.slice(-3))) blank(endOf(text, '/', i))
    else out += text[i++]
  }
  return out
}

const until = (text, what, from) => {
  const at = text.indexOf(what, from)
  return at < 0 ? text.length : at
}

const endOf = (text, quote, from) => {
  for (let i = from + 1; i < text.length; i++) {
    if (text[i] === '\\') i++
    else if (text[i] === quote) return i + 1
  }
  return text.length
}
