/** A pair of one thing before and now; null if it has no counterpart. */
export type Pair<T> = { readonly before: T | null; readonly now: T | null }

/**
 * Aligns two lists, so that after an added step every other one is still compared with its own: equal things pair
 * without cost, things of one kind (`alike`) for less than one removed and another added.
 */
export const aligned = <T>(
  before: readonly T[],
  now: readonly T[],
  same: (a: T, b: T) => boolean,
  alike: (a: T, b: T) => boolean,
): Pair<T>[] => {
  let head = 0
  while (head < before.length && head < now.length && same(before[head]!, now[head]!)) head++
  let tail = 0
  while (
    tail < before.length - head &&
    tail < now.length - head &&
    same(before[before.length - 1 - tail]!, now[now.length - 1 - tail]!)
  )
    tail++
  const pair = (a: T, i: number, offset: number): Pair<T> => ({ before: a, now: now[i + offset]! })
  return [
    ...before.slice(0, head).map((a, i) => pair(a, i, 0)),
    ...middle(before.slice(head, before.length - tail), now.slice(head, now.length - tail), same, alike),
    ...before.slice(before.length - tail).map((a, i) => pair(a, i, now.length - tail)),
  ]
}

/** Costs of a pair that is only alike, and of a step without a counterpart. */
const ALIKE = 4
const ALONE = 3

/**
 * More cells than this are not worth the memory: lists of thousands that differ throughout are compared index by index.
 */
const MOST_CELLS = 9_000_000

const middle = <T>(a: readonly T[], b: readonly T[], same: Test<T>, alike: Test<T>): Pair<T>[] => {
  if ((a.length + 1) * (b.length + 1) > MOST_CELLS) return sideBySide(a, b, alike)
  const width = b.length + 1
  const cost = new Uint32Array((a.length + 1) * width)
  const paired = (i: number, j: number): number =>
    same(a[i]!, b[j]!) ? 0 : alike(a[i]!, b[j]!) ? ALIKE : Number.POSITIVE_INFINITY
  for (let i = a.length; i >= 0; i--)
    for (let j = b.length; j >= 0; j--) {
      if (i === a.length || j === b.length) cost[i * width + j] = ALONE * (a.length - i + b.length - j)
      else
        cost[i * width + j] = Math.min(
          paired(i, j) + cost[(i + 1) * width + j + 1]!,
          ALONE + cost[(i + 1) * width + j]!,
          ALONE + cost[i * width + j + 1]!,
        )
    }
  const pairs: Pair<T>[] = []
  let [i, j] = [0, 0]
  while (i < a.length || j < b.length) {
    const here = cost[i * width + j]!
    if (i < a.length && j < b.length && here === paired(i, j) + cost[(i + 1) * width + j + 1]!)
      pairs.push({ before: a[i++]!, now: b[j++]! })
    else if (i < a.length && here === ALONE + cost[(i + 1) * width + j]!) pairs.push({ before: a[i++]!, now: null })
    else pairs.push({ before: null, now: b[j++]! })
  }
  return pairs
}

const sideBySide = <T>(a: readonly T[], b: readonly T[], alike: Test<T>): Pair<T>[] =>
  Array.from({ length: Math.max(a.length, b.length) }).flatMap((_, i): Pair<T>[] => {
    const [before, now] = [a[i] ?? null, b[i] ?? null]
    if (before === null || now === null || alike(before, now)) return [{ before, now }]
    return [
      { before, now: null },
      { before: null, now },
    ]
  })

type Test<T> = (a: T, b: T) => boolean
