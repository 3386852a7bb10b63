import { InvalidArgumentError, Option } from 'commander'

const [LEAST, MOST] = [40, 120]

/** How wide a line is printed. Narrower, a reading does not fit; wider, the eye loses the line. */
export const widthOption = (): Option =>
  new Option('--width <columns>', 'signs in a line: 40 for a receipt printer, 60 for a phone').argParser(widthIn)

const widthIn = (text: string): number => {
  const width = Number(text)
  if (Number.isInteger(width) && width >= LEAST && width <= MOST) return width
  throw new InvalidArgumentError(`a whole number from ${LEAST} to ${MOST} is wanted.`)
}
