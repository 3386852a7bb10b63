/**
 * Cutting speeds for plain turning with high-speed steel. If a source gives two, the roughing figure is used: a form
 * tool cuts on a broad edge.
 */
export type MaterialRow = {
  readonly name: string
  readonly aliases: readonly string[]
  readonly hssFtPerMin: number
  /** The same speed in whole meters a minute, rounded down. */
  readonly hssMPerMin: number
  /** Carbide speed as a multiple of the speed for high-speed steel. */
  readonly carbideFactor: number
  readonly source: string
  /** A = standard, government text, handbook or textbook; B = maker's table. */
  readonly grade: 'A' | 'B'
}

/** The row for a material as a drawing names it; hyphens, commas, case and British spelling do not matter. */
export const findMaterial = (name: string): MaterialRow | undefined => byName.get(plain(name))

/** Every name in the table, without aliases, in the order of the table. */
export const materialNames = (): string[] => ROWS.map((row) => row.name)

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(ASCII.test(name) ? /[^a-z0-9]+/g : /[^\p{L}\p{N}]+/gu, ' ')
    .replace(/\baluminium\b/g, 'aluminum')
    .replace(/\bgrey\b/g, 'gray')
    .trim()

/** The table itself is; a pattern of all letters there are takes a while to make. */
const ASCII = /^[\x20-\x7e]*$/

const CHART = "bench-lathe operator's manual, HSS cutting speed chart"
const ROUGHING = "bench-lathe operator's manual, Table 7.1, HSS roughing"
const DATA_BOOK = 'The Ferrous Metals Data Book, ch. 9'
const ARMY_TABLE = 'T.O. 1-1A-9 / TM 43-0106, Table 2-8, HSS roughing, upper end'

/** The chart in the bench-lathe manual: carbide may run at twice the speed of high-speed steel. */
const CARBIDE_FACTOR = 2
const METERS_PER_FOOT = 0.3048

const row = (
  name: string,
  hssFtPerMin: number,
  source: string,
  grade: 'A' | 'B',
  ...aliases: string[]
): MaterialRow => ({
  name,
  aliases,
  hssFtPerMin,
  hssMPerMin: Math.floor(hssFtPerMin * METERS_PER_FOOT),
  carbideFactor: CARBIDE_FACTOR,
  source,
  grade,
})

const ROWS: readonly MaterialRow[] = [
  row('mild steel', 90, CHART, 'B', 'low-carbon steel', 'cold-rolled steel', 'hot-rolled steel', '1018', '1020', 'A36'),
  row(
    'free-machining steel',
    120,
    `${DATA_BOOK}, Table 9-1, 0.3 in cut`,
    'A',
    'free-cutting steel',
    'leaded steel',
    '1212',
    '1213',
    '1215',
    '12L14',
  ),
  row('medium-carbon steel', 90, `${DATA_BOOK}, Table 9-3, 225-275 HB, 0.15 in cut`, 'A', '1040', '1045', '1050'),
  row('high-carbon steel', 50, ROUGHING, 'B', 'carbon steel', '1080', '1095'),
  row('alloy steel', 45, ROUGHING, 'B', '4130', '4140', '4340'),
  row('hard alloy steel', 40, CHART, 'B', 'alloy steel hard', 'heat-treated alloy steel'),
  row('tool steel', 50, CHART, 'B', 'silver steel', 'drill rod', 'O1', 'A2', 'D2', 'W1'),
  row('cast steel', 80, CHART, 'B', 'steel casting'),
  row(
    'stainless steel',
    40,
    `${ARMY_TABLE}, 304/316 group`,
    'A',
    'stainless',
    '304',
    '304L',
    '316',
    '316L',
    '420',
    '440C',
  ),
  row(
    'free-machining stainless steel',
    55,
    `${ARMY_TABLE}, 303/420F`,
    'A',
    '303',
    '416',
    '420F',
    '430F',
    'free-machining stainless',
  ),
  row('cast iron', 70, ROUGHING, 'B', 'gray cast iron', 'gray iron'),
  row('soft cast iron', 80, CHART, 'B', 'cast iron soft'),
  row('hard cast iron', 50, CHART, 'B', 'cast iron hard', 'chilled cast iron'),
  row('brass', 150, CHART, 'B', 'free-cutting brass', 'yellow brass', 'C360'),
  row('bronze', 100, ROUGHING, 'B', 'phosphor bronze', 'bearing bronze', 'gunmetal'),
  row('copper', 100, CHART, 'B'),
  row('aluminum', 200, ROUGHING, 'B', 'aluminum alloy', 'aluminum alloys', '6061', '6082', '7075', '2024'),
  row('titanium', 50, CHART, 'B'),
]

const byName: ReadonlyMap<string, MaterialRow> = new Map(
  ROWS.flatMap((material) => [material.name, ...material.aliases].map((name) => [plain(name), material] as const)),
)
