import type { Key } from '../../exercise/key.ts'

export const keyJson = (key: Key): string => `${JSON.stringify({ key: 1, ...key }, null, 1)}\n`
