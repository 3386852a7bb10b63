/** So many answers are kept: those of one test file, without the memory of all. */
const MOST = 200

/**
 * Many tests look at the same output from different sides, and the program has no state and no clock: the answer to a question is kept for the next one
 * who asks. A test that the same question has the same answer twice must not ask here.
 */
export const keptAnswers = <T>(): ((question: string, answer: () => Promise<T>) => Promise<T>) => {
  const kept = new Map<string, Promise<T>>()
  return (question, answer) => {
    const known = kept.get(question)
    if (known !== undefined) return known
    const one = answer()
    kept.set(question, one)
    if (kept.size > MOST) kept.delete(kept.keys().next().value!)
    return one
  }
}
