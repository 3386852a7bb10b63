import type { Path } from '../diagnostics/diagnostic.ts'
import type { SourceFile } from '../source/source.ts'
import type { Units } from '../units/length.ts'

/** A file as a tree whose scalars stay as they are written, so that a changed copy differs in nothing else. */
export type Tree = Scalar | readonly Tree[] | { readonly [key: string]: Tree }
export type Scalar = { readonly written: string; readonly plain: boolean; readonly scalar: true }

export const scalar = (written: string): Scalar => ({ written, plain: false, scalar: true })

export const isScalar = (tree: Tree): tree is Scalar => 'scalar' in tree && tree.scalar === true

const isList = (tree: Tree): tree is readonly Tree[] => Array.isArray(tree)

export const treeOf = (source: SourceFile, data: unknown = source.data, path: Path = []): Tree => {
  if (Array.isArray(data)) return data.map((one, i) => treeOf(source, one, [...path, i]))
  if (typeof data === 'object' && data !== null)
    return Object.fromEntries(Object.entries(data).map(([key, one]) => [key, treeOf(source, one, [...path, key])]))
  // A number keeps every digit; text that looks like one stays text.
  const plain = typeof data !== 'string'
  return { written: source.scalarSource(path) ?? String(data), plain, scalar: true }
}

/** As YAML on one line. */
export const flow = (tree: Tree): string => {
  if (isScalar(tree)) return tree.plain ? tree.written : JSON.stringify(tree.written)
  if (isList(tree)) return `[${tree.map(flow).join(', ')}]`
  return `{ ${Object.entries(tree)
    .map(([key, one]) => `${JSON.stringify(key)}: ${flow(one)}`)
    .join(', ')} }`
}

/** What stands at a path such as features.0.width; null where nothing does. */
export const at = (tree: Tree, path: string): Tree | null =>
  path
    .split('.')
    .reduce<Tree | null>(
      (inner, key) => (inner === null || isScalar(inner) ? null : ((inner as Record<string, Tree>)[key] ?? null)),
      tree,
    )

/** The same with another value at a path that exists. */
export const withValue = (tree: Tree, path: string, value: Tree): Tree => {
  const [key = '', ...rest] = path.split('.')
  const inner = rest.length === 0 ? value : withValue((tree as Record<string, Tree>)[key]!, rest.join('.'), value)
  if (isList(tree)) return tree.with(Number(key), inner)
  return { ...(tree as Record<string, Tree>), [key]: inner }
}

/** Every path with a scalar. */
export const pathsOf = (tree: Tree, path = ''): string[] =>
  isScalar(tree)
    ? [path]
    : Object.entries(tree).flatMap(([key, one]) => pathsOf(one as Tree, path === '' ? key : `${path}.${key}`))

/** The units of bare numbers at a path: of the mapping around it that has some. */
export const unitsAt = (tree: Tree, path: string): Units => {
  const keys = path.split('.')
  for (let depth = keys.length - 1; depth >= 0; depth--) {
    const units = at(tree, [...keys.slice(0, depth), 'units'].join('.'))
    if (units !== null && isScalar(units) && (units.written === 'mm' || units.written === 'inch')) return units.written
  }
  return 'inch'
}
