import type { Kind } from '../kind.ts'
import { draftVGroove } from './draft.ts'
import type { VGrooveFeature } from './feature.ts'
import { inspectVGroove } from './inspect.ts'
import { readVGroove, vGrooveSchema } from './schema.ts'

export const vGroove: Kind<VGrooveFeature, typeof vGrooveSchema> = {
  schema: vGrooveSchema,
  read: readVGroove,
  named: 'V-groove',
  stepKeys: ['from'],
  draft: draftVGroove,
  inspect: inspectVGroove,
  formToGrind: (_bench, _draft, { angle }) => ({ half: angle.aim / 2 }),
}
