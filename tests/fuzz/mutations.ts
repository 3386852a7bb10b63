import * as fc from 'fast-check'

/** Numbers that a drawing never has, and some that it might. */
const EXTREMES =
  '0|-0|-1|0.001|0.0001|0.000001|1e-9|1e9|400|10000|99999999|1/0|1/3|89.9|180|0.1 ±0.2|0.001 max|12.7 mm|1 thou|20 h11|.5 in|NaN|.inf|0x1f|1_000|"0,5"'.split(
    '|',
  )
const BITS =
  'a: |- |\n|  |{|}|[|]|,|"|\'|&x |*x|!t |? |: |#|---\n|...\n|\t|\r|\r\n|\u202e|\u0085|\u0000|é|溝|🔧|__proto__: |<<: '.split(
    '|',
  )

type Change = (text: string) => string

const at = (text: string, part: number): number => Math.floor(part * text.length)

/** One place of the text is changed: a number, a key, a line, a stretch of characters. */
const change: fc.Arbitrary<Change> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.tuple(fc.nat(), fc.constantFrom(...EXTREMES)).map(([n, value]) => numberAt(n, () => value)),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.nat(), fc.constantFrom(0.001, 0.1, 0.5, 1.01, 2, 10, 1000))
      .map(([n, by]) => numberAt(n, (found) => String(Number((Number(found) * by).toPrecision(12))))),
  },
  { weight: 2, arbitrary: fc.tuple(fc.nat(), fc.nat()).map(([one, other]) => swappedLines(one, other)) },
  { weight: 2, arbitrary: fc.nat().map((n) => onLines((lines) => lines.toSpliced(n % lines.length, 1))) },
  {
    weight: 2,
    arbitrary: fc.nat().map((n) => onLines((lines) => lines.toSpliced(n % lines.length, 0, lines[n % lines.length]!))),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(fc.double({ min: 0, max: 0.999, noNaN: true }), fc.nat(6), fc.constantFrom(...BITS)).map(
      ([part, out, bit]): Change =>
        (text) =>
          `${text.slice(0, at(text, part))}${bit}${text.slice(at(text, part) + out)}`,
    ),
  },
)

export const changes = fc
  .array(change, { maxLength: 4 })
  .map((all) => (text: string) => all.reduce((now, one) => one(now), text))

const numberAt =
  (n: number, make: (found: string) => string): Change =>
  (text) => {
    const found = [...text.matchAll(/(?<=[ [:{,])\d*\.?\d+(?=[ ,}\]\n])/g)]
    const one = found[n % Math.max(1, found.length)]
    return one === undefined
      ? text
      : `${text.slice(0, one.index)}${make(one[0])}${text.slice(one.index + one[0].length)}`
  }

const onLines =
  (make: (lines: string[]) => string[]): Change =>
  (text) =>
    make(text.split('\n')).join('\n')

const swappedLines = (one: number, other: number): Change =>
  onLines((lines) => {
    const [a, b] = [one % lines.length, other % lines.length]
    return lines.with(a, lines[b]!).with(b, lines[a]!)
  })
