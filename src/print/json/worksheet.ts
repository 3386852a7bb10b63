import type { Worksheet } from '../../exercise/worksheet.ts'

/** A learner's sheet as data. A place that is left open has null for a value. */
export const worksheetJson = ({ steps, ...sheet }: Worksheet): string =>
  `${JSON.stringify(
    {
      worksheet: 1,
      ...sheet,
      steps: steps.map(({ number, feature, group, action, slide, thing, does, effect, more }) => ({
        number,
        feature,
        group,
        action,
        slide,
        thing,
        does,
        effect,
        more,
      })),
    },
    (_, value: unknown) => (typeof value === 'number' && !Number.isFinite(value) ? null : value),
    1,
  )}\n`
