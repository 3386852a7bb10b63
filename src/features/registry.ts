import type { Bench, Drafted } from './draft.ts'
import type { Feature } from './feature.ts'
import { draftGroove } from './groove/draft.ts'
import { draftConcave } from './radius/concave.ts'
import { draftCorner } from './radius/corner.ts'
import { draftVGroove } from './v-groove/draft.ts'

/** Every kind of feature, and what works it out. A new kind is one folder and one line here. */
export function draftFeature(bench: Bench, feature: Feature): Drafted {
  switch (feature.kind) {
    case 'groove':
      return draftGroove(bench, feature)
    case 'v-groove':
      return draftVGroove(bench, feature)
    case 'radius':
      return feature.shape === 'concave' ? draftConcave(bench, feature) : draftCorner(bench, feature)
  }
}
