/**
 * Moves of the hand that anybody makes for one feature without losing the place on the sheet. Common practice, no
 * source.
 */
export const MOST_MOVES = 1500

/** The same for a whole job: a week at the lathe. */
export const MOST_MOVES_OF_A_JOB = 25_000

/** Into how many parts a length is divided, as far as it matters: of more come too many moves, or several at one mark. */
export const bounded = (parts: number): number => Math.min(parts, MOST_MOVES)
