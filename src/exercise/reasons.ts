import type { Code } from '../diagnostics/codes.ts'

/** Why a job cannot be cut, as a learner is asked: codes of refusals, and what they come to. */
export const REASONS: readonly (readonly [text: string, codes: readonly Code[]])[] = [
  ['the tool is wider than the groove', ['tool-too-wide', 'nose-too-wide']],
  ['the tool does not reach deep enough', ['reach-too-short', 'shoulder-too-low']],
  ['the tool would come too near the jaws', ['near-jaws', 'near-dog', 'beyond-overhang']],
  ['the form does not lie on the part', ['off-the-part', 'crosses-a-step']],
  ['the form is too deep: it would cut the core through', ['core-cut-through', 'radius-too-large']],
  [
    'the tool has the wrong angle or the wrong shape',
    ['wrong-angle', 'wrong-shape', 'nose-too-narrow', 'edge-too-narrow'],
  ],
  ['two forms overlap', ['forms-overlap']],
  ['the sizes on the drawing contradict each other', ['contradiction', 'no-solution']],
]

export const reasonFor = (code: Code): string | null => REASONS.find(([, codes]) => codes.includes(code))?.[0] ?? null
