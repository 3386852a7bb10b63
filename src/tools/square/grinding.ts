import type { ShapeGrinding } from '../shape.ts'
import type { SquareTool } from './tool.ts'

export const squareGrinding: ShapeGrinding<SquareTool> = {
  sizes: ({ width, cornerRadius }, form) => ({
    width: { drawn: form.width, aim: form.aimedWidth ?? width.aim, edge: width.aim },
    severalPlaces: form.severalPlaces,
    cornerRadius: cornerRadius > 0 ? cornerRadius : null,
  }),
  onFace: () => ({}),
  carried: ({ width }) => width.aim,
  gauged: ({ cornerRadius }) => cornerRadius,
  sidesPassSteps: true,
}
