// What the tests use of their runner, in its smallest form: one process a mistake, ended by the first test that fails. The matchers are the runner's own.
import { chai, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect'

chai.use(JestExtend)
chai.use(JestChaiExpect)
chai.use(JestAsymmetricMatchers)

let collected = []
let after = []

/** The tests of the files that were loaded since the last call, in order, with what runs before them at its place: `{ name, run }`. */
export const taken = () => {
  const all = [...collected, ...after]
  collected = []
  after = []
  return all
}

export const expect = chai.expect

const named = (name, row, at) => {
  let next = 0
  const values = Array.isArray(row) ? row : [row]
  return `${String(name).replace(/%[sdifjo]/g, () => String(values[next++]))} (${at})`
}
const first = (parts) => parts.find((part) => typeof part === 'function')
const each =
  (declare) =>
  (rows) =>
  (name, ...rest) => {
    const run = first(rest)
    for (const [at, row] of rows.entries())
      declare(named(name, row, at), () => (Array.isArray(row) ? run(...row) : run(row)))
  }

export const test = (name, ...rest) => {
  const run = first(rest)
  if (run !== undefined) collected.push({ name: String(name), run })
}
test.each = each(test)
test.runIf = (yes) => (yes ? test : Object.assign(() => {}, { each: () => () => {} }))
/** @alias Both names, as the runner has them. */
export const it = test

export const describe = (_name, ...rest) => first(rest)()
describe.each = each(describe)

export const beforeAll = (run) => collected.push({ name: 'what runs before', run })
export const afterAll = (run) => after.push({ name: 'what runs after', run })
export const vi = { setConfig: () => {} }
