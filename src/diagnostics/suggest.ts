/** The candidate nearest to a mistyped word, or null if none is near enough to be what was meant. */
export function suggest(word: string, candidates: readonly string[]): string | null {
  const wanted = plain(word)
  const cutOff = Math.max(1, Math.floor(wanted.length / 3))
  let best: string | null = null
  let least = cutOff + 1
  for (const candidate of candidates) {
    const name = plain(candidate)
    if (Math.abs(name.length - wanted.length) >= least) continue
    const distance = editDistance(wanted, name)
    if (distance < least) [best, least] = [candidate, distance]
  }
  return best
}

/** Case does not matter, nor whether words are joined by blanks, hyphens or underscores. */
const plain = (word: string): string => word.toLowerCase().replace(/[\s_]+/g, '-')

/** Letters to insert, drop, change, or swap with a neighbor (optimal string alignment). */
export function editDistance(from: string, to: string): number {
  let before: number[] = []
  let above = Array.from({ length: to.length + 1 }, (_, column) => column)
  for (let row = 1; row <= from.length; row++) {
    const current = [row]
    for (let column = 1; column <= to.length; column++) {
      const change = from[row - 1] === to[column - 1] ? 0 : 1
      let least = Math.min(at(above, column) + 1, at(current, column - 1) + 1, at(above, column - 1) + change)
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]
      if (swapped) least = Math.min(least, at(before, column - 2) + 1)
      current.push(least)
    }
    before = above
    above = current
  }
  return at(above, to.length)
}

const at = (row: readonly number[], column: number): number => row[column] as number
