export const elapsed = (call) => {
  const start = performance.now()
  call()
  return performance.now() - start
}

/** Milliseconds a call, over at least `least` milliseconds of calls. */
export const perCall = (call, least = 10) => {
  let calls = 0
  const start = performance.now()
  let spent = 0
  do {
    call()
    calls++
    spent = performance.now() - start
  } while (spent < least)
  return spent / calls
}

export const median = (values) => {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2
}

export const sum = (values) => values.reduce((total, value) => total + value, 0)

/** By least squares of log time on log size: 1 = in proportion, 2 = as the square. */
export const exponent = (sizes, times) => {
  const x = sizes.map(Math.log)
  const y = times.map(Math.log)
  const [middleX, middleY] = [sum(x) / x.length, sum(y) / y.length]
  const across = sum(x.map((each, i) => (each - middleX) * (y[i] - middleY)))
  return across / sum(x.map((each) => (each - middleX) ** 2))
}
