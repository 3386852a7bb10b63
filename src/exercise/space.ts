import { suggest } from '../diagnostics/suggest.ts'
import { type Parsed, parsed, refused } from '../units/parsed.ts'
import { amountsOf, decimalsIn, sizeIn, toleranceIn, written } from './amounts.ts'
import type { Range, Vary } from './exercise.ts'
import { at, isScalar, pathsOf, scalar, type Tree, unitsAt, withValue } from './tree.ts'

/** All that a job may become: every value of every varied path with every other. */
export type Space = {
  readonly size: number
  /** One element as a job; `own` puts in what is a learner's own, which other values may hang on. */
  readonly element: (index: number, own?: (tree: Tree) => Tree) => Parsed<Tree>
  readonly values: (tree: Tree) => Readonly<Record<string, string>>
}

/** Larger than any class: indexes stay whole numbers that a draw can reach. */
const MOST = 2 ** 31 - 1

type Choice = { readonly vary: Vary; readonly count: number; readonly put: (tree: Tree, index: number) => Parsed<Tree> }

/** What is wrong is told with the path that it is about. */
export type SpaceProblem = { readonly path: string; readonly message: string; readonly hint: string }

export const spaceOf = (base: Tree, vary: readonly Vary[]): Space | SpaceProblem => {
  const choices: Choice[] = []
  for (const one of inOrder(vary)) {
    const choice = choiceOf(base, one)
    if (!choice.ok) return { path: one.path, message: choice.message, hint: choice.hint }
    choices.push(choice.value)
  }
  const size = choices.reduce((product, { count }) => product * count, 1)
  if (size > MOST)
    return {
      path: vary[0]!.path,
      message: 'the values make more sheets than can be counted',
      hint: 'take larger steps',
    }
  return {
    size,
    element: (index, own = (tree) => tree) => {
      let [tree, rest]: [Tree, number] = [own(base), index]
      for (const { count, put } of choices) {
        const next = put(tree, rest % count)
        if (!next.ok) return next
        tree = next.value
        rest = Math.floor(rest / count)
      }
      return parsed(own(tree))
    },
    values: (tree) => Object.fromEntries(choices.map(({ vary: { path } }) => [path, textAt(tree, path)])),
  }
}

export const isProblem = (space: Space | SpaceProblem): space is SpaceProblem => 'message' in space

/** A value under another one is worked out after it. */
const inOrder = (vary: readonly Vary[]): Vary[] => {
  const done: Vary[] = []
  let rest = [...vary]
  while (rest.length > 0) {
    const ready = rest.filter((one) => !('of' in one) || !rest.some((other) => other !== one && other.path === one.of))
    // Two that hang on each other are taken as they stand: each from what the base has.
    done.push(...(ready.length > 0 ? ready : rest))
    rest = ready.length > 0 ? rest.filter((one) => !ready.includes(one)) : []
  }
  return done
}

const choiceOf = (base: Tree, vary: Vary): Parsed<Choice> => {
  for (const path of 'of' in vary ? [vary.path, vary.of] : [vary.path]) {
    const there = at(base, path)
    if (there !== null && isScalar(there)) continue
    const near = suggest(path, pathsOf(base))
    return refused(
      there === null ? `the base job has nothing at ${path}` : `${path} of the base job is no single value`,
      near === null ? 'name a value of the job, such as features.0.width' : `did you mean ${near}?`,
    )
  }
  const tolerance = toleranceIn(textAt(base, vary.path))
  const put = (tree: Tree, text: string): Parsed<Tree> =>
    parsed(withValue(tree, vary.path, like(base, vary.path, toleranceIn(text) === '' ? `${text}${tolerance}` : text)))
  if (vary.how === 'list')
    return parsed({ vary, count: vary.values.length, put: (tree, i) => put(tree, vary.values[i]!) })
  const units = unitsAt(base, vary.path)
  const amounts = amountsOf(vary.range, units)
  if (!amounts.ok) return amounts
  const { value: list } = amounts
  if (vary.how === 'range')
    return parsed({
      vary,
      count: list.length,
      put: (tree, i) => put(tree, written(list[i]!, vary.range.from, units, placesIn(vary.range))),
    })
  const sign = vary.how === 'under' ? -1 : 1
  return parsed({
    vary,
    count: list.length,
    put: (tree, i) => {
      const from = sizeIn(textAt(tree, vary.of), unitsAt(tree, vary.of))
      return from.ok ? put(tree, written(from.value + sign * list[i]!, '', units, placesIn(vary.range))) : from
    },
  })
}

/** Decimal places of a range. */
const placesIn = ({ from, to, step }: Range): number => Math.max(...[from, to, step].map(decimalsIn))

/** A number stays a number, where a job takes nothing else. */
const like = (base: Tree, path: string, text: string): Tree => {
  const there = at(base, path)
  const plain = there !== null && isScalar(there) && there.plain && /^-?\d*\.?\d+$/.test(text)
  return { ...scalar(text), plain }
}

const textAt = (tree: Tree, path: string): string => {
  const there = at(tree, path)
  return there !== null && isScalar(there) ? there.written : ''
}
