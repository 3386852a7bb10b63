/** What is given, by name: pm, degrees. */
export type Given = Readonly<Record<string, number>>

const of = (given: Given, name: string): number => {
  const value = given[name]
  if (value === undefined) throw new Error(`a formula wants ${name}, and it is not given`)
  return value
}

/** How a size is worked out from what stands on the drawing. pm. */
export const FORMULAS = {
  /** How far a tool is shifted in a groove that is wider than it. */
  shift: (given: Given) => of(given, 'width') - of(given, 'tool'),
} as const

export type Formula = keyof typeof FORMULAS
