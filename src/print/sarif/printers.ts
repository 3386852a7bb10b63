import { printCheckSarif } from './check.ts'

export const printers = { check: printCheckSarif }
