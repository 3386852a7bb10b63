import type { Blank } from './blank.ts'
import type { Worksheet } from './worksheet.ts'

/** The answers to every sheet of a set, for the teacher. */
export type Key = {
  readonly title: string
  readonly teaches: string
  readonly sheets: readonly KeySheet[]
}

export type KeySheet = Pick<Worksheet, 'sheet' | 'learner'> & {
  readonly values: Readonly<Record<string, string>>
  readonly answers: readonly Pick<Blank, 'id' | 'number' | 'outOf' | 'asks' | 'key' | 'within' | 'working'>[]
}
