import { join, relative } from 'node:path'
import { build } from 'esbuild'

/**
 * The files of the program and what is in them.
 *
 * These are whole in themselves: what two of them need is in both. `plan` has the command that is used most and all that it loads at once.
 */
const WHOLE = {
  groovewright: ['src/cli/main.ts'],
  'command-line': ['src/cli/command-line.ts'],
  schema: ['schema', 'keys'].map((name) => `src/cli/commands/${name}.ts`),
  blanks: ['new', 'survey'].map((name) => `src/cli/commands/${name}.ts`),
  plan: ['src/cli/commands/sheet.ts'],
}

/** Of these, what they load on request is in them too: they do without a plan, and the others lean on it. */
const WITH_REQUESTS = ['schema', 'blanks']

/**
 * Everything else that is loaded by `await import('…')` becomes a file of its own, without a word here: the other commands, the printers, what
 * is added on request. It takes what `plan` has from there, as a package it is whole in itself.
 *
 * @returns by the name of each file: its entries; and what it takes from `plan`
 */
export async function partsOf(root) {
  const parts = new Map(Object.entries(WHOLE).map(([name, entries]) => [name, { entries, fromPlan: new Set() }]))
  for (const name of WITH_REQUESTS) parts.get(name).entries.push(...onRequest(await inputsOf(root, WHOLE[name])))
  const inputs = new Map()
  for (const [name, { entries }] of parts) {
    inputs.set(name, await inputsOf(root, entries))
    for (const asked of onRequest(inputs.get(name)))
      if (![...parts.values()].some(({ entries }) => entries.includes(asked)))
        parts.set(partName(asked), { entries: [asked], fromPlan: new Set() })
  }
  const plan = inputs.get('plan')
  for (const [name, part] of parts) {
    for (const asked of onRequest(inputs.get(name)))
      if (inputs.get(name)[asked] !== undefined && !part.entries.includes(asked))
        throw new Error(`${asked} is loaded on request in ${name}.cjs, which imports it at once as well`)
    if (!(name in WHOLE) && isOurs(part.entries[0])) part.fromPlan = borders(inputs.get(name), plan)
  }
  return parts
}

/** `print/html/printers.ts` is in `print-html-printers.cjs`, the package `chalk` in `chalk.cjs`. */
const partName = (entry) =>
  entry
    .replace(/^src\//, '')
    .replace(/\.ts$/, '')
    .replaceAll('/', '-')

const isOurs = (entry) => entry.startsWith('src/')

export const exported = (entry) => `export * from '${isOurs(entry) ? './' : ''}${entry}'`

/** Every module that is loaded with these entries, with its imports. */
async function inputsOf(root, entries) {
  const { metafile } = await build({
    absWorkingDir: root,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    metafile: true,
    write: false,
    logLevel: 'warning',
    stdin: {
      contents: entries.map(exported).join('\n'),
      resolveDir: root,
    },
    plugins: [{ name: 'later', setup: (plugin) => plugin.onResolve({ filter: /./ }, later(root)) }],
  })
  return metafile.inputs
}

const later =
  (root) =>
  ({ kind, path, resolveDir }) =>
    kind === 'dynamic-import' ? { path: askedFor(root, path, resolveDir), external: true } : undefined

/** What a dynamic import names: a file of ours by its path from the root, or a package. */
export const askedFor = (root, path, resolveDir) =>
  path.startsWith('.') ? relative(root, join(resolveDir, path)).replaceAll('\\', '/') : path

const onRequest = (inputs) => new Set(importsIn(inputs, 'dynamic-import').map(({ path }) => path))

/** The modules of ours that `plan` has and that are imported by one that it has not. */
function borders(inputs, plan) {
  const own = Object.fromEntries(Object.entries(inputs).filter(([path]) => plan[path] === undefined))
  return new Set(
    importsIn(own, 'import-statement')
      .map(({ path }) => path)
      .filter((path) => isOurs(path) && plan[path] !== undefined),
  )
}

const importsIn = (inputs, wanted) =>
  Object.values(inputs).flatMap(({ imports }) => imports.filter(({ kind }) => kind === wanted))
