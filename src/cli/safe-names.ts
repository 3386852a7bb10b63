/**
 * A file for each job, named like it, in the same order. Signs that a disk, a shell or a link may take for more than a
 * name become hyphens; two jobs of one name are told apart by their folders, or else by a number.
 */
export const namesFor = (jobs: readonly string[], ending: string): string[] => {
  const bare = jobs.map((job) => safe(partsOf(job).at(-1)!))
  const repeated = new Set(bare.filter((name, i) => bare.findIndex((one) => alike(one, name)) !== i).map(lower))
  const told = jobs.map((job, i) => (repeated.has(lower(bare[i]!)) ? safe(partsOf(job).join('-')) : bare[i]!))
  const taken = new Set<string>()
  return told.map((name) => {
    const free = firstFree(name, taken)
    taken.add(lower(free))
    return `${free}${ending}`
  })
}

/** Some disks take large and small letters for one. */
const lower = (name: string): string => name.toLowerCase()
const alike = (one: string, other: string): boolean => lower(one) === lower(other)

const partsOf = (job: string): string[] => {
  const parts = job
    .replace(/\.ya?ml$/i, '')
    .split(/[/\\]/)
    .filter((part) => part !== '' && part !== '.' && part !== '..')
  return parts.length === 0 ? ['job'] : parts
}

/** Letters of any language stay; no name begins with a point or a hyphen, is too long for a disk, or is that of a device. */
const safe = (name: string): string => {
  const plain = [...name.normalize('NFC').replace(/[^\p{L}\p{N}._-]+/gu, '-')]
    .slice(0, LONGEST)
    .join('')
    .replace(/^[.-]+|[.-]+$/g, '')
  if (plain === '') return 'job'
  return DEVICES.test(plain) ? `job-${plain}` : plain
}

/** Of 255 bytes, with four for a letter and room for a number and an ending. */
const LONGEST = 55
const DEVICES = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i

const firstFree = (name: string, taken: ReadonlySet<string>): string => {
  for (let i = 1; ; i++) {
    const one = i === 1 ? name : `${name}-${i}`
    if (!taken.has(lower(one))) return one
  }
}
