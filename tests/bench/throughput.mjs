import { basename } from 'node:path'
import { parseDocument } from 'yaml'
import { median, perCall, sum } from './measure.mjs'
import { filesOf, library, loaderOf } from './places.mjs'

const WARM_UP = 3

/** For each job, in turn: its texts (its lathe and its toolbox with it) through the parser alone, and the whole way to the printed sheet. */
export const throughput = async (jobs, passes) => {
  const { compile, PRINTERS, sheetFor } = await library()
  const works = []
  for (const job of jobs) {
    const files = await filesOf(job)
    const load = loaderOf(files)
    works.push({
      name: basename(job, '.yaml'),
      parse: () => [...files.values()].map((text) => parseDocument(text)),
      print: () => PRINTERS.text(sheetFor(compile(job, load).plan)),
    })
  }
  const times = []
  for (let pass = -WARM_UP; pass < passes; pass++) {
    const one = works.map(({ parse, print }) => ({ parsed: perCall(parse), printed: perCall(print) }))
    if (pass >= 0) times.push(one)
  }
  const rows = works.map(({ name }, i) => ({ name, value: median(times.map((one) => one[i].printed / one[i].parsed)) }))
  const all = (one) => sum(one.map(({ printed }) => printed)) / sum(one.map(({ parsed }) => parsed))
  return jobs.length < 2 ? rows : [...rows, { name: 'all together', value: median(times.map(all)) }]
}
