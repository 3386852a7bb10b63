export type Vector = readonly [along: number, back: number, up: number]

/** Distance from the axis of the work of a point `face` along a raked face, whose tip stands on center at `floor` from the axis. */
export const distanceToAxis = (floor: number, face: number, rake: number): number => {
  const point = add([0, floor, 0], scaled(turned([0, 1, 0], -rake), face))
  return Math.hypot(point[1], point[2])
}

/** A vector turned about the axis of the work: a positive angle lifts what points back. */
export const turned = ([along, back, up]: Vector, degrees: number): Vector => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return [along, back * c - up * s, back * s + up * c]
}

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const scaled = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by]
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Where a rising function is zero. */
export const bisect = (of: (x: number) => number, low: number, high: number): number => {
  let [a, b] = [low, high]
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2
    if (of(middle) < 0) a = middle
    else b = middle
  }
  return (a + b) / 2
}
