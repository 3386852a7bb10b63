/** What an exercise may leave open; each word is a file in `asks/`. */
export const HIDE_WORDS = [
  'moves',
  'readings',
  'turns',
  'marks',
  'shift',
  'bottom-diameter',
  'depth',
  'form',
  'pin',
  'rpm',
  'corrections',
  'drill',
  'order',
  'set-up',
  'grinding',
  'caution',
  'mistake',
  'refusal',
] as const

/** Of these the sheet itself is drawn, not only the job: a set needs no `vary`. */
export const DRAWN_WORDS: readonly string[] = ['drill', 'order', 'set-up', 'grinding', 'caution', 'mistake', 'refusal']

export type HideWord = (typeof HIDE_WORDS)[number]
