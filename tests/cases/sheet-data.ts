/** The sheet as data, as far as these tests read it. Written from the documented format, not from the program's types. */
export type SheetScale = {
  readonly units: 'inch' | 'mm'
  readonly graduation: number
  readonly perTurn: number | null
  readonly reads: 'depth' | 'diameter'
  readonly backlash: number
  readonly readTo: number
  readonly readout: boolean
}
export type SheetStep = {
  readonly number: number
  readonly feature: number
  readonly action: string
  readonly slide?: 'cross-feed' | 'compound' | 'carriage'
  readonly reading?: number | null
  readonly turns?: number | null
  readonly mark?: number | null
  readonly placeFromEnd?: number
  readonly say: string
}
type Finished = {
  readonly planned: number
  readonly low: number
  readonly high: number
  readonly rss: number
  readonly limits: readonly [number, number] | null
  readonly verdict: string
  readonly measured?: { readonly low: number; readonly high: number }
}
export type SheetFeature = {
  readonly name: string
  readonly kind: string
  readonly tool: string
  readonly status: 'planned'
  readonly edge: {
    readonly shape: string
    readonly width: number | null
    readonly nose: number | null
    readonly angle: number | null
    readonly radius: number | null
    readonly reach: number
  }
  readonly compoundAngle: number
  readonly surface: number
  readonly zero: { readonly fromEnd: number; readonly diameter: number }
  readonly placing: { readonly point: string; readonly against: { readonly beside?: number } }
  readonly finished: Readonly<Record<string, Finished>>
}
export type SheetData = {
  readonly format: string
  readonly units: 'inch' | 'mm'
  readonly lathe: {
    readonly crossFeed: SheetScale
    readonly compound: SheetScale
    readonly carriage: SheetScale | null
  }
  readonly features: readonly SheetFeature[]
  readonly steps: readonly SheetStep[]
}

export const scaleOf = ({ lathe }: SheetData, slide: SheetStep['slide']): SheetScale => {
  if (slide !== 'carriage') return slide === 'cross-feed' ? lathe.crossFeed : lathe.compound
  if (lathe.carriage === null) throw new Error('a reading of a carriage that has none')
  return lathe.carriage
}

/** Slide travel at a reading, in the units of the sheet. */
const travelAt = (sheet: SheetData, slide: SheetStep['slide'], reading: number): number => {
  const scale = scaleOf(sheet, slide)
  const toSheet = scale.units === sheet.units ? 1 : scale.units === 'inch' ? 25.4 : 1 / 25.4
  return (reading / (scale.reads === 'diameter' ? 2 : 1)) * toSheet
}

export const stepsOf = (sheet: SheetData, feature: number): readonly SheetStep[] =>
  sheet.steps.filter((step) => step.feature === feature)

/** A place where a slide feeds in or across: the slides' travel from their zero, in the units of the sheet. */
export type Cut = { readonly along: number; readonly depth: number; readonly compound: number }

/** Every reading at which metal may be cut, with where it puts the tool's reference point: the geometry of the machine and nothing else. */
export function cutsOf(sheet: SheetData, feature: number): readonly Cut[] {
  const angle = (sheet.features[feature]!.compoundAngle * Math.PI) / 180
  const at = { 'cross-feed': 0, compound: 0, carriage: 0 }
  const cuts: Cut[] = []
  for (const step of stepsOf(sheet, feature)) {
    if (step.slide === undefined) continue
    if (step.placeFromEnd !== undefined)
      at.carriage = step.placeFromEnd - sheet.features[feature]!.zero.fromEnd - at.compound * Math.cos(angle)
    else if (typeof step.reading === 'number') at[step.slide] = travelAt(sheet, step.slide, step.reading)
    else continue
    if (step.action !== 'feed-in' && step.action !== 'feed-across') continue
    cuts.push({
      along: at.carriage + at.compound * Math.cos(angle),
      depth: at['cross-feed'] + at.compound * Math.sin(angle),
      compound: at.compound,
    })
  }
  return cuts
}
