import { INCH, inUnits, type Length, MM, type Units } from '../units/length.ts'

/** A square high-speed steel blank as it is sold. */
export type ToolBit = {
  readonly units: Units
  /** Side of the square, pm. */
  readonly square: Length
  /** The size as a shop says it: "5/16 in", "8 mm". */
  readonly label: string
  readonly source: string
  /** No printed page was available for this row. */
  readonly fromMemory: boolean
}

/** Sides of the stock squares as plain numbers of the given units, smallest first. */
export const toolBitSquares = (units: Units): number[] => stockBits(units).map((bit) => inUnits(bit.square, units))

/** Stock squares of one system of units, smallest first. */
export const stockBits = (units: Units): readonly ToolBit[] => (units === 'inch' ? INCH_BITS : METRIC_BITS)

const INCH_TRADE = 'US trade-standard square tool bits, from memory'
const MANUAL = 'bench-lathe manual p. 23, tool blank of its exercises'
const METRIC_TRADE = 'ISO 5421 square tool bits, from memory'

const sixteenths = (count: number, label: string): ToolBit => ({
  units: 'inch',
  square: (count * INCH) / 16,
  label: `${label} in`,
  source: count === 5 ? MANUAL : INCH_TRADE,
  fromMemory: count !== 5,
})

const INCH_BITS: readonly ToolBit[] = [
  sixteenths(4, '1/4'),
  sixteenths(5, '5/16'),
  sixteenths(6, '3/8'),
  sixteenths(7, '7/16'),
  sixteenths(8, '1/2'),
  sixteenths(10, '5/8'),
  sixteenths(12, '3/4'),
  sixteenths(16, '1'),
]

const METRIC_BITS: readonly ToolBit[] = [4, 5, 6, 8, 10, 12, 16, 20, 25].map((side) => ({
  units: 'mm',
  square: side * MM,
  label: `${side} mm`,
  source: METRIC_TRADE,
  fromMemory: true,
}))
