export const groovesJob: (count: number) => string
export const steppedJob: (cusp: number) => string
export const wideJob: (width: number) => string
