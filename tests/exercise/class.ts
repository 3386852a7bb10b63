import { LATHE, type Outcome, runIn } from '../cli/world.ts'

/** A base job, an exercise on it, and the program run on both. */
export const JOB = `title: Cider press screw
units: inch
part: { material: mild steel, held: chuck, overhang: 4, diameter: 1.5, length: 5 }
lathe: bench.yaml
tools:
  neck: { shape: square, width: 0.148, reach: 0.125 }
features:
  - { kind: groove, name: Relief, near: 1.125, width: 0.165 ±0.005, depth: 0.072 ±0.004, tool: neck }
`

export const EXERCISE = `title: A neck
teaches: readings
base: job.yaml
seed: 1
sheets: 3
vary:
  features.0.width: { from: 0.156, to: 0.180, step: 0.003 }
  tools.neck.width: { under: features.0.width, from: 0.004, to: 0.015, step: 0.001 }
hide: [shift, readings]
`

export const FILES = { 'job.yaml': JOB, 'bench.yaml': LATHE, 'exercise.yaml': EXERCISE }

export const handedOut = (files: Record<string, string> = {}): Promise<Outcome> =>
  runIn({ files: { ...FILES, ...files } }, 'handout', 'exercise.yaml', '--out', 'set')

type Blank = { id: string; key: string; right: number; asks: string }
export type Handed = {
  sheet: string
  learner: string | null
  form: string
  blanks: Blank[]
  values: Record<string, string>
}

export const manifestOf = ({ files }: Outcome): { learners: Handed[] } => JSON.parse(files['set/manifest.json']!)

/** The set with its forms filled in: by the key, but for what `wrong` says of a blank. */
export const filledIn = (
  set: Outcome,
  wrong: (handed: Handed, blank: Blank) => string | undefined,
): Record<string, string> => {
  const files = { ...set.files }
  for (const handed of manifestOf(set).learners)
    files[`set/${handed.form}`] = [
      `sheet: "${handed.sheet}"`,
      `learner: ${JSON.stringify(handed.learner ?? '')}`,
      'answers:',
      ...handed.blanks.map(
        (blank) => `  - { id: "${blank.id}", value: ${JSON.stringify(wrong(handed, blank) ?? blank.key)} }`,
      ),
      '',
    ].join('\n')
  return files
}

export type Graded = {
  sheet: string
  learner: string | null
  score: number | null
  outOf: number
  note: string | null
  cuts: string[]
  blanks: { id: string; given: string; right: string; verdict: string; causes: string[]; wouldCut: string | null }[]
}

export const graded = async (files: Record<string, string>): Promise<Outcome & { learners: Graded[] }> => {
  const ran = await runIn({ files }, 'grade', 'set/manifest.json', 'set/answers', '--format', 'json')
  return { ...ran, learners: ran.out === '' ? [] : JSON.parse(ran.out).learners }
}
