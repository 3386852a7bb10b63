import { MM } from '../units/length.ts'

/** What is given, by name: pm, degrees, rpm. */
export type Given = Readonly<Record<string, number>>

const of = (given: Given, name: string): number => {
  const value = given[name]
  if (value === undefined) throw new Error(`a formula wants ${name}, and it is not given`)
  return value
}

const half = (given: Given): number => Math.tan((of(given, 'angle') * Math.PI) / 360)

/** How a size is worked out from what stands on the drawing. pm. */
export const FORMULAS = {
  /** How far a tool is shifted in a groove that is wider than it. */
  shift: (given: Given) => of(given, 'width') - of(given, 'tool'),
  bottomDiameter: (given: Given) => of(given, 'surface') - 2 * of(given, 'depth'),
  depthBelow: (given: Given) => (of(given, 'surface') - of(given, 'bottom')) / 2,
  /** Height of a segment of a circle: depth of a round groove that is drawn by its width. */
  segmentDepth: (given: Given) => {
    const radius = of(given, 'radius')
    return radius - Math.sqrt(radius ** 2 - (of(given, 'width') / 2) ** 2)
  },
  /** Its chord, the other way round. */
  segmentWidth: (given: Given) => {
    const [radius, depth] = [of(given, 'radius'), of(given, 'depth')]
    return 2 * Math.sqrt(radius ** 2 - (radius - depth) ** 2)
  },
  /** Of a V: by the tangent of half its included angle. */
  vDepth: (given: Given) => (of(given, 'width') - of(given, 'root')) / (2 * half(given)),
  vWidth: (given: Given) => of(given, 'root') + 2 * of(given, 'depth') * half(given),
  /**
   * Over two pins opposite each other in a V: the surface, less twice how deep their centers lie, plus a pin. A center
   * lies where a circle of half the pin touches both flanks.
   */
  overPins: (given: Given) => {
    const [pin, angle] = [of(given, 'pin'), (of(given, 'angle') * Math.PI) / 360]
    const center = (of(given, 'width') / 2 - pin / 2 / Math.cos(angle)) / Math.tan(angle)
    return of(given, 'surface') - 2 * center + pin
  },
  /** The fastest speed of the lathe that is not faster than wanted: rpm = cutting speed over circumference. */
  rpm: (given: Given) => {
    const wanted = of(given, 'cutting') / (Math.PI * of(given, 'diameter'))
    const speeds = speedsIn(given)
    const allowed = speeds.filter((rpm) => rpm <= wanted)
    return allowed.length > 0 ? Math.max(...allowed) : Math.min(...speeds)
  },
  turns: (given: Given) => Math.floor(of(given, 'reading') / of(given, 'perTurn') + 1e-9),
  mark: (given: Given) => {
    const { reading = 0, perTurn = MM, graduation = MM } = given
    return (reading - Math.floor(reading / perTurn + 1e-9) * perTurn) / graduation
  },
} as const

export type Formula = keyof typeof FORMULAS

export const speedsIn = (given: Given): number[] =>
  Object.entries(given).flatMap(([name, value]) => (/^speed\d+$/.test(name) ? [value] : []))
