/** What an exercise may leave open; each word is a file in `asks/`. */
export const HIDE_WORDS = ['readings', 'shift'] as const

export type HideWord = (typeof HIDE_WORDS)[number]
