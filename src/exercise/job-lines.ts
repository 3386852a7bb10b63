import { at, flow, isScalar, type Tree } from './tree.ts'

/** A job in a few lines, as a learner reads it: the part, the tool of each feature, and the features. */
export const jobLines = (tree: Tree): string[] => {
  const [part, tools, features] = [at(tree, 'part'), at(tree, 'tools'), at(tree, 'features')]
  const list = Array.isArray(features) ? (features as readonly Tree[]) : []
  const used = list.flatMap((feature) => textAt(feature, 'tool'))
  return [
    ...(part === null ? [] : [`part: ${told(part)}`]),
    ...[...new Set(used)].flatMap((name) => {
      const tool = tools === null || isScalar(tools) ? null : at(tools, name)
      return tool === null ? [] : [`tool ${name}: ${told(tool)}`]
    }),
    ...list.map((feature) => `cut: ${told(feature)}`),
  ]
}

const textAt = (tree: Tree, key: string): string[] => {
  const there = at(tree, key)
  return there !== null && isScalar(there) ? [there.written] : []
}

const told = (tree: Tree): string =>
  flow(tree)
    .replace(/"/g, '')
    .replace(/^\{ | \}$/g, '')
