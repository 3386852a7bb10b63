/**
 * Standard tolerance grades IT5 to IT14, in micrometers, for nominal sizes to 315 mm.
 * Source: ISO 286-1, table of standard tolerance grades. IT9 and IT11 agree with a second transcription.
 * A size on a boundary belongs to the range below it ("over … up to and including").
 */
const SIZES_UP_TO_MM = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315] as const

export const GRADES_MICROMETERS: Readonly<Record<number, readonly number[]>> = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320],
  12: [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520],
  13: [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810],
  14: [250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300],
}

const MICROMETER = 1_000_000

/** The width of a grade at a nominal size, both in pm; null if the table has no such row or column. */
export function gradeWidth(nominal: number, grade: number): number | null {
  const column = SIZES_UP_TO_MM.findIndex((upTo) => nominal <= upTo * 1000 * MICROMETER)
  const width = nominal > 0 && column >= 0 ? GRADES_MICROMETERS[grade]?.[column] : undefined
  return width === undefined ? null : width * MICROMETER
}
