/**
 * Moves that end at a reading; the others have no slide. A touch-off is made on the slide that is set to zero next; a
 * lock is the carriage's.
 */
export const DIAL_ACTIONS = [
  'take-up',
  'zero',
  'feed-in',
  'back-out',
  'shift',
  'go-past',
  'return',
  'feed-across',
  'move-carriage',
]
