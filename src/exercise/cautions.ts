/** Of every sheet of an exercise. */
export const cautionsIn = (): readonly string[] => [
  'An exercise on paper: at the lathe the machine manual, the rules of the shop and the instructor come first.',
]
