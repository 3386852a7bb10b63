import type { Drawing } from '../../sheet/drawing.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import { dialPicture } from './dial.ts'
import { formPicture } from './form.ts'
import { type PlannedFeature, partPicture } from './part.ts'
import type { Picture } from './picture.ts'
import { readingsOf } from './readings.ts'
import { swivelPicture } from './swivel.ts'
import { toolPicture } from './tool-views.ts'

/** Every picture of a sheet: the part, and then by feature its form, its swivel scale and its readings. What has no data is not drawn. */
export const picturesOf = (sheet: Sheet): Picture[] => [
  ...(sheet.drawing === undefined ? [] : [partPicture(sheet, sheet.drawing)]),
  ...sheet.features.flatMap((feature) => (feature.status === 'planned' ? ofFeature(sheet, feature) : [])),
]

const ofFeature = (sheet: Sheet, feature: PlannedFeature): Picture[] => [
  ...(feature.drawing === undefined ? [] : ofDrawing(sheet, feature, feature.drawing)),
  ...swivels(sheet, feature),
  ...readingsOf(sheet, feature.index).map((shown) => dialPicture(shown, sheet.units)),
]

const swivels = (sheet: Sheet, feature: PlannedFeature): Picture[] =>
  Number.isFinite(feature.compoundAngle)
    ? sheet.steps
        .filter(({ action, feature: of }) => action === 'swing' && of === feature.index)
        .map((step) => swivelPicture(sheet, feature, step))
    : []

const ofDrawing = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing): Picture[] => [
  formPicture(sheet, feature, drawing),
  ...(drawing.ground === null ? [] : [toolPicture(sheet, feature, drawing, drawing.ground)]),
]
